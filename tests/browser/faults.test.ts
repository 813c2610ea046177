import {
  appendFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { inOrder } from '../../src/records/union/json';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { preview } from 'vite';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, onTestFailed, test } from 'vitest';
import { findChromium } from './findBrowser';
import { hand } from './hand';
import { writeLargeBackup } from './largeBackup';
import { diluteFromBench } from './dilution';
import { newProfile, openPhone, serve, type Phone } from './phone';

const shelfFile = resolve(import.meta.dirname, '../fixtures/backups/v1.json');

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  site = await serve();
});
afterAll(() => site.stop());
beforeEach(async (context) => {
  profile = newProfile();
  await open();
  onTestFailed(async () => {
    await phone.page.screenshot({ path: `tests/output/fault ${context.task.name.slice(0, 40)}.png` }).catch(() => {});
  });
});
afterEach(async () => {
  await phone.context.close();
  profile.forget();
});

async function open(home = site.url): Promise<Page> {
  phone = await openPhone(profile.dir, { home });
  await phone.page.goto(home);
  await phone.page.locator('.tasks .card').first().waitFor();
  return phone.page;
}

/** Closes the browser in peace and opens it again. */
async function again(home = site.url): Promise<Page> {
  await phone.context.close();
  return open(home);
}

async function chooseBackup(page: Page, path: string): Promise<void> {
  await page.goto(`${new URL('.', page.url()).href}#/keeping`);
  await page.locator('input[name=backup]').setInputFiles(path);
}

async function restore(page: Page, path: string): Promise<void> {
  await chooseBackup(page, path);
  await page.getByRole('button', { name: 'Restore' }).tap();
  await page.getByText(/^Restored\./).waitFor();
}

/** On a Shelf out of a backup, up to the pad of a dilution. */
async function toThePad(page: Page): Promise<void> {
  await restore(page, shelfFile);
  await page.goto(`${new URL('.', page.url()).href}#/`);
  await diluteFromBench(page, { bottle: 'lot PG-117', solvent: 'ethanol 96', food: 'Food grade' });
  await page.locator('.pad').waitFor();
}

const countOf = async (page: Page) => Number(await page.locator('.pad .count').textContent());

/** Taps once and waits for what comes of it: the next count, or a sentence. */
async function tapOnce(page: Page): Promise<void> {
  const before = await page.locator('.run').innerText();
  await page.locator('.pad').tap();
  await page.waitForFunction((text) => document.querySelector<HTMLElement>('.run')!.innerText !== text, before, {
    polling: 20, // a window that is not in front paints nothing
  });
  await page.waitForTimeout(70); // a finger is no faster
}

/** Begins a run that stays paused on the Bench. */
async function pausedRun(page: Page): Promise<void> {
  await hand(page).task('Calibrate drops');
  await page.locator('input[name="mass.1"]').fill('0.31');
  await page.waitForTimeout(300); // it is stored
  await page.getByRole('button', { name: 'Back' }).tap();
  await page.locator('.paused').first().waitFor();
}

/** How many runs are paused, with those that the Bench folds away. */
async function pausedRuns(page: Page): Promise<number> {
  await page.locator('.paused').nth(1).waitFor();
  await page.getByRole('button', { name: /more paused/ }).tap();
  return page.locator('.paused').count();
}

describe('the store of Chromium is torn', () => {
  // As a kill between the two writes of a log record leaves it (google/leveldb issue 1287): the next start sees everything and
  // writes behind the tear; the one after that finds the tear and throws the whole store away.
  test('and thrown away by the browser: everything is there again, and the Bench says so', async () => {
    for (let i = 0; i < 3; i++) await pausedRun(phone.page);
    await phone.context.close();
    const databases = join(profile.dir, 'Default', 'IndexedDB');
    const folder = readdirSync(databases).find((name) => name.endsWith('.leveldb'));
    if (!folder) throw new Error('this Chromium keeps IndexedDB elsewhere: the tear has to be made anew for it');
    const logs = readdirSync(join(databases, folder)).filter((name) => name.endsWith('.log'));
    const newest = logs
      .map((name) => join(databases, folder, name))
      .sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)[0]!;
    appendFileSync(newest, Uint8Array.of(0x5a, 0x17, 0xc3, 0x08, 0x60, 0x00, 0x01)); // a record's head, and nothing after it
    await open();
    await pausedRun(phone.page);
    expect(await pausedRuns(phone.page)).toBe(4);
    const page = await again();
    await page.getByText('The browser had lost what was stored').waitFor();
    expect(await page.locator('.keeping-line').innerText()).toContain('Nothing is missing');
    expect(await pausedRuns(page)).toBe(4);
    expect(await pausedRuns(await again())).toBe(4); // and the next start finds nothing to mend
    expect(await phone.page.locator('.keeping-line').count()).toBe(0);
  });
});

