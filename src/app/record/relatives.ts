import { expanded, scaled, type Measured } from '../../core/number/measured';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { ancestors, descendants, isLot, toldApart, type Arrow, type Relative } from '../../records/lineage';
import { amountIn, holdingsOf } from '../../records/recall';
import { formatPlain, measuredText } from '../../ui/format';

/** A relative as it is listed: over which arrow, and the grams of the one in the other; undefined where none are told. */
export interface Kin extends Relative {
  readonly arrow: Arrow;
  readonly grams?: Measured | null;
}

/** What a record comes from: first what is in it, each lot and vial with its grams in it, then what led to it. */
export function kinBefore(record: AnyRecord): Kin[] {
  const told = toldApart(ancestors(record.id), ancestors(record.id, 'is in it'));
  return listed(told, (one) => (isWeighed(one) ? amountIn(one.id, record) : undefined));
}

/** What came from a record: first what it is in, with its grams in each, then what it led to. */
export function kinAfter(record: AnyRecord): Kin[] {
  const told = toldApart(descendants(record.id), descendants(record.id, 'is in it'));
  const held = new Map(isWeighed(record) ? holdingsOf(record.id).map((one) => [one.record.id, one.grams]) : []);
  return listed(told, (one) => held.get(one.id));
}

type Told = Readonly<Record<Arrow, readonly Relative[]>>;

function listed(told: Told, gramsOf: (one: AnyRecord) => Measured | null | undefined): Kin[] {
  const isIn = told['is in it'].map((one): Kin => {
    const grams = gramsOf(one.record);
    return { ...one, arrow: 'is in it', ...(grams === undefined ? {} : { grams }) };
  });
  return [...isIn, ...told['led to it'].map((one): Kin => ({ ...one, arrow: 'led to it' }))];
}

/** Whether grams of it are told: of a bottle, a pack, a vial; not of a material, which may come from several. */
function isWeighed(record: AnyRecord): boolean {
  return isLot(record) || isOf('vial', record);
}

/** '2.0 ± 0.1 mg', '1.5 g': below 1 g in mg; three digits where its ± is not known. */
export function gramsText(grams: Measured | null): string {
  if (!grams) return 'grams not written down';
  const [amount, unit] = grams.value < 1 ? ([scaled(grams, 1000), 'mg'] as const) : ([grams, 'g'] as const);
  return expanded(amount) > 0 ? measuredText(amount, unit) : `${formatPlain(amount.value, 3)} ${unit}`;
}
