import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inOrder } from '../../src/records/union/json';
import { shelve, vialRecord } from './benchRecords';
import { serve } from './phone';
import { until } from './driven';
import { Held } from './twoPhones';

/**
 * Two browser processes and a folder that something keeps in step. No test can use the browser's own picker: a folder of the
 * origin's private file system (the same interface) is chosen in its place, one in each process, and the test carries the
 * files from one to the other, now and then torn, as a service does that keeps two folders in step.
 */
let site: { url: string; stop: () => Promise<void> };
let two: readonly [Held, Held];
const carried = { files: 0, torn: 0 };

beforeAll(async () => {
  site = await serve();
  two = [new Held(site.url, false), new Held(site.url, false)];
  for (const held of two) await held.open(chooseFromPrivate);
});
afterAll(async () => {
  for (const held of two) await held.end();
  await site.stop();
  expect(two.flatMap(({ complaints }) => complaints)).toEqual([]);
});

/** The picker gives a folder of the private file system. */
function chooseFromPrivate(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    Object.assign(window, {
      showDirectoryPicker: async () =>
        (await navigator.storage.getDirectory()).getDirectoryHandle('shared', { create: true }),
    });
  });
}

type Files = Record<string, string>;

function filesOf({ page }: Held): Promise<Files> {
  return page.evaluate(async () => {
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('shared', { create: true });
    const files: Files = {};
    for await (const [name, handle] of folder.entries())
      if (handle.kind === 'file' && !name.endsWith('.crswap'))
        files[name] = await textOf(handle as FileSystemFileHandle);
    return files;

    /** Again where it was written over while it was read; half-written ones of the browser (.crswap) are none. */
    async function textOf(handle: FileSystemFileHandle, tries = 20): Promise<string> {
      try {
        return await (await handle.getFile()).text();
      } catch (error) {
        if (tries === 0) throw error;
        await new Promise((resolve) => setTimeout(resolve, 20));
        return textOf(handle, tries - 1);
      }
    }
  });
}

function put({ page }: Held, files: Files): Promise<void> {
  return page.evaluate(async (given) => {
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('shared', { create: true });
    for (const [name, text] of Object.entries(given)) {
      const writable = await (await folder.getFileHandle(name, { create: true })).createWritable();
      await writable.write(text);
      await writable.close();
    }
  }, files);
}

/** Carries to each the file of the other; a torn one first, which comes whole the next time. */
async function carry(torn: boolean): Promise<void> {
  for (const [from, to] of [two, [two[1], two[0]]] as const) {
    const name = await ownFile(from);
    const text = name && (await filesOf(from))[name];
    if (!text || (await filesOf(to))[name] === text) continue;
    await put(to, { [name]: torn ? text.slice(0, Math.floor(text.length * 0.7)) : text });
    carried.files++;
    if (torn) carried.torn++;
  }
}

/** The file that a device calls its own. */
function ownFile({ page }: Held): Promise<string | undefined> {
  return page.evaluate(
    () =>
      new Promise<string | undefined>((resolve) => {
        const asked = indexedDB.open('minim');
        asked.onsuccess = () => {
          const reading = asked.result.transaction('meta').objectStore('meta').get('sharedFolderState');
          reading.onsuccess = () => {
            asked.result.close();
            resolve((reading.result as { file?: string } | undefined)?.file);
          };
        };
      }),
  );
}

const look = (held: Held) => held.tap('Look into it now');
const vials = (code: string, many: number) =>
  Array.from({ length: many }, (_, i) => vialRecord({ code: `${code}${i}`, name: `${code} oil ${i}` }));

