import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import type { Batch } from '../../src/records/kind/batch';
import type { RecordOf } from '../../src/records/kind/kinds';
import { AS_TYPED } from '../../src/records/kind/quantity';
import { newRecord } from '../../src/records/shelf';
import { batchShelf } from '../tasks/batch/batchShelf';
import { vialOf } from '../tasks/count/countShelf';
import { readPng } from '../pictures';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';
import { putRecords, storedOf } from './pageStore';

type Tasting = RecordOf<'tasting'>;

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;
/** What the phone's clock was set to. */
let clock: string;

/** How much of the nutmeg oil stayed dissolved when it was tried: more than tables say of terpenes. */
const MEASURED = { value: 80, source: AS_TYPED };
const four = ['nutmeg', 'linalool', 'maltol', 'vanillin'];
/** 1 % vials of four materials, layered and liked; their bottles, one of them for the nose only; a bottle of carrier. No formula yet. */
const shelf = [
  ...batchShelf().flatMap((one) =>
    one.kind === 'formula' ? [] : one.id === 'nutmeg' ? { ...one, water: MEASURED } : one,
  ),
  ...four.map((id) => vialOf(`v-${id}`, 0.01, { material: id })),
  vialOf('nose', 0.01, { material: 'linalool', grade: 'smell only' }),
  newRecord('supply', {
    id: 'glycol',
    name: 'propylene glycol',
    sort: 'solvent',
    solvent: 'propylene-glycol',
    unit: 'g',
    amount: 500,
    supplier: 'Saltmarsh Supplies',
    lot: 'PG-7',
    grade: 'fit for drinks',
  }),
  newRecord('layering', {
    id: 'lay',
    name: 'Four by the window',
    readings: [],
    strips: four.map((id, i) => ({
      vial: `v-${id}`,
      code: id.slice(0, 4).toUpperCase(),
      dips: 4 - i,
      dippedAt: null,
      takenOutAt: null,
    })),
    verdict: { liking: 8, decision: 'keep', words: 'warm and round' },
  }),
];

const batches = () => storedOf<Batch>(page, 'batch');

const step = () => new URL(page.url()).hash.split('/')[3] ?? '';
const say = async () => (await page.locator('.say').first().textContent())!;
const field = (name: string) => page.locator(`input[name="${name}"]`);

/** Does something that leads to another step, and waits for it. */
async function leave(by: () => Promise<void>): Promise<void> {
  const before = step();
  await by();
  await page.waitForFunction((key) => location.hash.split('/')[3] !== key, before);
}

/** Taps a choice; one that is not the only question of its step stays to be seen. */
const choose = (words: string) => page.locator('label.choice', { hasText: words }).first().tap();

async function type(name: string, text: string): Promise<void> {
  await field(name).fill('');
  await field(name).pressSequentially(text);
}

const main = () => page.locator('.actions .main').tap();
const offer = (words: RegExp) => page.locator('.second', { hasText: words }).first();

/** Walks on to a step. At each step `at` may do something; it says 'left' when that has led on already. */
async function walkTo(key: string, at: Record<string, () => Promise<'left' | void>> = {}): Promise<void> {
  for (let i = 0; i < 60 && step() !== key; i++) {
    const here = step();
    if ((await at[here]?.()) === 'left') continue;
    const exact = offer(/xactly/);
    await leave(async () => ((await exact.count()) > 0 ? exact.tap() : main()));
  }
  expect(step()).toBe(key);
}

async function finish(): Promise<void> {
  await main();
  await page.locator('.record').waitFor();
}

/** Fills slots of the recipe page, by the names of their questions. */
async function fill(slots: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, words] of Object.entries(slots)) await hand(page).slot(name, words);
}

