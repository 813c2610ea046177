import { useSignal } from '@preact/signals';
import { isEditable, isOf, type AnyRecord } from '../../records/kind/kinds';
import { balanceOf } from '../../records/balance';
import { keep } from '../../records/shelf';
import { fullOf, isStocked, leftOf, runsLow, type Stocked } from '../../records/stock';
import { canBeMadeAgain } from '../../tasks/shared/repeat';
import { canBeMarked } from '../../workshop/drinkable/mark';
import { useByOf } from '../../workshop/useBy';
import { formatDay, formatPlain, measuredText } from '../../ui/format';
import { leftText } from '../../ui/left';
import { ResultLine } from '../../ui/controls/ResultLine';
import type { Result } from '../../ui/controls/result';
import { keptOf } from '../describe/bookEntries';
import { Facts } from '../describe/Facts';
import { useTask } from '../nav/loaded';
import { go } from '../nav/route';
import { placeWords } from '../describe/ShelfEntry';

/** What is left, as a number with its ±, or null where no one said. */
export function leftResult(record: Stocked): Result | null {
  const left = leftOf(record);
  if (!left) return null;
  const unit = isOf('supply', record) ? record.unit : 'g';
  const full = fullOf(record);
  const last = (record.weighed ?? []).at(-1);
  const inputs = [
    ...(full ? [{ words: 'At first', text: measuredText(full, unit), source: 'as made, or as its label says' }] : []),
    ...(last
      ? [{ words: 'Found to be left', text: measuredText(last.left, unit), source: `weighed ${formatDay(last.at)}` }]
      : []),
  ];
  const words = [
    'What there was, less what was taken out since: a taking is off by 5 %, all alike (our choice).',
    ...(isOf('vial', record) ? ['Dips of strips are not counted: a dip takes about nothing (common practice).'] : []),
  ];
  const empty = leftText(left, unit) === 'empty' ? { words: 'empty' } : {};
  return {
    label: 'Left',
    amount: left,
    unit,
    how: { words, inputs: [...inputs, ...goneInputs(record, unit)] },
    ...empty,
  };
}

/** Where the rest of it is: in the things made of it, or lost. */
function goneInputs(record: Stocked, unit: string): Result['how']['inputs'][number][] {
  const balance = balanceOf(record);
  if (!balance) return [];
  const text = (amount: number) => `${formatPlain(amount, 3)} ${unit}`;
  const isIn = balance.isIn.reduce((sum, { amount }) => sum + amount, 0);
  const things = new Set(balance.isIn.map((one) => one.record.id)).size;
  return [
    ...(things > 0
      ? [{ words: 'In what was made of it', text: text(isIn), source: things === 1 ? '1 thing' : `${things} things` }]
      : []),
    ...balance.lost.map(({ why, amount }) => ({ words: 'In nothing', text: text(amount), source: why })),
  ];
}

/** Where a thing stands, until when it keeps, what is left of it. */
export function Care({ record, onHow }: { record: AnyRecord; onHow: () => void }) {
  const left = isStocked(record) ? leftResult(record) : null;
  const useBy = record.kind === 'vial' ? null : useByOf(record);
  const place = placeWords(record);
  const stocked = isStocked(record) ? record : null;
  const facts = [
    ...(stocked && runsLow(stocked) ? [['Running low', 'time for more'] as const] : []),
    ...(place ? [['Stands in', place] as const] : []),
    ...(useBy ? [['Use by', formatDay(useBy.day), useBy.words] as const] : []),
    ...(stocked?.lowAt === undefined
      ? []
      : [['Low at', `${formatPlain(stocked.lowAt)} ${left?.unit ?? 'g'}`] as const]),
  ];
  return (
    <>
      {left && <ResultLine result={left} big={false} onHow={onHow} />}
      <Facts facts={facts} />
    </>
  );
}

/** What can be done with the thing itself: weigh, change, put on the list, put away. */
export function CareActions({ record }: { record: AnyRecord }) {
  const trouble = useSignal('');
  const change = (facts: object) =>
    void keep([{ ...record, ...facts }]).catch((error: unknown) => {
      trouble.value = `The phone could not store this: ${error instanceof Error ? error.message : String(error)}`;
    });
  const task = useTask(isOf('run', record) ? record.task : undefined);
  const page = (name: string) => () => go(['record', record.id, name]);
  const traced = isOf('run', record) ? keptOf(record)[0]?.id : record.id; // a run is traced by what it ended in
  const bought = isOf('bottle', record) || isOf('supply', record);
  const counted = isOf('supply', record) && record.unit === 'pieces';
  return (
    <div class="care-actions">
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
      {isStocked(record) && (
        <Action words={counted ? 'Count what is left' : 'Weigh what is left'} onTap={page('weigh')} />
      )}
      {isEditable(record) && <Action words="Change" onTap={page('edit')} />}
      {canBeMarked(record) && <Action words="Mark smell only" onTap={page('mark')} />}
      {traced && <Action words="Trace" onTap={() => go(['record', traced, 'trace'])} />}
      {canBeMadeAgain(record, task) && <Action words="Make exactly this" onTap={page('again')} />}
      <Action words="Print or CSV" onTap={page('paper')} />
      {bought && (
        <Action
          words={record.buy ? 'Off the shopping list' : 'On the shopping list'}
          onTap={() => change({ buy: !record.buy })}
        />
      )}
      {record.archived ? null : <Action words="Archive" onTap={() => change({ archived: new Date().toISOString() })} />}
    </div>
  );
}

function Action({ words, onTap }: { words: string; onTap: () => void }) {
  return (
    <button class="second" onClick={onTap}>
      {words}
    </button>
  );
}

/** Says that a thing was put away, and brings it back. */
export function ArchivedNotice({ record }: { record: AnyRecord }) {
  if (!record.archived) return null;
  const { archived, ...rest } = record;
  return (
    <p class="demo-notice" role="note">
      <span>Archived {formatDay(archived)}: out of the way, not gone.</span>
      <button class="second" onClick={() => void keep([rest])}>
        Bring it back
      </button>
    </p>
  );
}
