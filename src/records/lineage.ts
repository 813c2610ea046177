import { computed } from '@preact/signals';
import { isOf, kindOf, type AnyRecord, type RecordOf } from './kind/kinds';
import { find, list, shelf } from './shelf';

/** A relative of a record: how many steps away, 1 for the nearest. */
export interface Relative {
  readonly record: AnyRecord;
  readonly steps: number;
}

/** Ids of what a record was made from, directly: as stored, what it took, and the calibrations its uncertainty rests on. */
function originIds(record: AnyRecord): string[] {
  const own = 'uses' in record ? record.uses.map(({ id }) => id) : [];
  return [...new Set([...record.from, ...own, ...(kindOf(record).descent?.(record) ?? []), ...calibrationIds(record)])];
}

/** The uncertainty of a number names its calibration: "calibration:<id>:…", with its size `u`. */
function calibrationIds(record: AnyRecord): string[] {
  const found: string[] = [];
  const look = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('u' in value && 'id' in value && typeof value.id === 'string')
      found.push(...value.id.split(':').filter((part) => find('calibration', part)));
    else for (const inner of Object.values(value)) look(inner);
  };
  look(record);
  return found.filter((id) => id !== record.id);
}

/** Runs are how a thing was made, not what of. */
function isApart(record: AnyRecord): boolean {
  return kindOf(record).descent === null;
}

/** Parents and children by id, over all records but runs. */
const kin = computed(() => {
  const records = shelf.records.value;
  const parents = new Map<string, string[]>();
  const children = new Map<string, string[]>();
  for (const record of records.values()) {
    if (isApart(record)) continue;
    const known = originIds(record).filter((id) => {
      const origin = id === record.id ? undefined : records.get(id);
      return origin !== undefined && !isApart(origin);
    });
    parents.set(record.id, known);
    for (const id of known) {
      if (!children.has(id)) children.set(id, []);
      children.get(id)!.push(record.id);
    }
  }
  return { parents, children };
});

/** Ids of what a record was made from, directly, among what is kept. */
export function parentsOf(id: string): readonly string[] {
  return kin.value.parents.get(id) ?? [];
}

/** All that a record was made from, nearest first. */
export function ancestors(id: string): Relative[] {
  return relatives(id, kin.value.parents);
}

/** All that was made from a record, nearest first. */
export function descendants(id: string): Relative[] {
  return relatives(id, kin.value.children);
}

function relatives(id: string, next: ReadonlyMap<string, readonly string[]>): Relative[] {
  const seen = new Map<string, number>([[id, 0]]); // a damaged backup may hold a circle
  const queue = [id];
  for (const here of queue)
    for (const there of next.get(here) ?? [])
      if (!seen.has(there)) {
        seen.set(there, seen.get(here)! + 1);
        queue.push(there);
      }
  return queue.slice(1).map((one) => ({ record: shelf.records.value.get(one)!, steps: seen.get(one)! }));
}

/** A bottle of a material or of a solvent: what has a lot. */
export type Lot = RecordOf<'bottle'> | RecordOf<'supply'>;

export function isLot(record: AnyRecord): record is Lot {
  return isOf('bottle', record) || isOf('supply', record);
}

/** All bottles on the Shelf of the material or solvent that a record is, or is a bottle of; newest first. */
export function lotsBeside(record: AnyRecord): Lot[] {
  const of = (lot: Lot) => (isOf('bottle', lot) ? lot.material : lot.solvent);
  const id = isLot(record) ? of(record) : record.id;
  return id === undefined ? [] : [...list('bottle'), ...list('supply')].filter((lot) => of(lot) === id);
}

/** What else came from the same bottles, by bottle; without the record itself and what lies between it and the bottle. */
export function sharingLots(id: string): { bottle: Lot; others: AnyRecord[] }[] {
  const before = ancestors(id);
  const own = new Set([
    id,
    ...before.map(({ record }) => record.id),
    ...descendants(id).map(({ record }) => record.id),
  ]);
  const self = shelf.records.value.get(id);
  const bottles = [...before.map(({ record }) => record), ...(self ? [self] : [])].filter(isLot);
  return bottles
    .map((bottle) => ({
      bottle,
      others: descendants(bottle.id).flatMap(({ record }) => (own.has(record.id) ? [] : [record])),
    }))
    .filter(({ others }) => others.length > 0);
}
