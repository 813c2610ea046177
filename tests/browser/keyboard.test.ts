import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { pipette } from '../tasks/count/countShelf';
import { shelve, vialRecord } from './benchRecords';
import { keyHand } from './keyHand';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let bench: OpenBench;
let phone: Phone;
const at = (selector: string) => phone.page.locator(selector).first().waitFor();

beforeAll(async () => {
  bench = await openBench({
    width: 1024,
    height: 768,
    before: (page) =>
      page.addInitScript(() => addEventListener('pointerdown', () => void (sessionStorage['touched'] = 'yes'), true)),
  });
  ({ phone } = bench);
});

afterAll(async () => {
  const touched = await phone.page.evaluate(() => sessionStorage['touched'] as unknown);
  await bench.close();
  expect(touched).toBe(undefined);
});

const shoot = (name: string) =>
  onTestFailed(async () => void (await phone.page.screenshot({ path: `tests/output/keyboard ${name}.png` })));

test('from an empty profile to the first labelled vial without a pointer', async () => {
  const { page } = phone;
  const k = keyHand(page);
  shoot('first vial');
  await k.enter('.first-way .next button');
  await page.locator('[name="new.name"]:focus').waitFor();
  await page.keyboard.type('card');
  await k.enter('.matches .entry', 'cardamom oil');
  await at('.task-card');
  await k.space('.pills button', 'food grade');
  await at('.pills [aria-pressed=true]');
  await k.enter('.actions .main');
  await at('.record');
  await k.enter('button', 'Dilute it');
  await at('.run .sentence');
  await k.enter('.slot[data-name=solvent]');
  await k.enter('.sheet-row', 'ethanol 96');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await expect.poll(k.heldSlot).toBe('solvent');
  await k.space('.pills button', 'food grade');
  await k.enter('.actions .main', 'Pour');
  await at('.pad');
  await k.drops('Space');
  await k.enter('.actions .main');
  await at('.record');
  await k.enter('button', 'Print label');
  await page.evaluate(() => addEventListener('beforeprint', () => (document.title = 'printing')));
  await k.enter('button', 'Print 1 label');
  await page.waitForFunction(() => document.title === 'printing');
});

test('a shelf to go on with', async () => {
  const { page } = phone;
  const vials = ['CARD', 'HEX', 'PGF'].map((code) =>
    vialRecord({ code, name: `material ${code}`, solvent: 'propylene-glycol' }),
  );
  const lines = vials.map(({ contents }) => ({ material: contents[0]!.material, name: contents[0]!.name, share: 1 }));
  const formula = newRecord('formula', { id: 'pink', name: 'Pink', root: 'pink', version: 1, notes: '', lines });
  const soda = newRecord('base', { name: 'rhubarb soda', volumeMl: 250, brix: 7, abv: 0, densityGPerMl: 1.0258 });
  await shelve(page, [...vials, ...pipette, formula, soda]);
});

/** Cards, and what their main button leads to when all that it needs is there. */
const CARDS: Readonly<Record<string, string>> = {
  dilute: '.pad',
  calibrate: '',
  count: '.pad',
  dose: '',
  blind: '',
  lookup: '',
  batch: '',
};

test.each(Object.entries(CARDS))(
  'the card of %s: each slot opens, is chosen and closes with the focus back on it',
  async (task, leads) => {
    const { page } = phone;
    const k = keyHand(page);
    shoot(task);
    await page.goto(`${bench.url}#/`);
    await k.enter(`.tasks a[href="#/new/${task}"]`);
    await at('.run .sentence');
    const names = await page
      .locator('button.slot[data-name]')
      .evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset['name']!));
    expect(names.length).toBeGreaterThan(1);
    for (const name of names) {
      if ((await page.locator(`.slot[data-name="${name}"]`).count()) === 0) continue; // another answer has made it needless
      await k.enter(`.slot[data-name="${name}"]`);
      await at('dialog[open]');
      expect(await page.evaluate(() => document.activeElement!.closest('dialog') !== null), name).toBe(true);
      await choose(name);
      await page.locator('dialog').waitFor({ state: 'detached' });
      if (await page.locator(`.slot[data-name="${name}"]`).count())
        await expect.poll(k.heldSlot, { timeout: 5000 }).toBe(name);
    }
    for (const name of await unsaid()) await k.space(`.pills[data-name="${name}"] button`);
    if (leads === '') return;
    await k.enter('.actions .main');
    await at(leads);
    await k.drops('Enter');
    await page.keyboard.press('Escape');
    await at('.run .sentence');
  },
);