const recipe = () => page.locator('.card-sections').waitFor();
const slot = (name: string) => page.locator(`.slot[data-name="${name}"]`);
/** By its heading: the label of the drink mentions other sections. */
const section = (title: string) =>
  page.locator('.card-sections > section', { has: page.locator('h3', { hasText: title }) });

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await putRecords(page, shelf);
  await page.reload();
  await page.locator('.tasks .card').first().waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('from a liked layering to a batch', () => {
  test('the layering becomes a formula, by strength times dips', async () => {
    await page.locator('.tasks .card', { hasText: 'Make a batch' }).tap();
    await offer(/Write a formula/).tap();
    await page.waitForFunction(() => document.querySelector('.say')?.textContent?.startsWith('What does the formula'));
    await leave(() => choose('Four by the window'));
    await expect.poll(() => page.locator('.formula-lines .line').count()).toBe(4);
    await page.locator('.formula-lines .share', { hasText: '40 %' }).first().waitFor(); // 4 of 10 dips
    await leave(main);
    await type('name', 'Orchard');
    await finish();
    expect(await page.locator('h1').textContent()).toBe('Orchard');
  });

  test('its page says share, mg/kg, bottles and cost, and leads to the batch', async () => {
    await page.locator('.second', { hasText: 'Versions' }).tap();
    await page.locator('.sheet', { hasText: 'No drink of it was made yet: type a dose.' }).waitFor();
    await type('dose', '50');
    await page.locator('.sheet', { hasText: 'worth of it' }).waitFor();
    const text = (await page.locator('.sheet').textContent())!;
    expect(text).toContain('nutmeg oil · 40 %');
    expect(text).toContain('lot L-b-nutmeg');
    expect(text).toContain('worth of it'); // 50 mg/kg at 2 a gram
    await page.locator('.actions .main').tap();
    await recipe();
    expect(await slot('what').textContent()).toContain('Orchard');
    expect(await slot('dose').textContent()).toContain('50 mg/kg');
  });

  test('a bottle for the nose is refused with the reason, and the run does not go on', async () => {
    await fill({ brix: '10', abv: '0', carrier: 'propylene glycol' }); // nothing of this formula was made or tasted yet: no drink is taken for granted
    expect(await section('Concentrate').textContent()).toContain('lot PG-7'); // there is one, and its label was read
    await fill({ 'lot.linalool': 'linalool-nose' });
    await section('Weighing').locator('.trouble', { hasText: 'smell only, it never goes into a drink' }).waitFor();
    expect(await page.locator('.actions .main').textContent()).toBe('Change linalool');
    await main();
    await page.locator('dialog[open] .sheet-row', { hasText: 'L-b-linalool' }).first().tap();
    await page.locator('.card-sections .trouble:not(.danger)').waitFor({ state: 'detached' });
    expect(await page.locator('.actions .main').textContent()).toMatch(/^Weigh [\d.]+ g of/);
  });

  test('nutmeg oil breaks a limit through what it contains, and the highest dose that passes is offered and taken', async () => {
    await fill({ dose: '150', spare: '25', make: 'A solution', fine: '0.001' }); // solids are not diluted far enough for 0.01 g
    await page.locator('.actions .smell-only', { hasText: 'over the limit' }).waitFor();
    await main();
    await page.locator('.trouble', { hasText: 'tap or type a reason' }).waitFor();
    expect(step()).toBe('recipe');
    await offer(/^Rules$/).tap();
    await page.locator('dialog[open] .finding.bad', { hasText: 'safrole' }).waitFor();
    await page.locator('.highest', { hasText: 'through nutmeg oil' }).waitFor();
    expect(await page.locator('.no-certificate').textContent()).toContain('does not certify');
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await offer(/Take .* mg\/kg: nutmeg oil then passes/).tap();
    await page.locator('.actions .smell-only').waitFor({ state: 'detached' });
  });

  test('a vessel is begun again: taken back it is as it was; in earnest what was in it is lost, after a reload too', async () => {
    await fill({ fine: '0.001' });
    await walkTo('c.maltol');
    await offer(/^Begin this vessel again$/).tap();
    await page.locator('.say', { hasText: 'Empty this vessel' }).waitFor();
    await offer(/^Undo/).tap();
    await page.locator('.say', { hasText: 'Weigh' }).waitFor();
    await offer(/^Begin this vessel again$/).tap();
    await page.locator('.say', { hasText: 'Empty this vessel' }).waitFor(); // what is shown is stored
    await page.reload();
    await page.locator('.say', { hasText: 'Empty this vessel' }).waitFor();
    await page.locator('.body', { hasText: 'lot L-b-vanillin' }).waitFor();
    await leave(main);
    expect(step()).toBe('c2.vanillin');
    expect(await offer(/^Begin/).count()).toBe(0); // nothing is in it yet
  });

  test('every gram is weighed; the one that went over is rescued by scaling up', async () => {
    await walkTo('result', {
      'c2.linalool': async () => {
        const grams = Number(/([\d.]+) g of/.exec(await say())![1]);
        await type('mass.c2.linalool', (1.05 * grams).toFixed(3).replace('.', ','));
        await page.locator('.quiet', { hasText: 'over,' }).waitFor();
        await main();
        await page.locator('.trouble', { hasText: 'Too much was added' }).waitFor();
        await leave(() => offer(/Scale all up by/).tap());
        expect(await say()).toMatch(/^Add .* g more of/);
        return 'left';
      },
    });
    const results = (await page.locator('.body').textContent())!;
    const litres = Number(/Drink([\d.]+) L/.exec(results)![1]);
    expect(Math.abs(litres / 21 - 1)).toBeLessThan(0.003); // 5 % more than 20 L, and the scale's step
    expect(results).toContain('°Brix');
    await walkTo('name');
    await finish();
  });

  test('the batch is traced to its lots, is taken off the bottles, and has a sheet', async () => {
    const [batch] = await batches();
    expect(batch!.from).toEqual(expect.arrayContaining(four.map((id) => `b-${id}`)));
    expect(batch!.uses.map(({ id }) => id).sort()).toEqual([...four.map((id) => `b-${id}`), 'glycol'].sort());
    expect(batch!.checks.some(({ state }) => state === 'over')).toBe(false);
    expect(batch!.lost!.map(({ id, why }) => [id, why])).toEqual([['b-vanillin', 'in a vessel that was begun again']]);
    const [nutmeg, linalool] = ['nutmeg', 'linalool'].map((id) => batch!.reached.find((one) => one.material === id)!);
    expect(linalool!.mgPerKg.value / nutmeg!.mgPerKg.value).toBeCloseTo(3 / 4, 2);
    await page.locator('.record', { hasText: 'lot L-b-vanillin' }).waitFor();
    await page.locator('.second', { hasText: 'Sheet' }).tap();
    await page.locator('.sheet').waitFor();
    expect(await page.locator('.sheet').textContent()).toContain('lot L-b-maltol');
    expect(await page.locator('.sheet').textContent()).toContain('lot PG-7');
    const download = page.waitForEvent('download');
    await page.locator('.second', { hasText: 'CSV' }).tap();
    expect((await download).suggestedFilename()).toMatch(/\.csv$/);
    const picture = page.waitForEvent('download');
    await page.locator('.second', { hasText: 'PNG' }).tap();
    const saved = await picture;
    expect(saved.suggestedFilename()).toMatch(/ 1 of \d\.png$/);
    const sheet = readPng(readFileSync(await saved.path()));
    expect([sheet.width, sheet.height, sheet.perMetre]).toEqual([874, 1240, 5906]); // A5 at 150 dpi
    const ink = sheet.grey.filter((dot) => dot < 128).length / sheet.grey.length;
    expect(ink).toBeGreaterThan(0.01);
    expect(ink).toBeLessThan(0.2);
    await page.goBack();
  });

  test('a drink is dosed with the concentrate that is left, and never with what is for the nose', async () => {
    await page.goto(site.url);
    await page.locator('.tasks .card', { hasText: 'Dose a drink' }).tap();
    const h = hand(page);
    await h.slot('vial', 'NOSE');
    await page.locator('.trouble', { hasText: 'smell only, it never goes into a drink' }).waitFor();
    expect(await page.locator('.plus').count()).toBe(0);
    await h.slot('vial', 'C1');
    await h.slot('dropper', 'On a scale');
    await h.slot('base.name', 'soda');
    await h.slot('base.ml', '1000');
    await h.slot('massG', '1,00');
    await page.locator('.card-answer', { hasText: 'mg/kg' }).waitFor();
    await page.locator('.rules.bad', { hasText: 'over the limit' }).waitFor(); // a litre of soda weighs less than one of syrup
    await main();
    await page.locator('.trouble', { hasText: 'tap or type a reason' }).waitFor();
    await page.locator('.rules').tap();
    await page.locator('.reasons button', { hasText: 'A trial' }).tap();
    await page.locator('.reasons [aria-pressed=true]').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await finish();
    await page.locator('.notices', { hasText: 'Over the EU limit of safrole' }).waitFor();
    const [made] = await batches();
    const [tasting] = await storedOf<Tasting>(page, 'tasting');
    const dosed = tasting!.reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
    const inBatch = made!.reached.reduce((sum, { mgPerL }) => sum + mgPerL.value, 0); // 1 g/L in the batch too
    expect(Math.abs(dosed / inBatch - 1)).toBeLessThan(0.02);
  });

  test('a year later it is made again: another lot is taken, and the difference is said', async () => {
    const spent = shelf.find(({ id }) => id === 'b-linalool')!;
    const [made] = await batches();
    const year = Number(made!.madeOn.slice(0, 4)) + 1;
    const later = made!.madeOn.replace(/^\d{4}/, String(year)).replace('02-29', '03-01');
    clock = `${later}T12:00:00`;
    await putRecords(page, [
      { ...spent, archived: later },
      { ...spent, id: 'b-linalool-27', lot: 'L-27' },
    ]);
    await page.clock.setFixedTime(new Date(clock));
    await page.goto(`${site.url}#/record/${made!.id}`);
    await page.reload();
    await page.locator('.second', { hasText: 'Make exactly this' }).tap();
    await page.locator('.differences', { hasText: 'lot L-b-linalool is archived' }).waitFor();
    await page.locator('.main', { hasText: 'Begin' }).tap();
    await recipe();
    await page.locator('.quiet', { hasText: 'lot L-b-linalool then' }).waitFor();
    expect(await page.locator('.slot.fixed', { hasText: '20 L' }).count()).toBe(1);
    expect(await page.locator('.actions .smell-only').count()).toBe(0);
    await walkTo('name');
    await finish();
    const [first, second] = await batches();
    expect(second!.from).toEqual(expect.arrayContaining([first!.id, 'b-linalool-27']));
    expect(second!.drink.litres.value).toBeCloseTo(20, 0);
    expect(second!.madeOn).toBe(later);
  });

  test('the same formula as a cloudy drink: an emulsion, its agent under the cap', async () => {
    await page.clock.setFixedTime(new Date(clock.replace('T12', 'T13'))); // ids are in order of time
    await page.goto(site.url);
    await page.locator('.tasks .card', { hasText: 'Make a batch' }).tap();
    await recipe();
    expect(await slot('what').textContent()).toContain('Orchard'); // as last time
    expect(await slot('spare').textContent()).toContain('25 % to spare');
    await fill({ dose: '60', make: 'An emulsion', dosage: '2', agent: 'ester gum', spare: '0' });
    expect(await slot('brix').textContent()).toContain('10 °Brix');
    expect(await slot('fine').textContent()).toContain('0.001 g');
    expect(await section('Emulsion').textContent()).toContain('a ring at the top after about');
    await offer(/^Rules$/).tap();
    await page.locator('.limits summary', { hasText: 'Limits of this kind of drink' }).tap();
    await page.locator('.finding', { hasText: 'glycerol esters of wood rosin' }).first().waitFor();
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await walkTo('name', {
      's.sugar': async () => {
        const grams = Number(/([\d.]+) g of/.exec(await say())![1]);
        await type('mass.s.sugar', (1.03 * grams).toFixed(0));
        await page.locator('.composition', { hasText: '10.3 °Brix' }).waitFor();
        await leave(() => offer(/Keep it: .* too much sugar/).tap());
        return 'left';
      },
    });
    await finish();
    const cloudy = (await batches()).at(-1)!;
    expect(cloudy.drink.emulsion).toBe(true);
    expect(cloudy.drink.brix.value).toBeCloseTo((100 * 1.03 * 0.1) / 1.003, 1);
    const agent = cloudy.weighed.find(({ id }) => id.startsWith('agent'))!;
    expect((1000 * agent.massG.value) / cloudy.drink.litres.value).toBeLessThanOrEqual(100.5); // mg/L, cap 100, weighed to 1 mg
    expect(cloudy.weighed.map(({ id }) => id)).toContain('gum-arabic');
  });

  test('nothing was asked of another host, and nothing complained', () => {
    expect(phone.complaints).toEqual([]);
  });
});
