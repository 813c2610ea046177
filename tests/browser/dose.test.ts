import { afterAll, beforeAll, expect, onTestFailed, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { pipette } from '../tasks/count/countShelf';
import { vialRecord } from './benchRecords';
import { hand } from './hand';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let bench: OpenBench;
let phone: Phone;
const soda = newRecord('base', { name: 'rhubarb soda', volumeMl: 250, brix: 7, abv: 0, densityGPerMl: 1.0258 });
const vials = ['HEX', 'CARD'].map((code) => vialRecord({ code, name: `material ${code}` }));

beforeAll(async () => {
  bench = await openBench({ width: 360, height: 740, records: [...vials, ...pipette, soda] });
  ({ phone } = bench);
});

afterAll(() => bench.close());

const count = () =>
  phone.page
    .locator('.plus')
    .getAttribute('aria-label')
    .then((label) => Number(/\d+ so far/.exec(label!)![0].split(' ')[0]));
const fallen = (n: number) => phone.page.locator(`.plus[aria-label*=" ${n} so far"]`).waitFor();
const awake = () => phone.page.waitForTimeout(450); // what is beside the drops sleeps for a moment
const big = () => phone.page.locator('.card-answer .big').textContent().then(Number);

async function drop(times: number): Promise<void> {
  const before = await count();
  for (let i = 1; i <= times; i++) {
    await phone.page.locator('.plus').tap();
    await fallen(before + i);
    await phone.page.waitForTimeout(60);
  }
}

test('250 mL are dosed to a target', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/dose.png' })));
  await h.task('Dose a drink');
  await expect.poll(() => page.locator('.slot[data-name=vial]').textContent()).toContain('CARD 1 %'); // the newest
  await expect.poll(() => page.locator('.slot[data-name="base.ml"]').textContent()).toContain('250 mL');
  await page.locator('.slot[data-name=aim]').tap();
  await page.locator('dialog[open] .usual button', { hasText: '10 mg/kg' }).tap();
  await page.locator('.card-answer', { hasText: 'to go' }).waitFor();
  const toGo = Number(/(\d+) to go/.exec((await page.locator('.card-answer').textContent())!)![1]);
  await drop(toGo);
  await page.locator('.card-answer', { hasText: `with ${toGo} drops, as planned` }).waitFor();
  expect(Math.abs((await big()) - 10)).toBeLessThan(1);
  await awake();
  await h.finish();
  await expect.poll(() => page.locator('.record').textContent()).toContain('rhubarb soda');
});

test('the next one begins as this one; the drop answers on touch-down and to keys, and what is beside it sleeps for a moment', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/dose-keys.png' })));
  await page.goto(`${bench.url}#/`);
  await h.task('Dose a drink');
  await expect.poll(() => page.locator('.sentence').textContent()).toMatch(/CARD 1 %.*250 mL.*rhubarb soda.*10 mg\/kg/);
  await page.evaluate(async () => {
    const plus = document.querySelector('.plus')!;
    plus.dispatchEvent(new PointerEvent('pointerdown', { button: 0, bubbles: true }));
    while (!plus.getAttribute('aria-label')!.includes(' 1 so far')) await new Promise(requestAnimationFrame);
    const beside = [...document.querySelectorAll<HTMLElement>('.actions .second')];
    const undo = beside.find(({ textContent }) => textContent === 'Undo')!;
    undo.dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 1 })); // at once: a finger that still counts
  });
  await page.waitForTimeout(100);
  expect(await count()).toBe(1);
  await page.locator('.plus').focus();
  await page.keyboard.press('Space');
  await fallen(2);
  await page.waitForTimeout(100); // two presses at once are one
  await page.keyboard.press('Enter');
  await fallen(3);
  await page.locator('.slot[data-name=aim]').tap();
  await page.locator('dialog[open]').evaluate((sheet) => (sheet as HTMLElement).focus());
  await page.keyboard.press('Space'); // a sheet lies over the drops
  await page.keyboard.press('Escape');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  expect(await count()).toBe(3);
  await awake();
  await page.locator('.actions .second', { hasText: 'Undo' }).tap();
  await fallen(2);
});

test('killed after a drop it goes on at that glass, with a note and another vial in the same one', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/dose-two.png' })));
  await page.reload();
  await fallen(2);
  await awake();
  await page.locator('.actions .second', { hasText: 'Tasting note' }).tap();
  await page.getByRole('button', { name: /^7, like/ }).tap();
  await h.type('verdict', 'bright, a little green');
  await page.keyboard.press('Escape');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.locator('.actions .second', { hasText: 'Another vial' }).tap();
  await h.slot('vial', 'HEX');
  await drop(3);
  await expect.poll(() => page.locator('.glass-parts').textContent()).toMatch(/material CARD.*material HEX.*alcohol/);
  await awake();
  await h.finish();
  const record = (await page.locator('.record').textContent())!;
  expect(record).toContain('bright, a little green');
  expect(record).toContain('HEX');
});

test('a series with a blank is a row of glasses, and is gone on with at its glass', async () => {
  const { page } = phone;
  const h = hand(page);
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/dose-series.png' })));
  await page.goto(`${bench.url}#/`);
  await h.task('Dose a drink');
  await page.locator('.actions .second', { hasText: 'Series' }).tap();
  await h.slot('glasses', '2');
  await h.slot('lowest', '10');
  await h.slot('base.ml', '30');
  await page.locator('.card-answer', { hasText: 'The blank: ' }).waitFor();
  await h.done();
  await h.sees('Write these codes');
  await expect.poll(() => page.locator('.codes li').count()).toBe(3);
  const codes = await page.locator('.codes li').allTextContents();
  await h.done();
  const toGo = async () => Number(/(\d+) drops?/.exec((await page.locator('.say').textContent())!)![1]);
  for (let glass = 0; glass < 3; glass++) {
    await h.sees(codes[glass]!);
    await h.drops(await toGo());
    if (glass === 0) await page.reload();
    await page.locator('.pad').waitFor();
    await h.done();
  }
  for (const code of [...codes].sort()) {
    await h.sees(`Taste glass ${code}`);
    await page.getByRole('button', { name: /^6, like/ }).tap();
    await h.done();
  }
  await h.choose(`Glass ${codes[1]}`);
  await h.sees('was the best');
  await expect.poll(() => page.locator('.run').textContent()).toContain(`Glass ${codes[2]} was the blank`);
  await h.finish();
});

test('Look up ppm: typing the level that is found finds the drops', async () => {
  const { page } = phone;
  onTestFailed(async () => void (await page.screenshot({ path: 'tests/output/lookup.png' })));
  const h = hand(page);
  await page.goto(`${bench.url}#/`);
  await h.task('Look up ppm');
  await page.locator('.slot.sought[data-name=ppm]').waitFor();
  await h.slot('ppm', '20');
  await page.locator('.slot.sought[data-name=drops]').waitFor();
  await expect.poll(() => page.locator('.card-answer .big').textContent()).toMatch(/^\d+ drops$/);
  await page.locator('.slot[data-name=drink]').tap();
  await h.tap('Find this from the others');
  await page.locator('.slot.sought[data-name=drink]').waitFor();
  await expect.poll(() => page.locator('.card-answer .big').textContent()).toMatch(/ mL$/);
});
