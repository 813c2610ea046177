import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { batchShelf, clearPlan } from '../tasks/batch/batchShelf';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';
import type { Batch } from '../../src/records/kind/batch';
import { batchMaker } from './makeBatch';
import { putRecords } from './pageStore';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;

let bench: ReturnType<typeof batchMaker>;

const section = (title: string) => bench.section(title);
const recipe = (slots: Readonly<Record<string, string>>) => bench.recipe(slots);
const make = (name: string) => bench.make(name);

/** Reads the draft of its label from the sheet that prints, and goes back to its page: what each line of it says. */
async function draftOf({ id }: Batch): Promise<Record<string, string>> {
  await page.getByRole('button', { name: 'What its label says' }).tap();
  await page.locator('.draft').waitFor();
  expect(new URL(page.url()).hash).toBe(`#/sheet/${id}/label`);
  const lines = await page
    .locator('.draft > div')
    .evaluateAll((all) =>
      all.map((one) => [one.querySelector('dt')!.textContent!, one.querySelector('dd > p')!.textContent!] as const),
    );
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.label-sheet .actions').isVisible()).toBe(false);
  expect(await page.locator('.draft').isVisible()).toBe(true);
  await page.emulateMedia({ media: 'screen' });
  await page.goBack();
  await page.locator('.record').waitFor();
  return Object.fromEntries(lines);
}

const drink = {
  litres: '5',
  dose: '50',
  brix: '10',
  abv: '0',
  'throw.n': '0',
  acidity: '2.5',
  dosage: '1',
  make: 'A solution',
  fine: '0.0001',
  carrier: 'propylene glycol',
  'carrier.food': 'Yes',
};

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  bench = batchMaker(page, site.url);
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await putRecords(page, batchShelf());
  await page.reload();
  await page.locator('.tasks .card').first().waitFor();
  expect(clearPlan['what']).toBe('f1');
});

