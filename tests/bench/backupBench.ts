import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { writeLargeBackup } from '../browser/largeBackup';
import { newProfile, openPhone, serve } from '../browser/phone';
import { median } from './phoneBench';

const RECORDS = 50_000;

interface Times {
  restore: number;
  backup: number;
  /** The same records put into a bare store with the same indexes, in one transaction flushed to the disk. */
  floor: number;
  /** All of that store read at once and written as one JSON text. */
  readFloor: number;
}

/** A restore into both copies and a backup of all that is stored: medians in ms, beside bare puts and a bare read in the same run. */
export async function backupBench(times = '10'): Promise<void> {
  const site = await serve();
  const runs: Times[] = [];
  for (let i = 0; i < Number(times); i++) runs.push(await once(site.url));
  await site.stop();
  for (const [what, bare] of [['restore', 'floor'] as const, ['backup', 'readFloor'] as const]) {
    const [ms, floorMs] = [what, bare].map((key) => median(runs.map((run) => run[key]))) as [number, number];
    const told = { bench: 'backup', records: RECORDS, runs: Number(times), what, ms: Math.round(ms) };
    console.log(JSON.stringify({ ...told, floorMs: Math.round(floorMs), ratio: Number((ms / floorMs).toFixed(2)) }));
  }
}

async function once(home: string): Promise<Times> {
  const profile = newProfile();
  const { page, context } = await openPhone(profile.dir, { home });
  try {
    const path = join(profile.dir, 'large.json');
    writeLargeBackup(path, RECORDS);
    await page.goto(`${home}#/keeping`);
    await page.locator('input[name=backup]').setInputFiles(path);
    await page.getByText('50,000').first().waitFor();
    const restore = await timed(async () => {
      await page.getByRole('button', { name: 'Restore' }).tap();
      await page.getByText('Restored. Both copies').waitFor({ timeout: 120_000 });
    });
    const backup = await timed(async () => {
      const saved = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save a backup' }).tap();
      await saved;
    });
    return { restore, backup, floor: await barePuts(page), readFloor: await bareRead(page) };
  } finally {
    await context.close();
    profile.forget();
  }
}

async function timed(work: () => Promise<void>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

/** ms */
function barePuts(page: Page): Promise<number> {
  return page.evaluate(
    (many) =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('floor', 1);
        opening.onupgradeneeded = () => {
          const store = opening.result.createObjectStore('records', { keyPath: 'id' });
          store.createIndex('kind', 'kind');
          store.createIndex('open', 'open');
        };
        opening.onsuccess = () => {
          const began = performance.now();
          const writing = opening.result.transaction('records', 'readwrite', { durability: 'strict' });
          const made = '2026-05-04T10:00:00.000Z';
          for (let i = 0; i < many; i++)
            writing.objectStore('records').put({
              id: `01a20000-0000-7000-8000-${String(i).padStart(12, '0')}`,
              kind: 'dropper',
              v: 1,
              made,
              from: [],
              name: `Dropper ${i}`,
              tip: 'glass, 1 mm',
            });
          writing.oncomplete = () => resolve(performance.now() - began);
          writing.onabort = () => reject(writing.error);
        };
      }),
    RECORDS,
  );
}

/** ms */
function bareRead(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('floor', 1);
        opening.onsuccess = () => {
          const began = performance.now();
          const reading = opening.result.transaction('records').objectStore('records').getAll();
          reading.onsuccess = () => {
            new Blob([JSON.stringify(reading.result)]);
            resolve(performance.now() - began);
          };
          reading.onerror = () => reject(reading.error);
        };
      }),
  );
}
