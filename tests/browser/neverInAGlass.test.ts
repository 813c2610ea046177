import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { backupOf, bottle, device, writeOld, type Any } from '../records/backup/histories';
import { vialOf } from '../tasks/count/countShelf';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;
const pictures = process.env['SHOTS'];

const card = newRecord('material', {
  id: 'm',
  name: 'cardamom oil',
  code: 'CARD',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});
const vial = {
  ...vialOf('v', 0.01, { material: 'm' }),
  code: 'CARD',
  from: ['b'],
  uses: [{ id: 'b', massG: 0.5 }],
  written: '2025-02-01T00:00:00.000Z',
};
const shelf = [card, bottle('b', { lot: 'C-2208' }), vial] as unknown as Any[];

async function shot(name: string): Promise<void> {
  if (!pictures) return;
  mkdirSync(pictures, { recursive: true });
  for (const scheme of ['light', 'dark'] as const)
    for (const width of [360, 390]) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height: width === 360 ? 740 : 844 });
      await page.waitForTimeout(300);
      await page.screenshot({ path: resolve(pictures, `${name}-${width}-${scheme}.png`) });
    }
}

/** Chooses a file of another device, up to what would change. */
async function look(records: readonly object[]): Promise<void> {
  const events: object[] = [];
  const head = { format: 'minim-backup', version: 1, made: '2026-05-04T10:00:00.000Z' };
  const text = JSON.stringify({ ...head, holds: { records: records.length, events: 0 }, records, events });
  await page.goto(`${site.url}#/`);
  await page.goto(`${site.url}#/keeping`);
  await page
    .locator('input[name=backup]')
    .setInputFiles({ name: 'tablet.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.locator('.restore').waitFor();
}

async function bring(records: readonly object[]): Promise<void> {
  await look(records);
  await page.getByRole('button', { name: 'Restore' }).tap();
  await page.getByText('Restored. Both copies').waitFor();
}

const lines = (selector: string) => page.locator(selector).allTextContents();

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await bring(shelf);
});

afterEach(async ({ task }) => {
  if (task.result?.state === 'fail')
    await page.screenshot({ path: `tests/output/glass ${task.name.slice(0, 40)}.png` });
});
afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('a solvent of one’s own, on the screens', () => {
  const h = () => hand(page);

  test('named isopropanol refuses the food answer with one sentence', async () => {
    await page.goto(`${site.url}#/`);
    await h().task('Dilute');
    await h().slot('bottle', 'C-2208');
    await h().slot('solvent', 'Another solvent');
    await h().slot('solvent.name', 'Isopropyl alcohol 99 %');
    await h().slot('solvent.alcohol', 'Not known');
    await h().slot('solvent.density', '0.786');
    await shot('own-solvent');
    await h().slot('food', 'Food grade');
    await page.locator('.trouble', { hasText: 'Isopropanol is never fit for drinks: smell only.' }).first().waitFor();
    await page.locator('.main[aria-haspopup]').waitFor(); // it does not go on
    await shot('never-fit');
  });

  test('of 95 % vol brings its alcohol into the drink', async () => {
    await h().slot('solvent.name', 'Grain spirit');
    await h().slot('solvent.alcohol', 'Yes');
    await h().slot('solvent.abv', '95');
    await page.locator('.pills[data-name^=food] .empty').first().waitFor(); // what was said of the other is not said of this one
    await h().slot('food', 'Food grade');
    await h().slot('dropper', 'not weighed');
    await shot('spirit');
    await h().done();
    await page.locator('.pad').waitFor();
    await h().drops(Number(/of (\d+)/.exec((await page.locator('.pad').textContent())!)![1]));
    await h().finish();
    await shot('vial');
    await page.goto(`${site.url}#/`);
    await h().task('Dose a drink');
    await page.locator('.slot[data-name=vial]', { hasText: 'CARD' }).waitFor(); // the newest one
    await h().slot('dropper', 'One I have not weighed');
    await page.locator('.slot[data-name="base.name"]').tap();
    await h().type('base.name', 'soda');
    await h().type('base.brix', '8');
    await page.locator('dialog[open] .main').tap();
    await h().slot('base.ml', '250');
    for (let i = 1; i <= 10; i++) {
      await page.locator('.plus').tap();
      await page.locator(`.plus[aria-label*=" ${i} so far"]`).waitFor();
    }
    await shot('dose');
    const text = (await page.locator('.glass-parts').textContent())!;
    expect(text).toMatch(/alcohol.*0\.0\d+ % ABV/);
    expect(text).not.toMatch(/not known/);
  });
});

describe('a second device', () => {
  test('that knows a bottle as smell only makes it so here, by name, whatever was done here since', async () => {
    const tablet = device(shelf);
    writeOld(tablet, 'b', { grade: 'smell only' }, '2026-05-03T10:00:00.000Z');
    const here = device(shelf);
    for (let i = 0; i < 9; i++) writeOld(here, 'b', { row: String(i) }, `2026-05-03T1${i}:30:00.000Z`);
    await bring([...here.records.values()]); // weighed and moved nine times on this phone
    await look(backupOf(tablet).records as object[]);
    expect(await lines('.restore .told li')).toEqual(['bottle cardamom oil, lot C-2208']);
    await page.locator('.restore .told').last().scrollIntoViewIfNeeded();
    await shot('restore-names');
    await page.getByRole('button', { name: 'Restore' }).tap();
    await page.getByText('Restored. Both copies').waitFor();
    await page.goto(`${site.url}#/record/b`);
    await page.locator('.record .thing-words .smell-only').waitFor();
    await page.goto(`${site.url}#/record/v`);
    await page.locator('.thing-code', { hasText: 'CARD' }).waitFor();
    await page.locator('.record .thing-words .smell-only').waitFor();
  });

  test('brings the same file again and again, and nothing changes', async () => {
    const tablet = device(shelf);
    writeOld(tablet, 'v', { row: '9' }, '2026-05-03T10:00:00.000Z');
    await bring(backupOf(tablet).records as object[]);
    for (let i = 0; i < 2; i++) {
      await look(backupOf(tablet).records as object[]);
      await page.getByRole('button', { name: 'Nothing to do' }).waitFor();
      await page.getByRole('button', { name: 'Leave it' }).tap();
    }
  });
});