afterAll(async () => {
  expect(phone.complaints).toEqual([]);
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('what keeps a drink', () => {
  test('a still lemonade with both preservatives: unprotected it is a danger, then inside of what was tested', async () => {
    await recipe(drink);
    await section('Keeping').getByText('nothing that stops yeast').waitFor();
    await hand(page).slot('benzoate', '150');
    await hand(page).slot('sorbate', '250');
    await section('Keeping').getByText('Inside of what was tested').waitFor();
    expect(await section('Keeping').locator('.trouble').count()).toBe(0);
    await hand(page).slot('salt.g', '0.5');
    await section('Acid')
      .getByText(/About pH 3\.[12]/)
      .waitFor();
    expect(await page.locator('.curve-picture').count()).toBe(2);
    const made = await make('Still lemonade');
    expect(made.keeping!.phComputed).toBeCloseTo(3.226, 2); // as the core has it of the same grams
    expect(made.weighed.map(({ id }) => id)).toEqual(expect.arrayContaining(['trisodium-citrate', 'sodium-benzoate']));
    await page.getByText('computed from what was weighed').first().waitFor();
    const draft = await draftOf(made);
    expect(draft['Ingredients']).toMatch(
      /^water, sugar, acid: citric acid, flavouring, preservatives: (potassium sorbate, sodium|sodium benzoate, potassium).*acidity regulator: sodium citrates$/,
    );
    expect(draft['In 100 mL']).toMatch(/^energy 180 kJ \/ 42 kcal.*sugars 10 g/);
    expect(draft['Lot']).toMatch(/^L B\d+$/);
  });

  test('the same with vitamin C makes benzene, and at pH 5 sorbate does not keep it', async () => {
    await recipe(drink);
    await hand(page).slot('benzoate', '150');
    await hand(page).slot('ascorbic', '200');
    await section('Keeping').locator('.trouble', { hasText: 'benzene' }).waitFor();
    await hand(page).slot('benzoate', '0');
    await section('Keeping').locator('.trouble', { hasText: 'benzene' }).waitFor({ state: 'detached' });
    await hand(page).slot('sorbate', '250');
    await hand(page).slot('ph', '5');
    await section('Keeping').locator('.trouble', { hasText: 'low acid' }).waitFor();
    await section('Keeping').getByText('it does not keep this drink').waitFor();
  });

  test('a pasteurised one: units from its heating, and no promise', async () => {
    await recipe(drink);
    await hand(page).slot('benzoate', '0');
    await hand(page).slot('sorbate', '0');
    await hand(page).slot('treated', 'in the closed bottle');
    await section('Keeping')
      .getByText(/units of heat/)
      .waitFor();
    await hand(page).slot('heat.kind', 'with fruit juice');
    await hand(page).slot('heat.log', '0 20, 15 72, 25 72, 40 30');
    await section('Keeping').getByText('Inside of what is published for apple juice').waitFor();
    await page.locator('[data-chip="best"]').tap();
    const sheet = page.locator('dialog[open]');
    await sheet.locator('input[name="best"]').fill('2027-06-01');
    await sheet.locator('input[name="best.why"]').fill('six weeks at 30 °C without change');
    await sheet.locator('.main').tap();
    await section('Keeping').getByText('six weeks at 30').waitFor();
    const made = await make('Pasteurised lemonade');
    expect(made.keeping).toMatchObject({ bestBefore: '2027-06-01', why: 'six weeks at 30 °C without change' });
    await page.getByText('six weeks at 30 °C without change').first().waitFor();
    const draft = await draftOf(made);
    expect(draft['Ingredients']).toBe(
      'water, sugar, acid: citric acid, flavouring, acidity regulator: sodium citrates',
    );
    expect(draft['Best before']).toContain('2027');
  });

  test('a carbonated one: four volumes in a bottle rated 5 bar are refused, and fewer are taken', async () => {
    await recipe(drink);
    await hand(page).slot('treated', 'Nothing else');
    await hand(page).slot('benzoate', '150');
    await hand(page).slot('sorbate', '250');
    await hand(page).slot('gas', '4');
    await hand(page).slot('bottle.bar', '5');
    const refused = section('Gas').locator('.trouble', { hasText: 'it can burst' });
    await refused.waitFor();
    expect(await bench.main().textContent()).toMatch(/^Change bottle rating/);
    await refused.locator('button', { hasText: /^Take [\d.]+ volumes$/ }).tap();
    await refused.waitFor({ state: 'detached' });
    await section('Gas')
      .getByText(/what water does/)
      .waitFor();
    const made = await make('Carbonated lemonade');
    expect(made.drink.gas!.volumes).toBeLessThan(3);
    expect(made.drink.gas!.volumes).toBeGreaterThan(1);
    expect((await draftOf(made))['Ingredients']).toContain('sugar, carbon dioxide, acid: citric acid');
  });

  test('a liqueur: sugar and alcohol by the rule of Delle, and no gas asked', async () => {
    await recipe({ ...drink, brix: '19', abv: '25', spirit: '96', 'spirit.food': 'Yes', gas: '0', benzoate: '0', sorbate: '0' }); // prettier-ignore
    await section('Keeping').getByText('Delle units').waitFor();
    expect(await section('Gas').count()).toBe(0);
    await section('Acid').getByText('with so much alcohol measure it').waitFor();
    const made = await make('Orchard liqueur');
    expect(made.keeping!.said.map(({ state }) => state)).toContain('inside');
    const draft = await draftOf(made);
    expect(draft['Alcohol']).toMatch(/^alc\. 25\.[01] % vol$/);
    expect(draft['In 100 mL']).toMatch(/^energy \d+ kJ \/ \d+ kcal$/);
    expect(draft['Its own law']).toContain('2019/787');
    expect(draft['Hazard signs']).toMatch(/^none/);
  });

  test('without sugar: a sweetener with its range, and what the drink loses', async () => {
    await recipe({ ...drink, brix: '0', abv: '0' });
    await hand(page).slot('sweet.1', 'sucralose');
    await hand(page).slot('sweet.1.mg', '150');
    await section('Sweet without sugar')
      .getByText(/About as sweet as/)
      .waitFor();
    await section('Sweet without sugar').getByText('less body').waitFor();
  });
});
