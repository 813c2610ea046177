import { isOf, kindWords, type AnyRecord } from '../../records/kind/kinds';
import type { RunEvent } from '../../records/kind/run';
import { isStocked } from '../../records/stock';
import { resultText } from '../../ui/controls/result';
import { formatDay } from '../../ui/format';
import { leftResult } from './Care';
import { describe } from '../describe/describe';
import type { Description } from '../describe/description';
import { Facts } from '../describe/Facts';
import { Notices } from '../describe/Notices';
import { overNotices, standingWord } from '../describe/overFacts';
import { useTask } from '../nav/loaded';
import { recordTable } from './paper';
import { gramsText, kinBefore, type Kin } from './relatives';
import { RunStory } from '../describe/RunStory';
import { saveTable } from '../nav/saveFile';
import { storyOf } from '../describe/story';
import { PageHead } from '../nav/PageHead';
import '../sheet/paper.css';

/** A record as it goes on paper, with everything that stands behind it; of a run, every step. */
export function PaperPage({ record, events }: { record: AnyRecord; events: readonly RunEvent[] }) {
  const description = describe(record);
  const { title, facts = [], results = [] } = description;
  const left = isStocked(record) ? leftResult(record) : null;
  const run = isOf('run', record) ? record : null;
  const task = useTask(run?.task);
  const table = () => recordTable(record, run && task ? storyOf(task, events) : []);
  const numbers = [...results, ...(left ? [left] : [])];
  return (
    <main class="page paper">
      <PageHead title={title} />
      <Standing record={record} of={description} />
      <Facts facts={[...numbers.map((one) => [one.label, resultText(one)] as const), ...facts]} />
      <Origin record={record} />
      {run && <RunStory run={run} events={events} />}
      <p class="quiet">± at k = 2, about 95 in 100. Printed by Minim, which warns and does not certify.</p>
      <footer class="actions">
        <button class="second" onClick={() => saveTable(`${record.made.slice(0, 10)} ${title}`, table)}>
          Table for a spreadsheet (CSV)
        </button>
        <button class="main" onClick={() => print()}>
          Print
        </button>
      </footer>
    </main>
  );
}

/** What it is, whether it may go into a drink, and when it was made. */
function Standing({ record, of: { code, grade } }: { record: AnyRecord; of: Description }) {
  const notices = overNotices(record);
  const graded = standingWord(grade, notices.length > 0);
  return (
    <>
      <p>
        {[kindWords(record), code, graded, record.demo && 'demo: made up', `made ${formatDay(record.made)}`]
          .filter(Boolean)
          .join(' · ')}
      </p>
      <Notices notices={notices} />
    </>
  );
}

function Origin({ record }: { record: AnyRecord }) {
  const before = kinBefore(record);
  return (
    <>
      <KinList title="In it" kin={before.filter(({ arrow }) => arrow === 'is in it')} />
      <KinList title="Led to it, and is not in it" kin={before.filter(({ arrow }) => arrow === 'led to it')} />
    </>
  );
}

function KinList({ title, kin }: { title: string; kin: readonly Kin[] }) {
  if (kin.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <ul>
        {kin.map(({ record, grams }) => {
          const { title: name, line } = describe(record);
          return (
            <li>
              {kindWords(record)} {[name, line, grams !== undefined && gramsText(grams)].filter(Boolean).join(', ')}
            </li>
          );
        })}
      </ul>
    </>
  );
}
