import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { balanceOf } from '../../records/balance';
import { writtenOn } from '../../records/devices';
import { keep } from '../../records/shelf';
import { fullOf, leftOf, type Stocked } from '../../records/stock';
import { formatDay, formatPlain, measuredText } from '../../ui/format';
import { leftText } from '../../ui/left';
import type { Result } from '../../ui/controls/result';

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
      ? [
          {
            words: 'Found to be left',
            text: measuredText(last.left, unit),
            source: weighedWords(last.at, writtenOn(last.by)),
          },
        ]
      : []),
  ];
  const words = [
    'What there was, less what was taken out since: each amount taken may be off by 5 %, all in the same direction (our choice).',
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

function weighedWords(at: string, device: string | null): string {
  return device === null ? `weighed ${formatDay(at)}` : `weighed ${formatDay(at)} on ${device}`;
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

/** Says that a thing was put away, and brings it back. */
export function ArchivedNotice({ record }: { record: AnyRecord }) {
  if (!record.archived) return null;
  const { archived, ...rest } = record;
  return (
    <p class="demo-notice" role="note">
      <span>Archived {formatDay(archived)}: hidden, not deleted.</span>
      <button class="second" onClick={() => void keep([rest])}>
        Restore from archive
      </button>
    </p>
  );
}
