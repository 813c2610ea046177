import { computed } from '@preact/signals';
import { measured, type Measured } from '../core/number/measured';
import { amountLeft, isLow, type Taking } from '../core/dilution/stock';
import { isOf, type AnyRecord } from './kind/kinds';
import type { Bottle } from './kind/material';
import { shelf } from './shelf';
import type { Supply } from './kind/supply';
import type { Vial } from './kind/vial';

export type Stocked = Bottle | Vial | Supply;

/** Our choice: the amount on a bottle's label or a pack is right within 1 % (standard). */
const LABEL_DOUBT = 0.01;

/** What was taken, by the id of what it was taken from; strips, vials and solvent from a bottle no one named are counted off packs by sort. */
const takings = computed(() => {
  const found = new Map<string, Taking[]>();
  const put = (id: string, amount: number, at: string) => {
    if (!found.has(id)) found.set(id, []);
    found.get(id)!.push({ at, amount });
  };
  for (const record of shelf.records.value.values()) {
    if ('uses' in record) for (const { id, massG } of record.uses) put(id, massG, record.made);
    if (isOf('vial', record)) takingsOfVial(record, put);
    if (isOf('layering', record)) put('strips', record.strips.length, record.made);
  }
  return found;
});

function takingsOfVial(vial: Vial, put: (id: string, amount: number, at: string) => void): void {
  const named = vial.uses.reduce((sum, { id, massG }) => (id === vial.solvent?.id ? sum : sum + massG), 0);
  if (vial.solvent) put(`solvent ${vial.solvent.id}`, Math.max(0, vial.massG.value - named), vial.made);
  put('vials', 1, vial.made);
}

/** Packs of a sort follow one another: what is taken from none by name counts off the newest one of its time. */
function takingsOf(record: Stocked): readonly Taking[] {
  const own = takings.value.get(record.id) ?? [];
  if (!isOf('supply', record)) return own;
  const { sort, solvent, made } = record;
  const next = [...shelf.records.value.values()]
    .flatMap((other) => (isOf('supply', other) && other.sort === sort && other.solvent === solvent ? other.made : []))
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
  return measured(amount, counted ? 0 : amount * LABEL_DOUBT, { id: `label:${record.id}`, words });
}

/** What is left, in g or pieces; null when no one said how much there was, and it was never weighed. */
export function leftOf(record: Stocked): Measured | null {
  const full = fullOf(record);
  const weighed = record.weighed ?? [];
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