/** Names of the questions whose options are all to be seen, and none of them taken. */
function unsaid(): Promise<string[]> {
  return phone.page
    .locator('.pills:not(:has([aria-pressed=true]))')
    .evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset['name']!));
}

/** In an open sheet: what is chosen already, else the first option or usual value, else it is left as it is. */
async function choose(name: string): Promise<void> {
  const { page } = phone;
  const k = keyHand(page);
  const sheet = page.locator('dialog[open]');
  const chosen = '.sheet-row[aria-pressed=true], .usual [aria-pressed=true]';
  const first = '.sheet-row, .usual button';
  const row = (await sheet.locator(chosen).count()) ? chosen : (await sheet.locator(first).count()) ? first : '';
  if (row !== '') return k.enter(`dialog[open] :is(${row})`);
  const typed = await sheet.locator('.main:not([disabled])').count();
  if (typed) return k.enter('dialog[open] .main');
  await page.keyboard.press('Escape');
  expect(name).not.toBe('');
}

test('weighings are typed, and Enter goes from one to the next', async () => {
  const { page } = phone;
  const k = keyHand(page);
  shoot('weighings');
  await page.goto(`${bench.url}#/`);
  await k.enter('.tasks a[href="#/new/calibrate"]');
  await k.tabTo('input[name="mass.1"]');
  for (const [i, mass] of ['0.309', '0.311', '0.308'].entries()) {
    await page.locator(`input[name="mass.${i + 1}"]:focus`).waitFor();
    await page.keyboard.type(mass);
    await k.press('Enter');
  }
  await page.locator('.card-answer', { hasText: '±' }).waitFor();
  await k.enter('.actions .main', 'Save');
  await at('.record');
});

test('strips are picked, dipped and smelled', async () => {
  const { page } = phone;
  const k = keyHand(page);
  shoot('layer');
  await page.goto(`${bench.url}#/`);
  await k.enter('.tasks a[href="#/new/layer"]');
  await at('.pick-rows, [aria-pressed]');
  for (const code of ['CARD', 'HEX', 'PGF']) await k.space('.run button[aria-pressed=false]', code);
  await k.enter('.actions .main', 'Dip 3');
  await at('.dip-pad');
  for (let i = 0; i < 3; i++) {
    await page.waitForTimeout(500); // the pad takes no second touch before
    await k.space('.dip-pad');
  }
  await at('.fan');
  await k.enter('.strip-chip', 'CARD');
  await at('dialog[open]');
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await page.keyboard.press('Escape');
});

test('Escape leaves a card for the Bench', async () => {
  const { page } = phone;
  await page.goto(`${bench.url}#/`);
  await keyHand(page).enter('.tasks a[href="#/new/dose"]');
  await at('.run .sentence');
  await page.keyboard.press('Escape');
  await at('.tasks .card');
});

test('a drop on a card is counted by Space on its button, and by Enter beside all controls', async () => {
  const { page } = phone;
  const k = keyHand(page);
  await page.goto(`${bench.url}#/`);
  await k.enter('.tasks a[href="#/new/dose"]');
  await at('.plus');
  await k.space('.plus');
  await at('.plus[aria-label*=" 1 so far"]');
  await page.waitForTimeout(100); // two presses at once are one
  await page.keyboard.press('Enter');
  await at('.plus[aria-label*=" 2 so far"]');
});
