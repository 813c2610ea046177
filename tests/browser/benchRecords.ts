import type { Page } from 'playwright-core';
import { newId, newRecord } from '../../src/records/shelf';
import { freshState, stateAfter } from '../../src/records/store/state';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { solventsOnHand } from '../../src/workshop/onHand';

interface Facts {
  code: string;
  name: string;
  solvent?: string;
  grade?: 'smell only' | 'fit for drinks';
  supplier?: string;
  lot?: string;
}

/** A 1 % vial in a solvent of the table, as Dilute would have kept it. Suppliers and lots are made up. */
export function vialRecord({ code, name, solvent = 'ethanol-96', grade = 'fit for drinks', supplier, lot }: Facts) {
  const { liquid: _, foodPossible: __, ...copy } = solventsOnHand().find(({ id }) => id === solvent)!;
  return newRecord('vial', {
    code,
    name,
    grade,
    madeOn: '2026-05-04',
    useBy: '2027-05-04',
    supplier: supplier ?? 'Northgate Botanicals (made up)',
    lot: lot ?? `${code}-17`,
    contents: [
      { material: `m-${code}`, name, strength: { value: 0.01287, sources: [{ id: 'd', words: 'drops', u: 0.0007 }] } },
    ],
    label: { value: 1, basis: '% w/v' },
    solvent: { ...copy, food: grade === 'fit for drinks' },
    massG: { value: 8.2, sources: [] },
    densityGPerMl: 0.812,
    sizeMl: 10,
    uses: [],
  });
}

/** Puts records into the store of an open page and loads it again, as if they had been made on this phone. */
export async function shelve(page: Page, records: readonly AnyRecord[]): Promise<void> {
  await put(page, records);
  await page.reload();
  await page.waitForFunction(() => document.querySelector('main'));
}

/** Puts records into the store of an open page, which does not hear of it. */
export async function put(page: Page, records: readonly AnyRecord[]): Promise<void> {
  await page.evaluate(
    ([stored, first]) =>
      new Promise<void>((resolve, reject) => {
        const asked = indexedDB.open('minim');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const work = asked.result.transaction(['records', 'meta'], 'readwrite');
          for (const record of stored) work.objectStore('records').put(record);
          const state = work.objectStore('meta').get('state');
          state.onsuccess = () => state.result ?? work.objectStore('meta').put(first, 'state');
          work.oncomplete = () => {
            asked.result.close();
            resolve();
          };
          work.onerror = () => reject(work.error);
        };
      }),
    [
      records,
      stateAfter(
        freshState(newId()),
        records.map((record) => ({ record })),
      ),
    ] as const,
  );
}
