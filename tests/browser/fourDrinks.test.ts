import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { bitter, cordial, fourShelf, orange, soda, type DrinkToMake } from './fourRecipes';
import { batchMaker } from './makeBatch';
import { putRecords } from './pageStore';
import { readPdf } from './pdf';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;
let bench: ReturnType<typeof batchMaker>;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  bench = batchMaker(page, site.url);
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await putRecords(page, fourShelf);
  await page.reload();
  await page.locator('.tasks .card').first().waitFor();
});

afterAll(async () => {
  expect(phone.complaints).toEqual([]);
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** The sheet of the batch whose page is open, printed; the text of all its pages. */
async function printed(): Promise<string> {
  await page.locator('.second', { hasText: 'Sheet' }).tap();
  await page.locator('.sheet .stage').first().waitFor();
  const pages = readPdf(await page.pdf({ format: 'A4', printBackground: true, tagged: false }));
  for (const { widthMm } of pages) expect(widthMm).toBeCloseTo(210, -1);
  return pages.map(({ text }) => text).join(' ');
}

/** What is weighed into a vessel by the paper: g, and how much it says that makes. */
function vessel(text: string, title: string) {
  const [, rows, makes, unit] = new RegExp(`\\d ?\\. ${title} (.*?) Makes ([\\d.]+) (k?g)`).exec(text)!;
  const weighed = [...rows!.matchAll(/ (\d[\d.]*) (\d[\d.]*) ± (\d[\d.]*)/g)].map(([, planned, is, within]) => {
    expect(Math.abs(Number(planned) - Number(is))).toBeLessThanOrEqual(Number(within));
    return Number(is);
  });
  const sum = weighed.reduce((all, g) => all + g, 0);
  return {
    sum,
    makes: Number(makes) * (unit === 'kg' ? 1000 : 1),
    gramsOf: (name: string) => Number(after(rows!, name)[1]),
  };
}

/** The two numbers that follow on a name: planned and weighed. */
function after(rows: string, name: string): readonly [number, number] {
  const [, planned, weighed] = new RegExp(`${name}(?: Saltmarsh Supplies, lot [\\w -]+?)? ([\\d.]+) ([\\d.]+) ±`).exec(rows)!;
  return [Number(planned), Number(weighed)];
} // prettier-ignore

/** The figure of a line under "What is in it". */
const inDrink = (text: string, name: string) =>
  Number(new RegExp(`What is in it.*?${name} \\(?([\\d.]+)`).exec(text)![1]);

/** Reads a sheet against its recipe: masses add up, sugar and density by hand, and every lot is there. */
function judge(text: string, { litres, perLitre, brix, abv, density, lots }: DrinkToMake) {
  const concentrate = vessel(text, 'Concentrate');
  const isThrown = / Syrup Weigh/.test(text);
  const [syrup, drink] = [isThrown ? vessel(text, 'Syrup') : null, vessel(text, 'Drink')];
  expect(((syrup?.sum ?? 0) + drink.sum) / drink.makes).toBeCloseTo(1, 3); // the whole is the sum of its parts, to four digits
  expect(drink.makes / 1000 / inDrink(text, 'Density') / inDrink(text, 'Volume')).toBeCloseTo(1, 3);
  expect(inDrink(text, 'Volume')).toBeCloseTo(litres, 1);
  if (density) expect(drink.makes / (1000 * litres)).toBeCloseTo(density, 3);
  const from = syrup ?? drink;
  for (const one of [concentrate, from]) expect(one.makes / one.sum).toBeCloseTo(1, 3); // on paper with four digits
  for (const [name, grams] of Object.entries(perLitre))
    expect(from.gramsOf(name) / (grams * litres), name).toBeCloseTo(1, 2);
  expect(inDrink(text, 'Sugar') / brix).toBeCloseTo(1, 2);
  expect(inDrink(text, 'Alcohol')).toBeCloseTo(abv, 1);
  for (const lot of lots) expect(text.replaceAll('- ', '-')).toContain(`lot ${lot}`);
  return { concentrate, syrup, drink };
}

describe('four drinks, made and their sheets read on paper', () => {
  test('a clear soda of a syrup with its acid: 9.9 °Brix and 3 g/kg of acid, thrown by mass', async () => {
    await bench.recipe({ ...soda.typed, benzoate: '177' });
    await page.locator('.actions .smell-only', { hasText: 'over the limit' }).waitFor(); // as the recipe has it
    await bench.recipe(soda.typed);
    await bench.section('Syrup').getByText('64.9 °Brix').waitFor(); // 64.5 with the 5 g of concentrate
    await bench.make(soda.name);
    const text = await printed();
    const { syrup, concentrate } = judge(text, soda);
    expect(text).toContain('1 + 5.5 by mass');
    expect(text).toContain('3 volumes of CO ₂');
    expect(concentrate.makes).toBeCloseTo(5, 2); // 1 g/L
    expect(inDrink(text, 'citral') + inDrink(text, 'linalool')).toBeCloseTo(11.2, 0);
    expect(syrup!.gramsOf('sugar') / syrup!.sum).toBeCloseTo(0.649, 3);
  });

  test('a cloudy orange drink: 20 % of oil in its emulsion, which 13 % of gum holds; the rest is a vial', async () => {
    await bench.recipe(orange.typed);
    await bench.make(orange.name);
    const text = await printed();
    const { concentrate } = judge(text, orange);
    expect(concentrate.makes).toBeCloseTo(100, 1);
    expect(concentrate.gramsOf('sweet orange oil')).toBeCloseTo(0.19 * 1.0423 * 100, 1); // 190 mg/kg at 1 g/L
    expect(concentrate.gramsOf('gum arabic')).toBeCloseTo(0.65 * 0.19 * 1.0423 * 100, 1);
    expect(text).toMatch(/In the drink 20\.00 .*Kept as a vial 80\.00/);
    expect(text).toContain('an emulsion');
  });

  test('a liqueur of 20 % and 307 g/L of sugar, with as much peppermint oil as may be in it today', async () => {
    await bench.recipe(cordial.typed);
    await page.locator('.actions .smell-only', { hasText: 'over the limit' }).waitFor();
    await page
      .locator('.second, .advice button', { hasText: /^Take [\d.]+ mg\/kg/ })
      .first()
      .tap();
    await page.locator('.actions .smell-only').waitFor({ state: 'detached' });
    await bench.make(cordial.name);
    const text = await printed();
    const { drink, concentrate } = judge(text, cordial);
    const strong = drink.gramsOf('ethanol 96 % vol') + concentrate.gramsOf('ethanol 96 % vol');
    const pure = strong * ((0.96 * 789.24) / 807.42); // OIML R 22: 96 % vol weighs 807.42 kg/m³, ethanol 789.24
    expect(pure / 789.24 / cordial.litres).toBeCloseTo(0.2, 3);
    expect(inDrink(text, 'peppermint oil')).toBeLessThan(286);
    expect(concentrate.gramsOf('peppermint oil') / (drink.makes / 1000)).toBeCloseTo(inDrink(text, 'peppermint oil') / 1000, 3); // prettier-ignore
  });

  test('a bitter without alcohol: the quinine of a tonic water, grapefruit juice counted with its sugar and acid', async () => {
    await bench.recipe(bitter.typed);
    await bench.make(bitter.name);
    const text = await printed();
    judge(text, bitter);
    expect((inDrink(text, 'quinine hydrochloride dihydrate') * 1.034 * 324.42) / 396.91).toBeCloseTo(61, 0); // mg/L of the base
    expect(text).toMatch(/grapefruit juice 60(\.\d)? g\/L/);
  });
});
