import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, onTestFailed, test } from 'vitest';
import { diluteFromBench } from './dilution';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

const shelfFile = resolve(import.meta.dirname, '../fixtures/backups/v1.json');
const BOTTLE = '01a21256-0d64-7289-a153-37ad04301020'; // beta-ionone
const LAYERING = '01a21256-135a-71c0-87e2-ba8ef0c8fbc9'; // PGF + HEX3
const GRAPEFRUIT = '01a21256-0b5f-7759-a0f2-a010599f376a'; // lot PG-117

interface Item {
  readonly id: string;
}
interface Backup {
  readonly records: readonly Item[];
  readonly events: readonly unknown[];
}

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;

beforeAll(async () => {
  site = await serve();
});
afterAll(() => site.stop());
beforeEach(async (context) => {
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  await page.addInitScript(plantFaults, { amount: AMOUNT, purity: PURITY, moment: MOMENT });
  await page.goto(`${site.url}#/keeping`);
  await page.locator('input[name=backup]').setInputFiles(shelfFile);
  await page.getByRole('button', { name: 'Restore' }).tap();
  await page.getByText('Restored. Both copies').waitFor();
  onTestFailed(async () => {
    await page.screenshot({ path: `tests/output/boundary ${context.task.name.slice(0, 40)}.png` }).catch(() => {});
  });
});
afterEach(async () => {
  await phone.context.close();
  profile.forget();
});

/** Writes values past the door into the store, as a restore of a hand-made file does, and opens Minim again. */
async function plant(values: Readonly<Record<string, object>>): Promise<void> {
  await page.evaluate(async (given) => {
    const db = await new Promise<IDBDatabase>((done, failed) => {
      const opening = indexedDB.open('minim');
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => failed(opening.error);
    });
    const writing = db.transaction('records', 'readwrite');
    const records = writing.objectStore('records');
    for (const [id, change] of Object.entries(given)) {
      const reading = records.get(id);
      reading.onsuccess = () => records.put({ ...reading.result, ...change });
    }
    await new Promise((done) => (writing.oncomplete = done));
    db.close();
  }, values);
  await page.goto(site.url);
  await page.reload();
  await page.locator('.tasks .card').first().waitFor();
}

const AMOUNT = { g: 900, u: 0.7654321 };
const PURITY = 0.87654321;
const MOMENT = '2023-07-19T10:11:12.000Z';

/** Faults of the program, planted where it meets values that are fine and that nothing else has: no schema keeps them away. */
function plantFaults({ amount, purity, moment }: { amount: typeof AMOUNT; purity: number; moment: string }): void {
  const fault = () => {
    throw new RangeError('planted');
  };
  const { hypot } = Math;
  Math.hypot = (...sides) => (sides[1] === amount.u && sides[0]! > 1 ? fault() : hypot(...sides)); // what is left of a bottle
  const { isFinite } = Number;
  const ofPurity = (1 - purity) / 2 / Math.sqrt(3); // the uncertainty of "at least"
  Number.isFinite = (x) => (Math.abs((x as number) - ofPurity) < 1e-9 ? fault() : isFinite(x)); // of a bottle that is diluted
  const formats = Intl.DateTimeFormat.prototype;
  const format = Object.getOwnPropertyDescriptor(formats, 'format')!;
  const get = function (this: Intl.DateTimeFormat) {
    const real = format.get!.call(this) as Intl.DateTimeFormat['format'];
    return (at?: Date | number) => (at === Date.parse(moment) ? fault() : real(at)); // when a strip was dipped
  };
  Object.defineProperty(formats, 'format', { ...format, get });
}

const broken = {
  [BOTTLE]: { amountG: AMOUNT.g, amountU: AMOUNT.u }, // breaks what is left, and with it its row
  [LAYERING]: {
    strips: [{ vial: 'x', code: 'PGF', dips: 1, family: 'none', dippedAt: MOMENT, takenOutAt: null }],
  },
};

