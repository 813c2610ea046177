import { leftPhrase } from '../../ui/left';
import { fullOf, isStocked, leftOf, runsLow, type Stocked } from '../../records/stock';
import { isOf, kindWords, type AnyRecord } from '../../records/kind/kinds';
import { Entry } from './Entry';
import { OVER, overNotices } from './overFacts';
import { isPictured, Pictured } from './Pictured';
import './shelfEntry.css';

const PICTURE_PX = 56; // three lines of a row

/** '6.5 g left', 'empty', or '' when no one said how much there was. */
export function leftWords(record: Stocked): string {
  const left = leftOf(record);
  if (!left) return '';
  return leftPhrase(left, isOf('supply', record) ? record.unit : 'g');
}

/** 'box A, row 2', or ''. */
export function placeWords(record: AnyRecord): string {
  const { box, row } = 'box' in record || 'row' in record ? record : { box: '', row: '' };
  return [box && `box ${box}`, row && `row ${row}`].filter(Boolean).join(', ');
}

/** One thing of the Shelf, with what is left of it and where it stands; a tap opens it. */
export function ShelfEntry({ record, kind }: { record: AnyRecord; kind?: boolean }) {
  return (
    <Entry
      record={record}
      class="shelf-entry"
      picture={isPictured(record) && <Pictured record={record} size={PICTURE_PX} />}
      line={({ line, grade }) => (
        <>
          {kind && `${kindWords(record)}: `}
          {line}
          {grade === 'smell only' && <em class="smell-only"> smell only</em>}
          {overNotices(record).length > 0 && <em class="smell-only"> {OVER}</em>}
          <Standing record={record} />
        </>
      )}
    />
  );
}

/** What is left of it, where it stands, and whether it was put away. */
function Standing({ record }: { record: AnyRecord }) {
  const stocked = isStocked(record) ? record : null;
  const words = [
    stocked && leftWords(stocked),
    placeWords(record),
    record.archived && 'archived',
    record.demo && 'demo',
  ].filter(Boolean);
  return (
    <>
      {words.length > 0 && <small>{words.join(' · ')}</small>}
      {stocked && !isPictured(record) && <Level record={stocked} />}
    </>
  );
}

/** How full it is, as a bar; the words beside it say the same. */
function Level({ record }: { record: Stocked }) {
  const left = leftOf(record);
  const full = fullOf(record)?.value ?? 0;
  if (!left || full <= 0) return null;
  return (
    <span class={runsLow(record) ? 'level-bar low' : 'level-bar'} aria-hidden="true">
      <i style={{ width: `${Math.min(100, (left.value / full) * 100)}%` }} />
    </span>
  );
}
