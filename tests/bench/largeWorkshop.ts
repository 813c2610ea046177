import type { Page } from 'playwright-core';
import { put, vialRecord } from '../browser/benchRecords';
import { newRecord } from '../../src/records/shelf';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { substances } from '../../src/tables/catalogue/substances';

const MATERIALS = 200;
const PORTION = 4000; // records handed to the page at a time

/** A time-ordered id, the same in every run. */
const idOf = (kind: number, i: number) => `01a2${kind}000-0000-7000-8000-${String(i).padStart(12, '0')}`;
export const vialId = (i: number) => idOf(2, i);
export const bottleId = (i: number) => idOf(1, i);

function dayOf(i: number, many: number): string {
  return new Date(Date.UTC(2024, 0, 1) + (i / many) * 1000 * 86_400_000).toISOString();
}

/** 200 materials with a bottle each, vials diluted from them, and ended runs, of which every fifth made a vial; each of them the same in every run. */
export function largeWorkshop(vials: number, runs: number): AnyRecord[] {
  const names = Array.from({ length: MATERIALS }, (_, i) => substances[i % substances.length]!.name);
  const codeOf = (i: number) => `${'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[i % 26]}${names[i]!.replace(/[^a-z]/g, '').slice(0, 2).toUpperCase()}${i}`; // prettier-ignore
  const material = (i: number) => ({
    ...newRecord('material', { id: idOf(0, i), name: names[i]!, code: codeOf(i), sort: 'substance', form: 'liquid', cautions: [] }), // prettier-ignore
    made: dayOf(0, 1),
  });
  const bottle = (i: number) => ({
    ...newRecord('bottle', { id: bottleId(i), material: idOf(0, i), supplier: 'Northgate Botanicals (made up)', lot: `L-${i}`, amountG: 5000, grade: 'fit for drinks' }), // prettier-ignore
    made: dayOf(0, 1),
  });
  const vial = (i: number) => {
    const from = i % MATERIALS;
    const one = vialRecord({ code: codeOf(from), name: names[from]!, lot: `L-${from}` });
    const made = dayOf(i, vials);
    return {
      ...one,
      id: vialId(i),
      made,
      madeOn: made.slice(0, 10),
      useBy: `${Number(made.slice(0, 4)) + 3}${made.slice(4, 10)}`,
      from: [bottleId(from)],
      contents: [{ ...one.contents[0]!, material: idOf(0, from) }],
      uses: [{ id: bottleId(from), name: names[from]!, massG: 0.1, lot: `L-${from}` }],
    };
  };
  const run = (i: number) => {
    const made = dayOf(i, runs);
    const kept = i % 5 === 0 && i / 5 < vials ? [vialId(i / 5)] : [];
    const task = kept.length > 0 ? 'dilute' : ['count', 'layer', 'dose', 'calibrate'][i % 4]!;
    return { ...newRecord('run', { id: idOf(3, i), task, kept, title: `${task} no. ${i}`, endedAt: made }), made };
  };
  const each = <T>(many: number, one: (i: number) => T) => Array.from({ length: many }, (_, i) => one(i));
  return [...each(MATERIALS, material), ...each(MATERIALS, bottle), ...each(vials, vial), ...each(runs, run)];
}

/** Puts all of it into the store of an open page. */
export async function stock(page: Page, records: readonly AnyRecord[]): Promise<void> {
  for (let i = 0; i < records.length; i += PORTION) await put(page, records.slice(i, i + PORTION));
}