async function fits(): Promise<void> {
  const { width } = page.viewportSize()!;
  for (const narrow of [320, width]) {
    await page.setViewportSize({ width: narrow, height: 740 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(narrow);
  }
}

/** What was restored before. */
const whole = () => JSON.parse(readFileSync(shelfFile, 'utf8')) as Backup;

/** What "Save a backup" on this page hands over. */
async function backup(): Promise<Backup> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup' }).tap();
  const path = await (await download).path();
  await page.getByText(/^Done: \d+ records\.$/).waitFor();
  return JSON.parse(readFileSync(path, 'utf8')) as Backup;
}

describe('a record that breaks what shows it', () => {
  test('takes its row of the Shelf alone, and search and the lists go on', async () => {
    await plant(broken);
    await page.goto(`${site.url}#/shelf/bottle`);
    const bottle = page.locator('.entry', { hasText: `bottle ${BOTTLE}` });
    await bottle.waitFor();
    expect(await bottle.innerText()).toContain('This entry cannot be shown; it is kept as it is.');
    expect(await bottle.innerText()).toContain('RangeError: planted');
    for (const other of ['nootkatone', 'Formulas', 'Droppers'])
      expect(await page.locator('main').innerText()).toContain(other);
    await fits();
    await page.locator('input[type=search]').fill('nootkatone');
    await page.locator('.entry', { hasText: 'lot N-4' }).waitFor();
    await page.locator('input[type=search]').fill('layering');
    await page.locator('.entry', { hasText: `layering ${LAYERING}` }).waitFor();
    await page.goto(`${site.url}#/shelf/shopping`);
    await page.getByRole('heading', { name: 'Could not be judged' }).waitFor();
    expect(await page.locator('.tabs a').count()).toBe(3);
    await page.goto(`${site.url}#/book`);
    await page.locator('.page-of-book', { hasText: 'beta-ionone' }).first().waitFor();
  });

  test('is told on its own page, which offers a backup with everything in it, and reload', async () => {
    await plant(broken);
    await page.goto(`${site.url}#/record/${LAYERING}`);
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').count()).toBe(1);
    await fits();
    const saved = await backup();
    expect(new Set(saved.records.map(({ id }) => id))).toEqual(new Set(whole().records.map(({ id }) => id)));
    expect(saved.events.length).toBe(whole().events.length);
    expect(saved.records.find(({ id }) => id === BOTTLE)).toMatchObject(broken[BOTTLE]!);
    expect(saved.records.find(({ id }) => id === LAYERING)).toMatchObject(broken[LAYERING]!);
    const loaded = page.waitForEvent('load');
    await page.getByRole('button', { name: 'Reload' }).tap();
    await loaded;
    await page.getByRole('alert').waitFor();
    await hand(page).wayBack();
    await page.locator('.tasks .card').first().waitFor();
  });

  test('leaves the sound sections of its page, and the page is whole when it is mended', async () => {
    await plant(broken);
    await page.goto(`${site.url}#/record/${BOTTLE}`);
    await page.getByText('Minim could not show this part').waitFor();
    expect(await page.locator('h1').innerText()).toBe('beta-ionone');
    expect(await page.locator('.thing-words').innerText()).toContain('Gannet Row Naturals');
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await page.getByRole('button', { name: 'Change', exact: true }).tap();
    await page.locator('input[name=amountG]').fill('5');
    await page.getByRole('button', { name: 'Save' }).tap();
    await page.locator('.record').waitFor();
    await page.waitForFunction(() => document.querySelector('[role=alert]') === null);
    expect(await page.locator('main').innerText()).toContain('g left');
  });
});

describe('a record that cannot be', () => {
  test('is listed with what does not fit, has a page that prints it as it is, and is in every backup', async () => {
    const odd = { [BOTTLE]: { received: '10/2026', amountG: -1 } };
    await plant(odd);
    await page.goto(`${site.url}#/shelf`);
    await page.getByRole('heading', { name: 'Could not be read' }).waitFor();
    const entry = page.locator('.entry', { hasText: 'received: “10/2026” does not fit; amountG: “-1” does not fit' });
    await fits();
    await entry.tap();
    await page.getByText('Minim cannot read this entry. It is kept as it is').waitFor();
    expect(await page.locator('.as-stored').innerText()).toContain('"received": "10/2026"');
    await page.getByRole('button', { name: 'Print' }).waitFor();
    await fits();
    const saved = await backup();
    expect(saved.records.find(({ id }) => id === BOTTLE)).toMatchObject(odd[BOTTLE]!);
    await page.goto(`${site.url}#/new/count`);
    await page.locator('.run .sentence, .run .say').first().waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  });
});

describe('a step that breaks', () => {
  test('from its beginning leaves a page with the way to the Bench, a backup and reload', async () => {
    await plant(broken); // a count looks at what is left of every bottle
    await page.goto(`${site.url}#/new/count`);
    await page.getByRole('alert').waitFor();
    expect((await backup()).records.length).toBe(whole().records.length);
    await hand(page).wayBack();
    await page.locator('.tasks .card', { hasText: 'Count drops' }).tap();
    await page.getByText('your last tap may not have counted').waitFor();
  });

  test('by an answer can be given another one, and goes on', async () => {
    await plant({ [GRAPEFRUIT]: { purity: PURITY } });
    await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
    await page.locator('.slot[data-name=bottle]').tap();
    await page.locator('.sheet-row', { hasText: 'lot PG-117' }).first().tap();
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').innerText()).toContain('could not work out what follows');
    expect(await page.locator('.fault small').innerText()).toBe('RangeError: planted');
    await fits();
    await page.locator('label.choice', { hasText: 'lot C-2208' }).first().tap();
    await page.locator('.sentence', { hasText: 'CARD neat' }).waitFor();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
  });

  test('since yesterday keeps the paused run: to the Bench, Resume, the steps before, and another answer goes on', async () => {
    await page.goto(site.url);
    await diluteFromBench(page, { bottle: 'lot PG-117', solvent: 'ethanol 96', food: 'Food grade' });
    await plant({ [GRAPEFRUIT]: { purity: PURITY } });
    await page.locator('.paused', { hasText: 'could not be worked out' }).waitFor();
    await page.getByRole('button', { name: /^Resume/ }).tap();
    await page.getByRole('alert').waitFor();
    await hand(page).pause();
    await page.getByRole('button', { name: /^Resume/ }).tap();
    const other = page.locator('label.choice', { hasText: 'lot C-2208' });
    for (let back = 0; (await other.count()) === 0; back++) {
      expect(back).toBeLessThan(3);
      const before = await page.evaluate(() => location.href);
      await page.getByRole('button', { name: 'The step before' }).tap();
      await page.waitForFunction((href) => location.href !== href, before);
    }
    await other.first().tap();
    await page.locator('.sentence', { hasText: 'CARD neat' }).waitFor();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
  });

  test('while it is drawn keeps the run, and is whole again after what broke it', async () => {
    await page.goto(site.url);
    await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
    await page.locator('.slot[data-name=bottle]').tap();
    await page.locator('.sheet-row', { hasText: 'lot PG-117' }).first().tap();
    await page.locator('.sentence', { hasText: 'PGF neat' }).waitFor();
    await hand(page).slot('solvent', 'ethanol 96');
    await hand(page).slot('food', 'Food grade');
    await page.evaluate(() => {
      const real = String.prototype.split;
      String.prototype.split = function (this: string, ...given: unknown[]) {
        if (this.startsWith('Pour ')) throw new TypeError('planted');
        return real.apply(this, given as Parameters<typeof real>);
      } as typeof real;
      Object.assign(window, { mend: () => (String.prototype.split = real) });
    });
    await page.locator('.actions .main').tap();
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').innerText()).toContain('what you did in this run is stored');
    expect(await page.locator('.fault small').innerText()).toBe('TypeError: planted');
    await page.goBack(); // the phone's own way back works too
    await page.locator('.sentence', { hasText: 'PGF neat' }).waitFor();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    await page.locator('.actions .main').tap();
    await page.getByRole('button', { name: 'The step before' }).tap();
    await page.locator('.sentence', { hasText: 'PGF neat' }).waitFor();
    await page.locator('.actions .main').tap();
    await hand(page).pause();
    await page.evaluate(() => (window as unknown as { mend: () => void }).mend());
    await page.getByRole('button', { name: /^Resume/ }).tap();
    await page.locator('.say', { hasText: 'Pour ' }).waitFor();
  });
});

describe('a fault outside of drawing', () => {
  test('a tap that throws, or a promise that fails, is told in one sentence; what is no fault is not', async () => {
    await page.goto(site.url);
    await page.evaluate(() => {
      dispatchEvent(new ErrorEvent('error', { message: 'ResizeObserver loop completed' }));
      void Promise.reject(new DOMException('turned back', 'AbortError'));
    });
    await page.waitForTimeout(200);
    expect(await page.getByRole('alert').count()).toBe(0);
    await page.evaluate(() => {
      History.prototype.pushState = () => {
        throw new TypeError('planted');
      };
    });
    await page.getByRole('button', { name: 'Settings' }).tap();
    await page.getByText('your last tap may not have counted').waitFor();
    expect(await page.getByRole('alert').count()).toBe(1);
    await fits();
    await page.getByRole('button', { name: 'Close' }).tap();
    await page.getByRole('alert').waitFor({ state: 'detached' });
    await page.locator('.tasks .card', { hasText: 'Dilute' }).tap(); // a promise
    await page.getByText('TypeError: planted').waitFor();
    expect(await page.locator('.tasks .card').count()).toBeGreaterThan(5);
  });

  test('an address that is none shows the Bench', async () => {
    await page.goto(`${site.url}#/record/%E0%A4%A`);
    await page.reload();
    await page.locator('.tasks .card').first().waitFor();
  });
});