describe('the phone is full', () => {
  test('a drop that could not be stored is not counted, and counts again when there is room', async () => {
    await toThePad(phone.page);
    for (let i = 0; i < 2; i++) await tapOnce(phone.page);
    await phone.context.close();
    phone = await openPhone(profile.dir, { home: site.url }); // the browser believes for 30 s what room it has found
    const { page } = phone;
    const session = await phone.context.newCDPSession(page);
    const origin = new URL(site.url).origin;
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await page.goto(site.url);
    await page.getByRole('button', { name: /^Resume/ }).tap();
    await page.locator('.pad').waitFor();
    await tapOnce(page);
    await page.locator('.trouble').waitFor();
    const shown = await countOf(page);
    const told = await page.locator('.run').innerText();
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    await tapOnce(page);
    expect(await countOf(page)).toBe(shown + 1);
    const reopened = await again();
    await reopened.getByRole('button', { name: /^Resume/ }).tap();
    await reopened.locator('.pad').waitFor();
    expect(await countOf(reopened)).toBe(shown + 1);
    expect(told).toMatch(/could not store this, so it does not count|kept once/);
  });
});

describe('the clock', () => {
  test('set back by a year loses and reorders nothing', async () => {
    await toThePad(phone.page);
    for (let i = 0; i < 3; i++) await tapOnce(phone.page);
    await phone.context.close();
    phone = await openPhone(profile.dir, { home: site.url });
    await phone.context.addInitScript(() => {
      const Real = Date;
      const back = 366 * 86_400_000;
      globalThis.Date = class extends Real {
        constructor(...given: []) {
          super(...((given.length > 0 ? given : [Real.now() - back]) as []));
        }
        static override now = () => Real.now() - back;
      } as DateConstructor;
    });
    const page = phone.page;
    await page.goto(site.url);
    await page.getByText('Paused at drop 3').waitFor();
    expect(await page.locator('.paused').innerText()).not.toMatch(/-\d/);
    await page.getByRole('button', { name: /^Resume/ }).tap();
    await page.locator('.pad').waitFor();
    for (let i = 0; i < 2; i++) await tapOnce(page);
    expect(await countOf(page)).toBe(5);
    const now = await again();
    await now.getByText('Paused at drop 5').waitFor();
    expect(phone.complaints).toEqual([]);
  });
});

describe('two windows', () => {
  test('that count the same run never count a drop twice or lose one, and each says what the other did', async () => {
    const first = phone.page;
    await toThePad(first);
    await tapOnce(first);
    const second = await phone.context.newPage();
    await second.goto(site.url);
    await second.getByRole('button', { name: /^Resume/ }).tap();
    await second.locator('.pad').waitFor();
    for (let i = 0; i < 2; i++) await tapOnce(first);
    expect(await countOf(second)).toBe(1);
    await tapOnce(second); // refused: its place in the run is taken
    await second.getByText('This run was continued in another window').waitFor();
    expect(await countOf(second)).toBe(3);
    for (let i = 0; i < 2; i++) await tapOnce(second);
    await tapOnce(first);
    await first.getByText('This run was continued in another window').waitFor();
    expect(await countOf(first)).toBe(5);
    await tapOnce(first);
    await second.close();
    const page = await again();
    await page.getByText('Paused at drop 6').waitFor();
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          indexedDB.deleteDatabase('minim').onsuccess = () => resolve();
        }),
    );
    await (await again()).getByText('Paused at drop 6').waitFor(); // both windows' journals together hold all of it
  });

  test('show each what the other keeps', async () => {
    const second = await phone.context.newPage();
    await second.goto(`${site.url}#/shelf`);
    await restore(phone.page, shelfFile);
    await second.getByText('rhubarb extract').first().waitFor();
  });
});

