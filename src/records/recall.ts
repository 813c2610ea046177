import { exact, over, plus, scaled, times, type Measured } from '../core/number/measured';
import { isOf, type AnyRecord } from './kind/kinds';
import { ancestors, descendants, isLot, partsOf, type Lot } from './lineage';
import { find, shelf } from './shelf';

/** Something that holds a lot, and the grams of that lot in it as it was made; null where no one wrote them down. */
export interface Holding {
  readonly record: AnyRecord;
  readonly grams: Measured | null;
}

/**
 * Grams of one thing (`of`: a bottle, a pack, a vial) in a record as it was made, followed through all that it was made from
 * by share of mass; exactly 0 where none of it is in there, null where the grams of some step are not written down. The ±
 * is that of the strengths and weighings on the way; without one where they have none.
 */
export function amountIn(of: string, record: AnyRecord): Measured | null {
  return gramsIn(of, record, { found: new Map(), open: new Set() });
}

interface Search {
  readonly found: Map<string, Measured | null>;
  /** Records that are being looked into: a damaged backup may hold a circle. */
  readonly open: Set<string>;
}

function gramsIn(of: string, record: AnyRecord, search: Search): Measured | null {
  const known = search.found.get(record.id);
  if (known !== undefined) return known;
  if (search.open.has(record.id)) return exact(0);
  search.open.add(record.id);
  const terms = partsOf(record).map(({ id, grams }) => {
    const share = shareIn(of, id, search);
    if (share?.value === 0) return share;
    return share && grams && times(grams, share);
  });
  search.open.delete(record.id);
  const sum = terms.every((term) => term !== null) ? plus(...terms) : null;
  const result = sum && knownAs(of, record, sum);
  search.found.set(record.id, result);
  return result;
}

/** g of `of` per g of the thing with that id. A bottle or pack is all of what it is a bottle of. */
function shareIn(of: string, id: string, search: Search): Measured | null {
  if (id === of) return exact(1);
  const thing = shelf.records.value.get(id);
  if (!thing) return exact(0);
  if (isLot(thing)) return exact(partsOf(thing).some((part) => part.id === of) ? 1 : 0);
  const grams = gramsIn(of, thing, search);
  if (!grams || grams.value === 0) return grams;
  return isOf('vial', thing) && thing.massG.value > 0 ? over(grams, thing.massG) : null;
}

/** Of a bottle's material a vial knows its strength, and how well: the grams are known as well as that. */
function knownAs(of: string, record: AnyRecord, grams: Measured): Measured {
  const material = find('bottle', of)?.material;
  if (!isOf('vial', record) || material === undefined || grams.value === 0) return grams;
  const strength = record.contents.find((part) => part.material === material)?.strength;
  const inAll = strength && times(strength, record.massG);
  return inAll && inAll.value > 0 ? { ...scaled(inAll, grams.value / inAll.value), value: grams.value } : grams;
}

/** All that holds a bottle, pack or vial, nearest first, with the grams of it in each. */
export function holdingsOf(of: string): Holding[] {
  const search = { found: new Map(), open: new Set<string>() };
  return descendants(of, 'is in it').map(({ record }) => ({ record, grams: gramsIn(of, record, search) }));
}

/** What else holds the lots that are in a record, by lot; without the record itself and what lies between it and the lot. */
export function sharingLots(id: string): { lot: Lot; others: Holding[] }[] {
  const before = ancestors(id, 'is in it').map(({ record }) => record);
  const own = new Set([id, ...before.map((one) => one.id), ...descendants(id, 'is in it').map((one) => one.record.id)]);
  return before
    .filter(isLot)
    .map((lot) => ({ lot, others: holdingsOf(lot.id).filter(({ record }) => !own.has(record.id)) }))
    .filter(({ others }) => others.length > 0);
}
