import { useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
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
import { calledOf, tagOf, type Labelled } from '../../workshop/thing/labelled';
import { labelOf } from '../describe/labelOf';
import { jobOf, labelSetUp, setUpLabel, type LabelJob } from './labelSetUp';
import type { ReadyLabel } from './readyLabel';
import { go, route } from '../nav/route';
import { close } from '../../ui/drawn/firstIcons';
import { Icon } from '../../ui/drawn/Icon';
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
      <header class="top">
        <h1>{records.length > 1 ? `${records.length} labels` : 'Labels'}</h1>
        <button class="round" onClick={() => history.back()} aria-label="Close">
          <Icon of={close} />
        </button>
      </header>
      {records.length > 0 ? (
        <Chosen records={records} strips={strips === 'strips'} />
      ) : (
        <LabelPicking onPicked={(picked) => go(['labels', picked.join(',')])} />
      )}
    </main>
  );
}

function Chosen({ records, strips }: { records: readonly Labelled[]; strips: boolean }) {
  const measure = useSignal<Measure | null>(null);
  useEffect(() => {
    if (strips) void setUpLabel('size', 'strip');
  }, [strips]);
  useEffect(() => void textMeasure().then((widthOf) => (measure.value = widthOf)), []);
  const job = useComputed(() => jobOf(labelSetUp()));
  const widthOf = measure.value;
  const made = widthOf && !('problems' in job.value) ? readyLabels(records, job.value, widthOf) : [];
  const problem = made instanceof Refused ? made.problem : undefined;
  const labels = made instanceof Refused ? [] : made;
  return (
    <>
      <div class="body">
        {problem && (
          <p class="trouble" role="alert">
            {problem}
          </p>
        )}
        {labels.length > 0 && <LabelPreview labels={labels} />}
        <LabelChoices problems={'problems' in job.value ? job.value.problems : {}} />
      </div>
      {!('problems' in job.value) && labels.length > 0 && (
        <>
          <LabelActions labels={labels} job={job.value} />
          <LabelPrint labels={labels} job={job.value} />
        </>
      )}
    </>
  );
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
