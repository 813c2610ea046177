import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { material, pipette } from '../tasks/count/countShelf';
import { vialRecord } from './benchRecords';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let bench: OpenBench;
let phone: Phone;

const bottle = newRecord('bottle', {
  material: 'card',
  supplier: 'Pebblewick Oils (made up)',
  lot: 'C-2208',
  grade: 'fit for drinks',
  received: '2026-05-01',
  useBy: '2027-05-01',
});
const soda = newRecord('base', { name: 'rhubarb soda', volumeMl: 250, brix: 7, abv: 0, densityGPerMl: 1.0258 });
const ethanol = newRecord('supply', {
  name: 'ethanol 96 % vol',
  sort: 'solvent',
  solvent: 'ethanol-96',
  unit: 'g',
  amount: 800,
  grade: 'fit for drinks',
  supplier: 'Pebblewick Spirits (made up)',
  lot: 'E-5512',
});

beforeAll(async () => {
  bench = await openBench({
    records: [material('card'), bottle, ethanol, ...pipette, soda, vialRecord({ code: 'HEX', name: 'hexenol' })],
  });
  ({ phone } = bench);
});

afterAll(() => bench.close());

/** A phone on its side; a tablet; a desktop. */
const SIZES = [
  [844, 390],
  [1180, 820],
  [1440, 900],
] as const;

/** Where something is on the screen; all of it has to be in sight without scrolling. */
async function inSight(selector: string) {
  const { page } = phone;
  const box = (await page.locator(selector).first().boundingBox())!;
  const { width, height } = page.viewportSize()!;
  const whole = box.x >= 0 && box.y >= 0 && box.x + box.width <= width + 1 && box.y + box.height <= height + 1;
  expect(whole, `${selector} at ${JSON.stringify(box)} of ${width} × ${height}`).toBe(true);
  return box;
}

const begin = async (task: string, [width, height]: readonly [number, number]) => {
  await phone.page.setViewportSize({ width, height });
  await phone.page.goto(`${bench.url}#/`);
  await phone.page.locator('.tasks .card').first().waitFor();
  await phone.page.evaluate((to) => (location.hash = `#/new/${to}`), task);
  await phone.page.locator('.run .sentence').waitFor();
};

test.each(SIZES)('at %i × %i the pad is beside its words, and both are whole', async (...size) => {
  const { page } = phone;
  onTestFailed(async () => void (await page.screenshot({ path: `tests/output/landscape pad ${size[0]}.png` })));
  await begin('dilute', size);
  await page.locator('.run .main:not([aria-haspopup])').tap();
  await page.locator('.pad').waitFor();
  const [words, pad, foot] = [await inSight('.say'), await inSight('.pad'), await inSight('.actions .main')];
  await inSight('.pad .count');
  await inSight('.pad .live');
  expect(pad.x).toBeGreaterThanOrEqual(words.x + words.width);
  expect(pad.x - foot.x - foot.width).toBeGreaterThanOrEqual(32); // px: no finger that counts reaches it
  expect(words.y + words.height).toBeLessThanOrEqual(foot.y);
  expect(pad.height).toBeGreaterThan(size[1] * 0.85);
  await page.locator('.pad').tap();
  await page.waitForFunction(() => document.querySelector('.pad .count')?.textContent === '1');
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBeLessThanOrEqual(1);
});

test.each(SIZES)('at %i × %i the drops of a card are beside its sentence and the count', async (...size) => {
  const { page } = phone;
  onTestFailed(async () => void (await page.screenshot({ path: `tests/output/landscape card ${size[0]}.png` })));
  await begin('dose', size);
  await page.locator('.plus').waitFor();
  const [sentence, plus] = [await inSight('.sentence'), await inSight('.plus')];
  await inSight('.card-answer .big');
  await inSight('.actions .main');
  expect(plus.x).toBeGreaterThanOrEqual(sentence.x + sentence.width);
  expect(plus.height).toBeGreaterThan(150);
});

test('the hand that taps has the pad on its side', async () => {
  const { page } = phone;
  await begin('dose', SIZES[0]);
  await page.evaluate(() => (document.documentElement.dataset['hand'] = 'left'));
  const [sentence, plus] = [await inSight('.sentence'), await inSight('.plus')];
  expect(plus.x + plus.width).toBeLessThanOrEqual(sentence.x);
});

test('upright the pad is below its words, where the thumb is', async () => {
  const { page } = phone;
  await begin('dilute', [390, 844]);
  await page.locator('.run .main:not([aria-haspopup])').tap();
  await page.locator('.pad').waitFor();
  const [words, pad] = [await inSight('.say'), await inSight('.pad')];
  expect(pad.y).toBeGreaterThanOrEqual(words.y + words.height);
});
