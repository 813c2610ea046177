import { useSignal } from '@preact/signals';
import { isEditable, isOf, type AnyRecord } from '../../records/kind/kinds';
import { keep } from '../../records/shelf';
import { isStocked } from '../../records/stock';
import { canBeMarked } from '../../workshop/drinkable/mark';
import { more } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import { Sheet } from '../../ui/controls/Sheet';
import { keptOf } from '../describe/bookEntries';
import { go } from '../nav/route';
import { AddPhotos } from '../photo/Photos';
import { doNext } from './doNext';
import { rareOf } from './nexts';

interface Row {
  readonly words: string;
  readonly act: () => void;
}

/** ⋯: what is rarely done with a thing. */
export function More({ record }: { record: AnyRecord }) {
  const open = useSignal(false);
  return (
    <>
      <button class="round" aria-label="More" aria-haspopup="dialog" onClick={() => (open.value = true)}>
        <Icon of={more} />
      </button>
      {open.value && (
        <Sheet title="More" onClose={() => (open.value = false)}>
          <MoreRows record={record} onClose={() => (open.value = false)} />
        </Sheet>
      )}
    </>
  );
}

/** The rows of that sheet; of a record that cannot be shown they are on its page. */
export function MoreRows({ record, onClose }: { record: AnyRecord; onClose?: () => void }) {
  const trouble = useSignal('');
  const change = (facts: object) =>
    keep([{ ...record, ...facts }]).then(onClose, (error: unknown) => {
      trouble.value = `The phone could not store this: ${error instanceof Error ? error.message : String(error)}`;
    });
  return (
    <>
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
      <div class="sheet-rows">
        {[...rowsOf(record), ...careOf(record, (facts) => void change(facts))].map(({ words, act }) => (
          <button
            class="sheet-row"
            onClick={() => {
              if (!CHANGES.includes(words)) onClose?.();
              act();
            }}
          >
            <b>{words}</b>
          </button>
        ))}
      </div>
      <AddPhotos record={record} />
    </>
  );
}

function rowsOf(record: AnyRecord): Row[] {
  return rareOf(record).map((next) => ({ words: next.words, act: () => doNext(next) }));
}

const BUY = { on: 'Put on the shopping list', off: 'Take off the shopping list' };
const ARCHIVE = 'Archive';
/** These close the sheet when they are stored, and say so where they are not. */
const CHANGES: readonly string[] = [...Object.values(BUY), ARCHIVE];

/** What can be done with the thing itself: weigh, change, trace, print, put on the list, put away. */
function careOf(record: AnyRecord, change: (facts: object) => void): Row[] {
  const page = (words: string, name: string): Row => ({ words, act: () => go(['record', record.id, name]) });
  const traced = isOf('run', record) ? keptOf(record)[0]?.id : record.id; // a run is traced by what it ended in
  const bought = isOf('bottle', record) || isOf('supply', record);
  const counted = isOf('supply', record) && record.unit === 'pieces';
  return [
    ...(isStocked(record) ? [page(counted ? 'Count what is left' : 'Weigh what is left', 'weigh')] : []),
    ...(isEditable(record) ? [page('Change', 'edit')] : []),
    ...(canBeMarked(record) ? [page('Mark smell only', 'mark')] : []),
    ...(traced ? [{ words: 'Trace', act: () => go(['record', traced, 'trace']) }] : []),
    page('Print or CSV', 'paper'),
    ...(bought ? [{ words: record.buy ? BUY.off : BUY.on, act: () => change({ buy: !record.buy }) }] : []),
    ...(record.archived ? [] : [{ words: ARCHIVE, act: () => change({ archived: new Date().toISOString() }) }]),
  ];
}
