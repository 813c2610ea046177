import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { layoutLabel } from '../../core/label/label';
import { isLabelled } from '../../records/kind/kinds';
import { shelf } from '../../records/shelf';
import { attempt, Refused } from '../../workshop/attempt';
import { textMeasure } from '../../ui/label/labelFonts';
import { LabelChoices } from './LabelChoices';
import { LabelPicking } from './LabelPicking';
import { LabelPreview } from './LabelPreview';
import { LabelPrint } from './LabelPrint';
import { LabelActions } from './LabelActions';
import { WriteByHand } from './WriteByHand';
import { calledOf, tagOf, type Labelled } from '../../workshop/thing/labelled';
import { labelOf } from '../describe/labelOf';
import { jobOf, labelSetUp, setUpLabel, type LabelJob } from './labelSetUp';
import type { ReadyLabel } from './readyLabel';
import { go, route } from '../nav/route';
import { PageHead } from '../nav/PageHead';
import './labelPage.css';

type Measure = Awaited<ReturnType<typeof textMeasure>>;

/** Labels of the vials, bottles and batches in the address: #/labels/<id>,<id>; without any, they are picked first. */
export function LabelPage() {
  const [, list, strips] = route.value;
  const ids = list?.split(',') ?? [];
  const records = ids.flatMap((id) => {
    const record = shelf.records.value.get(id);
    return record && isLabelled(record) ? [record] : [];
  });
  return (
    <main class="run labels">
      <PageHead title={records.length > 1 ? `${records.length} labels` : 'Labels'} />
      {records.length > 0 ? (
        <Chosen records={records} strips={strips === 'strips'} />
      ) : (
        <LabelPicking onPicked={(picked) => go(['labels', picked.join(',')])} />
      )}
    </main>
  );
}

function Chosen({ records, strips }: { records: readonly Labelled[]; strips: boolean }) {
  useEffect(() => {
    if (strips) void setUpLabel('size', 'strip');
  }, [strips]);
  const byHand = labelSetUp()['on'] === 'hand';
  const { job, labels, problem } = useLabels(records);
  const problems = 'problems' in job ? job.problems : undefined;
  const ready = !byHand && labels.length > 0 && !('problems' in job) && job;
  return (
    <>
      <div class="body">
        {problem && !byHand && (
          <p class="trouble" role="alert">
            {problem}
          </p>
        )}
        {ready && <LabelPreview labels={labels} black={ready.sheet === null} />}
        {byHand && <WriteByHand records={records} />}
        <LabelChoices problems={byHand ? {} : (problems ?? {})} />
      </div>
      {ready && <LabelActions labels={labels} job={ready} />}
      {ready && <LabelPrint labels={labels} job={ready} />}
      {byHand && (
        <footer class="actions">
          <button class="main" onClick={() => history.back()}>
            Done
          </button>
        </footer>
      )}
    </>
  );
}

/** The labels laid out for the set-up, once for each change of it; or why they cannot be. */
function useLabels(records: readonly Labelled[]) {
  const measure = useSignal<Measure | null>(null);
  useEffect(() => void textMeasure().then((widthOf) => (measure.value = widthOf)), []);
  const setUp = labelSetUp();
  const widthOf = measure.value;
  return useMemo(() => {
    const job = jobOf(setUp);
    const made = widthOf && !('problems' in job) ? readyLabels(records, job, widthOf) : [];
    return made instanceof Refused ? { job, labels: [], problem: made.problem } : { job, labels: made, problem: '' };
  }, [JSON.stringify(setUp), widthOf, records.map(({ id }) => id).join(), shelf.records.value]);
}

function readyLabels(records: readonly Labelled[], job: LabelJob, widthOf: Measure): ReadyLabel[] | Refused {
  return attempt(() =>
    records.map((record) => {
      const label = labelOf(record, job.kind);
      const layout = layoutLabel(label.content, { ...job, widthOf });
      return { ...label, record, layout, title: `${tagOf(record)} ${calledOf(record).name}` };
    }),
  );
}