/** A host of its own, on which a next version can be put; its index.html has another title. */
async function newHost() {
  const folder = mkdtempSync(join(tmpdir(), 'minim-host-'));
  cpSync(resolve('dist'), folder, { recursive: true });
  const host = await preview({
    base: '/bench/',
    build: { outDir: folder },
    preview: { port: 0, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const change = (file: string, edit: (text: string) => string) =>
    writeFileSync(join(folder, file), edit(readFileSync(join(folder, file), 'utf8')));
  return {
    home: host.resolvedUrls!.local[0]!,
    /** Puts a next version in place of this one; in it every script has another name, as after any change. */
    next() {
      const scripts = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'));
      const renamed = (text: string) =>
        text.replace(/[\w.-]+\.js/g, (name) => (scripts.includes(name) ? `n${name}` : name));
      change('index.html', (html) => renamed(html.replace('<html', '<html data-next')));
      change('sw.js', (worker) =>
        renamed(worker).replace(
          /(url:"index\.html",revision:")[0-9a-f]+|(revision:")[0-9a-f]+(",url:"index\.html")/,
          '$1$2feed$3',
        ),
      );
      for (const name of scripts) {
        change(join('assets', name), renamed);
        renameSync(join(folder, 'assets', name), join(folder, 'assets', `n${name}`));
      }
    },
    async stop() {
      await host.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Until the next version was found, fetched and waits to be asked for. */
function nextWaits(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const registration = (await navigator.serviceWorker.getRegistration())!;
    await registration.update();
    while (!registration.waiting) await new Promise((resolve) => setTimeout(resolve, 50));
  });
}

describe('an update', () => {
  let host: Awaited<ReturnType<typeof newHost>>;
  beforeEach(async () => {
    host = await newHost();
    const page = await again(host.home);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
  });
  afterEach(() => host.stop());

  test('in mid-run waits until the run is left, and the count goes on in the new version', async () => {
    const { page } = phone;
    await toThePad(page);
    for (let i = 0; i < 2; i++) await tapOnce(page);
    host.next();
    await nextWaits(page);
    await tapOnce(page);
    expect(await countOf(page)).toBe(3);
    expect(await page.getByText('A newer Minim').count()).toBe(0);
    await hand(page).pause();
    await page.getByText('A newer Minim is ready').waitFor();
    await page.getByRole('button', { name: 'Update now' }).tap();
    await page.waitForFunction(() => 'next' in document.documentElement.dataset);
    await page.getByRole('button', { name: /^Resume/ }).tap();
    await page.locator('.pad').waitFor();
    await tapOnce(page);
    expect(await countOf(page)).toBe(4);
    expect(phone.complaints).toEqual([]);
  });

  test('in one window: a part that the other had not loaded yet says so there, and opens anew', async () => {
    const { page } = phone;
    await page.locator('.tasks .card').first().waitFor();
    const second = await phone.context.newPage();
    await second.goto(host.home);
    await second.locator('.tasks .card').first().waitFor();
    host.next();
    await nextWaits(page);
    await page.getByRole('button', { name: 'Update now' }).tap();
    await page.waitForFunction(() => 'next' in document.documentElement.dataset);
    await second.goto(`${host.home}#/keeping`);
    await second.getByText('Minim was updated in another window. Nothing is lost.').waitFor();
    await second.getByRole('button', { name: 'Open Minim again' }).tap();
    await second.getByText('Everything is stored on this device').waitFor();
    expect(await second.locator('html[data-next]').count()).toBe(1);
  });
});

describe('a backup', () => {
  test('brings everything back after the browser has cleared the phone', async () => {
    const page = phone.page;
    await restore(page, shelfFile);
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a backup' }).tap();
    const path = join(profile.dir, 'saved.json');
    await (await saved).saveAs(path);
    const session = await phone.context.newCDPSession(page);
    await page.goto('about:blank');
    await session.send('Storage.clearDataForOrigin', { origin: new URL(site.url).origin, storageTypes: 'all' });
    await page.goto(`${site.url}#/shelf`);
    await page.getByText('Add your first bottle').waitFor(); // as on a new phone: nothing is left that could tell
    await restore(page, path);
    const [before, after] = [JSON.parse(readFileSync(shelfFile, 'utf8')), JSON.parse(readFileSync(path, 'utf8'))];
    const sorted = (list: object[]) => list.map(inOrder).sort();
    const [device, ...more] = after.records.filter(({ kind }: { kind: string }) => kind === 'device');
    expect([device.name, more]).toEqual(['Phone', []]);
    expect(sorted(after.records)).toEqual(sorted([...before.records, device]));
    expect(sorted(after.events)).toEqual(sorted(before.events));
    await page.goto(`${site.url}#/shelf`);
    await page.getByText('rhubarb extract').first().waitFor();
  });

  test('that is locked opens with its passphrase, and says when it is the wrong one', async () => {
    const page = phone.page;
    await restore(page, shelfFile);
    await page.locator('input[name=passphrase]').fill('three drops of lemon');
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a backup' }).tap();
    const path = join(profile.dir, 'locked.json');
    await (await saved).saveAs(path);
    expect(readFileSync(path, 'utf8')).not.toContain('rhubarb');
    await chooseBackup(page, path);
    const box = page.locator('section', { hasText: 'This backup is locked' }).last();
    await box.locator('input').fill('four drops of lemon');
    await box.getByRole('button', { name: 'Open' }).tap();
    await page.getByText('It does not open').waitFor();
    await box.locator('input').fill('three drops of lemon');
    await box.getByRole('button', { name: 'Open' }).tap();
    await page.getByText('The same').waitFor();
    expect(await page.getByRole('button', { name: 'Nothing to do' }).isDisabled()).toBe(true);
  });

  test('of another kind of file is refused in one sentence, and nothing changes', async () => {
    await restore(phone.page, shelfFile);
    for (const [name, bytes] of [
      ['a.json', '{"format":"other"}'],
      ['b.txt', 'hello'],
      ['c.json', new Uint8Array([0xff, 0xfe, 0x7b, 0x00])],
    ] as const) {
      writeFileSync(join(profile.dir, name), bytes);
      await chooseBackup(phone.page, join(profile.dir, name));
      await phone.page.locator('.trouble', { hasText: 'This file is no backup of Minim' }).waitFor();
    }
    await chooseBackup(phone.page, shelfFile);
    await phone.page.getByText('Nothing to do').waitFor();
  });

  test('with 50,000 records shows how far it is, can be stopped with nothing changed, and is restored', async () => {
    const page = phone.page;
    const path = join(profile.dir, 'large.json');
    writeLargeBackup(path, 50_000);
    await chooseBackup(page, path);
    await page.getByText('50,000').first().waitFor();
    await page.getByRole('button', { name: 'Restore' }).tap();
    await page.getByRole('button', { name: 'Stop, and change nothing' }).tap();
    await page.getByText('Stopped: nothing was changed.').waitFor();
    await page.goto(`${site.url}#/shelf`);
    await page.getByText('Add your first bottle').waitFor();
    await chooseBackup(page, path);
    await page.getByText('50,000').first().waitFor();
    await page.getByRole('button', { name: 'Restore' }).tap();
    await page.locator('.keeping progress').waitFor();
    await page.getByText(/^Restored\./).waitFor();
    await page.getByText('Everything is in the backup').first().waitFor();
  });
});

describe('names that are meant to do harm', () => {
  test('are shown as they are, run nothing and fit the screen', async () => {
    const names = [
      '<img src=x onerror="document.title=\'broken\'">',
      '</script><script>document.title="broken"</script>',
      '\u202egnp.exe \u2066isolated',
      '💧'.repeat(300),
      'x'.repeat(10_000),
      'ע'.repeat(200),
      '=HYPERLINK("http://x.invalid","click")',
    ];
    const records = names.map((name, i) => ({
      id: `harm-${i}`,
      kind: 'dropper',
      v: 1,
      made: '2026-05-04T10:00:00.000Z',
      from: [],
      name,
      tip: name.slice(0, 500),
    }));
    const path = join(profile.dir, 'harm.json');
    writeFileSync(
      path,
      JSON.stringify({ format: 'minim-backup', version: 1, made: '', records, events: [{ run: names[0], seq: 0 }] }),
    );
    const page = phone.page;
    await chooseBackup(page, path);
    await page.getByText('What stays out, and why').tap();
    await page.getByRole('button', { name: 'Restore' }).tap();
    await page.getByText(/^Restored\./).waitFor();
    for (const hash of ['shelf', ...names.map((_, i) => `record/harm-${i}`)]) {
      await page.goto(`${site.url}#/${hash}`);
      await page.locator('.page').first().waitFor();
      await page.waitForTimeout(100);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      expect(await page.locator('img[src=x]').count()).toBe(0);
    }
    expect(await page.title()).not.toContain('broken');
    expect(phone.complaints).toEqual([]);
  });
});

describe('the page is closed', () => {
  test('to markup from texts, to code from texts, and to every other host', async () => {
    const refused = await phone.page.evaluate(async () => {
      const tries: Record<string, () => unknown> = {
        markup: () => (document.createElement('p').innerHTML = '<b>x</b>'),
        code: () =>
          new Promise<void>((ran, kept) =>
            // outside this call, which may do what the page may not
            setTimeout(() => {
              try {
                ran(globalThis.eval('1'));
              } catch (error) {
                kept(error as Error);
              }
            }),
          ),
        worker: () => new Worker('https://example.invalid/x.js'),
        policy: () =>
          (
            window as never as { trustedTypes: { createPolicy: (name: string, rules: object) => unknown } }
          ).trustedTypes.createPolicy('other', {}),
        elsewhere: () => fetch('https://example.invalid/'),
      };
      const names: string[] = [];
      for (const [name, attempt] of Object.entries(tries)) {
        try {
          await attempt();
        } catch {
          names.push(name);
        }
      }
      return names;
    });
    expect(refused).toEqual(['markup', 'code', 'worker', 'policy', 'elsewhere']);
    const policy = await phone.page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:/);
  });
});

describe('erasing', () => {
  test('takes both copies, in every window', async () => {
    const page = phone.page;
    await restore(page, shelfFile);
    const second = await phone.context.newPage();
    await second.goto(site.url);
    await second.locator('.tasks .card').first().waitFor();
    await page.getByRole('button', { name: 'Erase everything' }).tap();
    await page.getByRole('button', { name: 'Erase it all' }).tap();
    await page.locator('.tasks .card').first().waitFor();
    await page.waitForTimeout(500);
    const left = await page.evaluate(async () => {
      const names: string[] = [];
      const root = await navigator.storage.getDirectory();
      const folder = await root.getDirectoryHandle('journal', { create: true });
      for await (const name of (folder as never as { keys(): AsyncIterable<string> }).keys()) names.push(name);
      return { names, marks: Object.keys(localStorage) };
    });
    expect(left).toEqual({ names: [], marks: [] });
    await page.goto(`${site.url}#/shelf`);
    await page.getByText('Add your first bottle').waitFor();
    await second.goto(`${site.url}#/shelf`);
    await second.getByText('Add your first bottle').waitFor();
  });
});

describe('a browser that gives less', () => {
  let browser: Browser;
  let context: BrowserContext;
  beforeEach(async () => {
    browser = await chromium.launch({
      executablePath: findChromium(),
      args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
    });
    context = await browser.newContext({
      hasTouch: true,
      isMobile: true,
      viewport: { width: 390, height: 844 },
      serviceWorkers: 'block',
    });
  });
  afterEach(() => browser.close());

  test('in a private window counts, keeps as long as the window lasts, and shares nothing with the next one', async () => {
    const page = await context.newPage();
    await page.goto(site.url);
    await toThePad(page);
    for (let i = 0; i < 2; i++) await tapOnce(page);
    await page.goto(site.url);
    await page.reload();
    await page.getByText('Paused at drop 2').waitFor();
    const other = await (await browser.newContext()).newPage();
    await other.goto(site.url);
    await other.locator('.tasks .card').first().waitFor();
    expect(await other.locator('.paused').count()).toBe(0);
  });

  test('without the origin private file system keeps one copy, and says so on the Bench', async () => {
    await context.route(/journalWorker/, async (route) => {
      const body = await (await route.fetch()).text();
      await route.fulfill({
        contentType: 'text/javascript',
        body: `delete StorageManager.prototype.getDirectory;${body}`,
      });
    });
    const page = await context.newPage();
    await page.goto(site.url);
    await page.getByText('This browser has no second place to write to').waitFor();
    await toThePad(page);
    await tapOnce(page);
    await page.goto(site.url);
    await page.reload();
    await page.getByText('Paused at drop 1').waitFor();
  });

  test('that is not kept on the phone yet says so where a part of it is wanted without a network', async () => {
    const page = await context.newPage();
    await context.route(/\/sw\.js/, (route) => route.abort()); // it would be kept in a moment
    await page.goto(site.url);
    await page.getByRole('button', { name: 'Settings' }).waitFor();
    await context.setOffline(true);
    await page.locator('.tasks .card', { hasText: 'Dose a drink' }).tap();
    await page.getByText('Minim is not yet kept on this phone, and there is no network. Nothing is lost').waitFor();
  });

  test('without workers keeps one copy, and says so on the Bench', async () => {
    await context.route(/journalWorker/, (route) => route.abort());
    const page = await context.newPage();
    await page.goto(site.url);
    await page.getByText('what you do is kept once').waitFor();
    await toThePad(page);
    await tapOnce(page);
    await page.goto(site.url);
    await page.reload();
    await page.getByText('Paused at drop 1').waitFor();
  });
});

/** Waits until all is kept and the worker serves the page; a busy machine takes its time. */
async function isServed(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null, undefined, { timeout: 150_000 });
}

describe('a first visit', () => {
  test('opened for the first time goes on without a network as soon as all of it is kept, in the page that was there first', async () => {
    const { page } = phone;
    await page.goto(site.url);
    await isServed(page);
    await phone.context.setOffline(true);
    await page.locator('.tasks .card', { hasText: 'Look up ppm' }).tap();
    await page.locator('.run .sentence').waitFor();
    const tasks = ['dilute', 'calibrate', 'layer', 'count', 'dose', 'batch', 'blind', 'lookup', 'bottle', 'supply', 'proportions', 'formula']; // prettier-ignore
    const pages = ['shelf', 'shelf/due', 'shelf/shopping', 'book', 'labels', 'scan', 'settings', 'keeping', 'record/x', 'sheet/x', 'formula/x', 'catalogue/x']; // prettier-ignore
    for (const path of [...pages, ...tasks.map((task) => `new/${task}`)]) {
      await page.evaluate((hash) => (location.hash = hash), `#/${path}`);
      await page.waitForFunction((hash) => !hash.startsWith('#/new') || location.hash.startsWith('#/run'), `#/${path}`);
      await page.waitForFunction(() => !document.querySelector('[aria-busy=true]') && document.querySelector('main'));
      expect(await page.locator('main').innerText()).toMatch(/[A-Z]/);
    }
    expect(await page.getByText('could not be fetched').count()).toBe(0);
  });

  test('an address below the app leads to it, with a network and without', async () => {
    const { page } = phone;
    await page.goto(site.url);
    await isServed(page);
    for (const isOffline of [false, true]) {
      await phone.context.setOffline(isOffline);
      for (const path of ['nothing/here', 'nothing/here?a=b#/shelf', 'index.html', '?a=b']) {
        await page.goto(`${site.url}${path}`);
        await page
          .locator(path.includes('shelf') ? '.first-run' : '.tasks .card')
          .first()
          .waitFor();
      }
      await page.getByRole('link', { name: 'Shelf' }).tap();
      await page.locator('.first-run').waitFor();
    }
  });

  test('loaded past the worker says that it is kept, and goes on when it is opened again', async () => {
    const { page } = phone;
    await page.goto(site.url);
    await isServed(page);
    const session = await phone.context.newCDPSession(page);
    const loaded = page.waitForEvent('load');
    await session.send('Page.reload', { ignoreCache: true }); // as with Shift held
    await loaded;
    await page.waitForFunction(() => navigator.serviceWorker.getRegistration().then((found) => found?.active));
    await page.locator('.tasks .card').first().waitFor();
    await page.waitForTimeout(1000); // the worker is registered when all is read
    await phone.context.setOffline(true);
    await page.evaluate(() => (location.hash = '#/scan'));
    await page.getByText('Minim is kept on this phone, but not in this window: open it again.').waitFor();
    await page.getByRole('button', { name: 'Open Minim again' }).tap();
    await page.locator('main h1').first().waitFor();
    expect(await page.getByText('could not be fetched').count()).toBe(0);
  });
});
