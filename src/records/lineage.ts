import { computed } from '@preact/signals';
import { isOf, kindOf, type AnyRecord, type KindName, type RecordOf } from './kind/kinds';
import type { Part } from './kind/record';
import { find, list, shelf } from './shelf';

/** How one record comes from another: the other is in it, or led to it without being in it. */
export type Arrow = 'is in it' | 'led to it';

/** A relative of a record: how many steps away, 1 for the nearest. */
export interface Relative {
  readonly record: AnyRecord;
  readonly steps: number;
}

/** What can be poured: named in `from` of a thing that holds something, it is in that thing. */
const poured: ReadonlySet<KindName> = new Set(['material', 'solvent', 'bottle', 'supply', 'vial', 'base']);

/**
 * What is in a record, directly: what it took by name, and what its `from` names beside that and can be poured, of which no
 * one wrote grams down. Ids that are not on the Shelf are among them.
 */
export function partsOf(record: AnyRecord): readonly Part[] {
  const records = shelf.records.value;
  if (partsNow.of !== records) partsNow = { of: records, parts: new WeakMap() };
  const known = partsNow.parts.get(record);
  if (known) return known;
  const parts = partsIn(record);
  partsNow.parts.set(record, parts);
  return parts;
}

/** Lineage, grade and amounts ask for the same parts, of every record. */
let partsNow = { of: shelf.records.peek(), parts: new WeakMap<AnyRecord, readonly Part[]>() };

function partsIn(record: AnyRecord): readonly Part[] {
  const isIn = kindOf(record).descent?.(record).isIn ?? null;
  if (isIn === null) return [];
  const named = new Set(isIn.map(({ id }) => id));
  const others = record.from.filter((id) => {
    const origin = shelf.records.value.get(id);
    return origin && !named.has(id) && poured.has(origin.kind) && !isCopyOf(record, origin);
  });
  return [...isIn, ...others.map((id) => ({ id, grams: null }))];
}

/** Whether something can be in a record; never in a formula, a layering, a measurement or an instrument. */
export function canHold(record: AnyRecord): boolean {
  return kindOf(record).descent?.(record).isIn != null;
}

/** Whether one of two records is a copy of the other, kept beside it because both were changed on two devices. Nothing is poured into its copy. */
function isCopyOf(record: AnyRecord, origin: AnyRecord): boolean {
  if (record.kind !== origin.kind || record.made !== origin.made) return false;
  return !('uses' in record && record.uses.some(({ id }) => id === origin.id));
}

/** What a record is the other copy of; undefined for the most of them. */
export function originalOf(record: AnyRecord): AnyRecord | undefined {
  const records = shelf.records.value;
  for (const id of record.from) {
    const origin = id === record.id ? undefined : records.get(id);
    if (origin && isCopyOf(record, origin)) return origin;
  }
  return undefined;
}

/** Ids of what led to a record, directly, without being in it: the calibrations that its uncertainty rests on, too. */
function leadingIds(record: AnyRecord, parts: readonly Part[]): string[] {
  const isIn = new Set(parts.map(({ id }) => id));
  const named = kindOf(record).descent?.(record).ledTo ?? [];
  return [...record.from, ...named, ...calibrationIds(record)].filter((id) => !isIn.has(id));
}

/** The uncertainty of a number names its calibration: "calibration:<id>:…", with its size `u`. */
function calibrationIds(record: AnyRecord): string[] {
  const named = sourcesNamed.get(record) ?? sourcesIn(record);
  return named.filter((id) => id !== record.id && find('calibration', id));
}

/** The parts of the ids of the sources in a record; it is never changed, so they are looked for once. */
const sourcesNamed = new WeakMap<AnyRecord, readonly string[]>();

function sourcesIn(record: AnyRecord): readonly string[] {
  const found: string[] = [];
  const look = (value: object): void => {
    if ('u' in value && 'id' in value && typeof value.id === 'string') return void found.push(...value.id.split(':'));
    for (const key in value) {
      const inner: unknown = value[key as keyof object];
      if (typeof inner === 'object' && inner !== null) look(inner);
    }
  };
  look(record);
  sourcesNamed.set(record, found);
  return found;
}

/** Runs are how a thing was made: nothing descends from them. */
function isApart(record: AnyRecord): boolean {
  return kindOf(record).descent === null;
}

type Way = Arrow | 'both';
type Ids = Map<string, string[]>;
const noKin = (): Readonly<Record<Way, { parents: Ids; children: Ids }>> => {
  const none = () => ({ parents: new Map(), children: new Map() });
  return { 'is in it': none(), 'led to it': none(), both: none() };
};

/** Parents and children by id and arrow, over all records but runs. */
const kin = computed(() => {
  const records = shelf.records.value;
  const found = noKin();
  const put = (ids: Ids, from: string, to: string) => void (ids.get(from) ?? ids.set(from, []).get(from)!).push(to);
  for (const record of records.values()) {
    if (isApart(record)) continue;
    const parts = partsOf(record);
    const arrows = { 'is in it': parts.map(({ id }) => id), 'led to it': leadingIds(record, parts) };
    for (const arrow of ['is in it', 'led to it'] as const)
      for (const id of new Set(arrows[arrow])) {
        const origin = id === record.id ? undefined : records.get(id);
        if (!origin || isApart(origin)) continue;
        for (const way of [arrow, 'both'] as const) {
          put(found[way].parents, record.id, id);
          put(found[way].children, id, record.id);
        }
      }
  }
  return found;
});

/** Ids of what a record comes from, directly, among what is kept; by one kind of arrow or by both. */
export function parentsOf(id: string, way: Way = 'both'): readonly string[] {
  return kin.value[way].parents.get(id) ?? [];
}

/** All that a record comes from, nearest first; over one kind of arrow only, or over both. */
export function ancestors(id: string, way: Way = 'both'): Relative[] {
  return relatives(id, kin.value[way].parents);
}

/** All that came from a record, nearest first; over one kind of arrow only, or over both. */
export function descendants(id: string, way: Way = 'both'): Relative[] {
  return relatives(id, kin.value[way].children);
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

/** Relatives of one record, told apart: what is in it (or it is in), and what is bound to it by an idea or a measurement only. */
export function toldApart(all: readonly Relative[], isIn: readonly Relative[]): Readonly<Record<Arrow, Relative[]>> {
  const inside = new Set(isIn.map(({ record }) => record.id));
  return { 'is in it': [...isIn], 'led to it': all.filter(({ record }) => !inside.has(record.id)) };
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
