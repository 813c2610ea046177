import { Say } from '../../ui/controls/Say';
import { find } from '../../records/shelf';
import { formatDay } from '../../ui/format';
import { refusalOf } from '../../workshop/drinkable/grade';
import { draftOf, ONLY_A_DRAFT } from '../../workshop/drinkLabel/draft';
import type { DraftRow } from '../../workshop/drinkLabel/drinkToLabel';
import { batchToLabel } from '../../workshop/drinkLabel/ofBatch';
import { Notices } from '../describe/Notices';
import { overNotices } from '../describe/overFacts';
import { PageHead } from '../nav/PageHead';
import { NotHere } from '../unread/NotHere';
import { sheetTitle } from './sheetRows';
import './batchSheet.css';
import './labelSheet.css';

/** The label of a batch as a draft, to check with the law and to print: what is on it, what to know about each line, and its source. */
export function LabelSheet({ id }: { id: string }) {
  const batch = find('batch', id);
  if (!batch) return <NotHere id={id} />;
  const barred = refusalOf(batch);
  return (
    <main class="page sheet label-sheet">
      <PageHead title={`Label of ${sheetTitle(batch)}`} />
      {barred && (
        <p>
          <b class="smell-only">SMELL ONLY</b> {barred}
        </p>
      )}
      <Notices notices={overNotices(batch)} />
      <p>
        {ONLY_A_DRAFT} By {batch.jurisdiction} law, from what was weighed on {formatDay(batch.madeOn)}.
      </p>
      <dl class="draft">{!barred && draftOf(batchToLabel(batch)).map((row) => <Line row={row} />)}</dl>
      <footer class="actions">
        <button class="main" onClick={() => print()}>
          Print
        </button>
      </footer>
    </main>
  );
}

function Line({ row: { what, words, notes, source } }: { row: DraftRow }) {
  return (
    <div>
      <dt>{what}</dt>
      <dd>
        <p>
          <Say text={words} />
        </p>
        {notes.map((note) => (
          <p class="quiet">{note}</p>
        ))}
        <small>{source}</small>
      </dd>
    </div>
  );
}
