import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { findChromium } from './findBrowser';
import { runKills } from './kills';
import { newProfile } from './phone';
import { serveStore } from './serveStore';
import type { StorePage } from './storePage/storePage';

declare const store: StorePage;

let site: Awaited<ReturnType<typeof serveStore>>;
let profile: ReturnType<typeof newProfile>;
let context: BrowserContext;
let page: Page;

let url: string;

beforeAll(async () => {
  site = await serveStore();
  profile = newProfile();
  context = await chromium.launchPersistentContext(profile.dir, {
    executablePath: findChromium(),
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
});
afterAll(async () => {
  await context.close();
  site.stop();
  profile.forget();
});

let tests = 0;
beforeEach(async () => {
  url = site.url.replace('127.0.0.1', `phone${++tests}.localhost`); // an origin of its own: nothing of the last test is there
  page = await context.newPage();
});
afterEach(() => page.close());

/** Opens the store and waits until both copies were compared and nothing is under way any more. */
async function openStore(): Promise<{ keys: string[]; mended: readonly string[]; refilled: boolean; why: string }> {
  await page.goto(url);
  return page.evaluate(async () => {
    await store.opened;
    for (let i = 0; i < 100 && /rewritten/.test(store.copies().why); i++)
      await new Promise((resolve) => setTimeout(resolve, 50));
    const { refilled, ...copies } = store.copies();
    return { keys: (await store.keys()).sort(), ...copies, refilled: refilled !== '' };
  });
}

/** Writes that many times, each write one record and two events; gives the keys. */
function writeSome(times: number): Promise<string[]> {
  return page.evaluate(async (times) => {
    const keys: string[] = [];
    const run = store.newRecord('run', { task: 'count', open: 1, kept: [], title: 'Count' });
    await store.write([{ record: run }]);
    keys.push(run.id);
    for (let i = 0; i < times; i++) {
      const record = store.newRecord('dropper', { name: `Dropper ${i} — «é» 💧`, tip: 'glass' });
      const events = [2 * i, 2 * i + 1].map((seq) => ({ run: run.id, seq, at: '', type: 'drop' as const, key: 'k' }));
      await store.write([{ record }, ...events.map((event) => ({ event }))]);
      keys.push(record.id, ...events.map(({ seq }) => `${run.id}/${seq}`));
    }
    return keys.sort();
  }, times);
}

/** Does something behind the app's back, on a page of the same address that has nothing open. */
async function behindItsBack(deed: () => Promise<unknown>): Promise<void> {
  await page.goto(new URL('blank.html', url).href);
  await page.evaluate(deed);
}

const deleteStore = () =>
  new Promise((resolve, reject) => {
    const deletion = indexedDB.deleteDatabase('minim');
    deletion.onsuccess = resolve;
    deletion.onerror = deletion.onblocked = reject;
  });

type Bytes = (bytes: Uint8Array) => Uint8Array;
/** Changes every file of the journal; the change is handed over as its source text. */
async function changeJournal(change: Bytes): Promise<void> {
  await page.goto(new URL('blank.html', url).href);
  await page.evaluate(async (source) => {
    const change = new Function(`return ${source}`)() as Bytes;
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('journal');
    for await (const file of (folder as unknown as { values(): AsyncIterable<FileSystemFileHandle> }).values()) {
      const bytes = new Uint8Array(await (await file.getFile()).arrayBuffer());
      const writable = await file.createWritable();
      await writable.write(change(bytes) as Uint8Array<ArrayBuffer>);
      await writable.close();
    }
  }, change.toString());
}

describe('the browser is killed while it writes', () => {
  test('a hundred times, and nothing that was acknowledged is missing', { timeout: 600_000 }, async () => {
    const figures = await runKills(100);
    console.info('kills', JSON.stringify(figures));
    expect(figures.acknowledged).toBeGreaterThan(100);
    expect(figures.lost).toBe(0);
  });
});

describe('pictures', () => {
  test('among other records are all in both copies, and read a few at a time', async () => {
    await openStore();
    const keys = await page.evaluate(async () => {
      const records = Array.from({ length: 400 }, (_, i) =>
        i % 7 < 2
          ? store.newRecord('picture', { type: 'image/jpeg', data: 'AbCd'.repeat(40_000 + i) })
          : store.newRecord('dropper', { name: `Dropper ${i}`, tip: 'glass' }),
      );
      for (let i = 0; i < records.length; i += 20)
        await store.write(records.slice(i, i + 20).map((record) => ({ record })));
      await store.rewriteJournal();
      return records.map(({ id }) => id).sort();
    });
    expect(await page.evaluate(() => store.keys())).toEqual(keys);
    expect(await page.evaluate(() => store.mostPicturesAPage())).toBe(20);
    await page.evaluate(() => store.lookThroughCopies());
    const compared = await page.evaluate(() => store.copies().mended.join(' '));
    expect(compared).toBe('Compared 400 records and 0 steps in both copies.');
    await behindItsBack(deleteStore);
    expect(await openStore()).toMatchObject({ keys, refilled: true, why: '' });
  });
});

describe('the store', () => {
  test('deleted between two sessions is filled from the journal, and Minim says so', async () => {
    await openStore();
    const keys = await writeSome(20);
    await behindItsBack(deleteStore);
    const after = await openStore();
    expect(after.keys).toEqual(keys);
    expect(after).toMatchObject({ refilled: true, why: '' });
    expect(after.mended[0]).toContain('Nothing is missing');
    expect(await openStore()).toMatchObject({ keys, refilled: false, mended: [] });
  });

  test('deleted while Minim is open comes back with the next write', async () => {
    await openStore();
    const keys = await writeSome(10);
    await page.evaluate(deleteStore);
    const more = await writeSome(3);
    const now = await page.evaluate(() => store.keys());
    expect(now.sort()).toEqual([...keys, ...more].sort());
    expect(await openStore()).toMatchObject({ keys: now.sort() });
  });

  test('deleted while the journal is written anew from it comes back from the old journal', async () => {
    await openStore();
    const keys = await writeSome(200);
    await page.evaluate(async () => {
      const rewriting = store.rewriteJournal();
      await new Promise((resolve) => (indexedDB.deleteDatabase('minim').onsuccess = resolve));
      await rewriting;
    });
    expect(await openStore()).toMatchObject({ keys, refilled: true, why: '' });
  });

  test('gone together with the journal is told by the mark outside both', async () => {
    await openStore();
    await writeSome(3);
    await behindItsBack(deleteStore);
    await behindItsBack(async () =>
      (await navigator.storage.getDirectory()).removeEntry('journal', { recursive: true }),
    );
    expect((await openStore()).keys).toEqual([]);
    expect(await page.evaluate(() => store.lost())).toMatchObject({ on: new Date().toISOString().slice(0, 10) });
  });
});

describe('the journal', () => {
  const faults: Record<string, Bytes> = {
    'torn in its last line': (bytes) => bytes.slice(0, -7),
    'torn in the middle': (bytes) => bytes.map((byte, i) => (Math.abs(i - bytes.length / 2) < 40 ? 120 : byte)),
    truncated: (bytes) => bytes.slice(0, bytes.length / 3),
    emptied: () => new Uint8Array(0),
    'with its head gone': (bytes) => bytes.map((byte, i) => (i < 159 ? 32 : byte)),
    'with its lines doubled': (bytes) => new Uint8Array([...bytes, ...bytes.slice(160)]),
    'followed by zeros': (bytes) => new Uint8Array([...bytes, ...new Uint8Array(5000)]),
    'filled with noise': (bytes) => bytes.map((_, i) => (i * 7919) % 251),
  };
  for (const [fault, change] of Object.entries(faults)) {
    test(`${fault} is mended from the store, and then fills a deleted store`, async () => {
      await openStore();
      const keys = await writeSome(12);
      await changeJournal(change);
      expect(await openStore()).toMatchObject({ keys, refilled: false, why: '' });
      if (fault === 'torn in the middle') await page.evaluate(() => store.lookThroughCopies()); // found once a day, or when asked
      const more = [...keys, ...(await writeSome(2))].sort();
      await behindItsBack(deleteStore);
      expect(await openStore()).toMatchObject({ keys: more, refilled: true, why: '' });
    });
  }

  test('torn in the middle when the store is gone too says how much is missing', async () => {
    await openStore();
    const keys = await writeSome(12);
    await behindItsBack(deleteStore);
    await changeJournal(faults['torn in the middle']!);
    const after = await openStore();
    expect(after.keys.length).toBeGreaterThan(keys.length - 8);
    expect(after.keys.length).toBeLessThan(keys.length);
    expect(after.mended[0]).toMatch(/(1 entry of it was|2 entries of it were) damaged and may be missing/);
  });

  test('whose files are deleted is written anew', async () => {
    await openStore();
    const keys = await writeSome(12);
    await behindItsBack(async () =>
      (await navigator.storage.getDirectory()).removeEntry('journal', { recursive: true }),
    );
    expect(await openStore()).toMatchObject({ keys, why: '' });
    await behindItsBack(deleteStore);
    expect(await openStore()).toMatchObject({ keys, refilled: true });
  });

  test('written anew many times over stays whole', async () => {
    await openStore();
    const keys = await writeSome(5);
    const during = page.evaluate(async () => {
      for (let i = 0; i < 10; i++) await store.rewriteJournal();
    });
    keys.push(...(await writeSome(30)));
    await during;
    await behindItsBack(deleteStore);
    expect(await openStore()).toMatchObject({ keys: keys.sort(), refilled: true });
  });
});
