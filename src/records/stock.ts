import { computed } from '@preact/signals';
import { measured, type Measured } from '../core/number/measured';
import { amountLeft, isLow, type Taking } from '../core/dilution/stock';
import { isOf, type AnyRecord } from './kind/kinds';
import type { Bottle } from './kind/material';
import { originalOf } from './lineage';
import { find, shelf } from './shelf';
import { orderedAt } from './union/dots';
import type { Supply } from './kind/supply';
import { restOf, type Vial } from './kind/vial';

export type Stocked = Bottle | Vial | Supply;

/** Our choice: the amount on a bottle's label or a pack is right within 1 % (standard). */
const LABEL_DOUBT = 0.01;

/** What one record took: of what (an id, or a sort where no one named the bottle), how much, in g or pieces. Takings and weighings are in the order of the counters of their writes, so that a clock that is wrong changes no amount. */
export interface Taken extends Taking {
  readonly of: string;
  readonly record: AnyRecord;
}

/** All that was taken, by what it was taken from; strips, vials and solvent from a bottle no one named go by sort. */
const takings = computed(() => {
  const found = new Map<string, Taken[]>();
  for (const record of shelf.records.value.values())
    for (const one of takenBy(record)) {
      const of = firstOf(one.of);
      (found.get(of) ?? found.set(of, []).get(of)!).push(one);
    }
  return found;
});

/**
 * What a record took. The other copy of a record took nothing: it is one thing, made once. A strip is counted off its pack;
 * of the vial that it was dipped in a dip takes about nothing (common practice, no source).
 */
function takenBy(record: AnyRecord): Taken[] {
  if (originalOf(record)) return [];
  const taken = (of: string, amount: number): Taken => ({ of, amount, at: orderedAt(record, record.made), record });
  const named = 'uses' in record ? record.uses.map(({ id, massG }) => taken(id, massG)) : [];
  if (isOf('layering', record)) return [...named, taken('strips', record.strips.length)];
  if (!isOf('vial', record)) return named;
  const { solvent, from } = record;
  const isAsked = from.some((id) => find('batch', id)); // left over from a batch, which asks which bottle its carrier comes from
  const unnamed = solvent && !isAsked ? [taken(`solvent ${solvent.id}`, restOf(record))] : [];
  return [...named, ...unnamed, taken('vials', 1)];
}

/** The id of the thing itself: of the other copy of a record that of the record, for they are one bottle. */
function firstOf(id: string): string {
  const record = shelf.records.value.get(id);
  return (record && originalOf(record)?.id) ?? id;
}

/** All that was taken from a bottle, vial or pack, whichever of its copies the taking names. Packs of a sort follow one another: what is taken from none by name counts off the newest one of its time. */
export function takingsOf(record: Stocked): readonly Taken[] {
  const own = takings.value.get(firstOf(record.id)) ?? [];
  if (!isOf('supply', record)) return own;
  const { sort, solvent } = record;
  const made = orderedAt(record, record.made);
  const next = [...shelf.records.value.values()]
    .flatMap((other) =>
      isOf('supply', other) && other.sort === sort && other.solvent === solvent ? orderedAt(other, other.made) : [],
    )
    .filter((other) => other > made)
    .sort()[0];
  const name = sort === 'solvent' ? `solvent ${solvent}` : sort;
  const unnamed = takings.value.get(name) ?? [];
  return [...own, ...unnamed.filter(({ at }) => at > made && (next === undefined || at < next))];
}

/** What there was at first: as made, or as the label says, in g or pieces; null when no one said. */
export function fullOf(record: Stocked): Measured | null {
  if (isOf('vial', record)) return record.massG;
  const amount = isOf('supply', record) ? record.amount : record.amountG;
  if (amount === undefined) return null;
  const counted = isOf('supply', record) && record.unit === 'pieces';
  const words = 'amount on the label';
  const byDensity = isOf('bottle', record) ? record.amountU : undefined;
  const byLabel = counted ? 0 : amount * LABEL_DOUBT;
  const u = byDensity === undefined ? byLabel : Math.hypot(byLabel, byDensity);
  return measured(amount, u, { id: `label:${record.id}`, words });
}

/** What is left, in g or pieces; null when no one said how much there was, and it was never weighed. */
export function leftOf(record: Stocked): Measured | null {
  const full = fullOf(record);
  const weighed = (record.weighed ?? []).map((one) => ({ ...one, at: orderedAt(one, one.at) }));
  if (!full && weighed.length === 0) return null;
  return amountLeft({ id: record.id, full: full ?? weighed[0]!.left, takings: takingsOf(record), weighed });
}

/** Whether it is time to make or buy more. */
export function runsLow(record: Stocked): boolean {
  const left = leftOf(record);
  const full = fullOf(record)?.value ?? left?.value ?? 0;
  return left !== null && isLow(left.value, full, record.lowAt);
}

/** Whether a record is one whose amount is watched. */
export function isStocked(record: AnyRecord): record is Stocked {
  return isOf('bottle', record) || isOf('vial', record) || isOf('supply', record);
}
