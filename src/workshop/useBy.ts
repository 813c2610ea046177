import { monthsLater } from '../core/number/calendar';
import { isOf, type AnyRecord } from '../records/kind/kinds';
import type { Bottle, Material } from '../records/kind/material';
import { find } from '../records/shelf';
import { shelfLives, type ShelfLifeRow } from '../tables/shelfLife';
import type { LiquidClass } from '../tables/solvents';

/** The last day of use (YYYY-MM-DD), and where that is known from. */
export interface UseBy {
  readonly day: string;
  readonly words: string;
}

function laterBy(from: string, row: ShelfLifeRow): string {
  if (row.months) return monthsLater(from, row.months[0]); // the shorter end of what the source gives
  return new Date(Date.parse(from) + (row.days ?? 0) * 86_400_000).toISOString().slice(0, 10);
}

function sooner(a: UseBy, b: UseBy | null): UseBy {
  return b && b.day < a.day ? { day: b.day, words: `no longer than what it is made from: ${b.words}` } : a;
}

/** Until when a new dilution keeps: by its materials and solvent, and not longer than the bottle it came from. */
export function useByOfDilution(facts: {
  madeOn: string;
  /** Families of its materials, as the catalogue names them. */
  families: readonly string[];
  liquid: LiquidClass | null;
  /** The last day of what it is made from. */
  source: UseBy | null;
}): UseBy {
  const row = facts.families.some((family) => family === 'aldehyde' || family === 'sulfur')
    ? shelfLives['of aldehyde']
    : facts.liquid === 'water' || facts.liquid === 'dilute spirit'
      ? shelfLives['in water']
      : facts.liquid === 'ethanol' || facts.liquid === 'isopropanol'
        ? shelfLives['in ethanol']
        : shelfLives['in carrier'];
  const own = { day: laterBy(facts.madeOn, row), words: `${row.what}: ${row.source}` };
  return sooner(own, facts.source);
}

/** Until when a bottle keeps: by its label, else by its kind from the day it was opened, received or put on the Shelf. */
export function useByOfBottle(bottle: Bottle, material: Material | undefined): UseBy | null {
  if (bottle.useBy) return { day: bottle.useBy, words: 'as the label says' };
  const family = material?.family;
  if (family !== 'citrus oil' && family !== 'oil' && family !== 'slow oil') return null;
  const row = shelfLives[family];
  const [since, words] = bottle.opened
    ? [bottle.opened, 'opened']
    : [bottle.received ?? bottle.made.slice(0, 10), 'since it came'];
  return { day: laterBy(since, row), words: `${row.what}, ${words}: ${row.source}` };
}

/** Until when a thing of the Shelf may be used; null where nothing is known. */
export function useByOf(record: AnyRecord): UseBy | null {
  if (isOf('bottle', record)) return useByOfBottle(record, find('material', record.material));
  const day = 'useBy' in record ? record.useBy : undefined;
  return day ? { day, words: isOf('vial', record) ? 'as written on its label' : 'as the label says' } : null;
}