describe('a folder that both reach', () => {
  test('is chosen with one tap, and each device has one file there', async () => {
    const [phone, tablet] = two;
    await shelve(phone.page, vials('PHO', 3));
    await shelve(tablet.page, vials('TAB', 2));
    for (const held of two) {
      await held.devices();
      await held.tap('Choose the folder');
      await held.page.getByText('In step with the folder “shared”').waitFor();
    }
    expect(Object.keys(await filesOf(phone))).toEqual([await ownFile(phone)]);
    expect(await ownFile(phone)).not.toBe(await ownFile(tablet));
  });

  test('brings both to the same while both write at once; torn and foreign files are left alone', async () => {
    const [phone, tablet] = two;
    const foreign = {
      'minim-00000000-0000-7000-8000-000000000000.minim': '{"format":"something else"}',
      'notes.txt': 'no',
    };
    await put(phone, foreign);
    const own = [await ownFile(phone), await ownFile(tablet)];
    for (let round = 0; round < 6; round++) {
      await Promise.all([look(phone), look(tablet), carry(round % 2 === 0)]);
      await Promise.all(two.map((held, i) => made(held, `${'PT'[i]}NEW${round}`)));
    }
    await until(async () => {
      await carry(false);
      await Promise.all([look(phone), look(tablet)]);
      const [a, b] = await Promise.all([phone.holds(), tablet.holds()]);
      return a.records.length === b.records.length && a.records.length >= 5 + 12 + 2 && inOrder(a) === inOrder(b);
    });
    expect((await phone.holds()).records).toEqual((await tablet.holds()).records);
    expect([await ownFile(phone), await ownFile(tablet)]).toEqual(own); // no one ever wrote the other's
    expect(await filesOf(phone)).toMatchObject(foreign);
    expect(carried.torn).toBeGreaterThan(0);
  });

  test('rests when nothing is new: no file is written again and again', async () => {
    let before: string[] = [];
    await until(async () => {
      const last = before;
      before = await whenLooked();
      return before.join() === last.join();
    });
    for (let round = 0; round < 3; round++) expect(await whenLooked()).toEqual(before);
  });

  test('is asked for again with one tap, where the browser gives its permission for a session only', async () => {
    const [phone] = two;
    await phone.page.addInitScript(() => {
      let given: PermissionState = 'prompt';
      Object.assign(FileSystemDirectoryHandle.prototype, {
        queryPermission: async () => given,
        requestPermission: async () => (given = 'granted'),
      });
    });
    await phone.page.reload();
    await phone.page.getByText('The browser wants to be asked again for the folder “shared”.').waitFor();
    await phone.page.goto(`${site.url}#/`);
    await phone.page.getByText('The folder “shared” that other devices share must be allowed again.').waitFor();
    await phone.tap('Allow it'); // on the Bench
    await phone.devices();
    await phone.page.getByText('In step with the folder “shared”').waitFor();
    await phone.page.getByText('1 other device has a file there.').waitFor();
  });

  test('is left: its files stay, and nothing is written there any more', async () => {
    const [phone] = two;
    const before = await filesOf(phone);
    await phone.tap('No longer use that folder');
    await phone.page.getByRole('button', { name: 'Choose the folder' }).waitFor();
    await made(phone, 'LATER');
    await phone.page.reload();
    await phone.page.getByRole('button', { name: 'Choose the folder' }).waitFor();
    expect(await filesOf(phone)).toEqual(before);
  });
});

/** When the files were made, on both, after both looked and the folders were brought into step. */
async function whenLooked(): Promise<string[]> {
  await Promise.all(two.map(look));
  await new Promise((resolve) => setTimeout(resolve, 700));
  await carry(false);
  const files = await Promise.all(two.map(filesOf));
  return files.flatMap((held) => Object.values(held).map((text) => /"made": "([^"]+)"/.exec(text)?.[1] ?? '-'));
}

/** Something new is stored on a device: a vessel bought, by the task itself. */
async function made(held: Held, code: string): Promise<void> {
  await held.page.evaluate(
    (record) =>
      new Promise<void>((resolve) => {
        const asked = indexedDB.open('minim');
        asked.onsuccess = () => {
          const work = asked.result.transaction(['records', 'meta'], 'readwrite');
          work.objectStore('records').put(record);
          const meta = work.objectStore('meta');
          const state = meta.get('state');
          state.onsuccess = () =>
            meta.put({ ...(state.result as object), n: (state.result as { n: number }).n + 1 }, 'state');
          work.oncomplete = () => (asked.result.close(), resolve());
        };
      }),
    vialRecord({ code, name: code }),
  );
}
