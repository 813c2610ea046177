import { expect } from 'vitest';
import published from '../reference/scaleLines.json';
import { until, type Driven } from './driven';

const lines = published.lines.map(([line]) => line as string);

/** A new bottle is diluted by drops up to the record; in the middle of the drops the browser is opened again, and goes on where it was. */
export async function thinNewBottle(browser: Driven, home: string, anew: () => Promise<Driven>): Promise<void> {
  await toThePad(browser);
  for (let i = 1; i <= 3; i++) {
    await new Promise((resolve) => setTimeout(resolve, 60)); // a finger is no faster
    await browser.click('.pad');
    await browser.see('.pad .count', new RegExp(`^${i}$`));
  }
  await scaleCountsNothing(browser);
  const later = await anew();
  await later.see('.paused', /drop 3 of/);
  await later.click('.paused .main');
  await later.see('.pad .count', /^3$/);
  await later.click('.pad');
  await later.see('.pad .count', /^4$/);
  await new Promise((resolve) => setTimeout(resolve, 450)); // what is beside the pad sleeps for a moment after a drop
  await later.click('.actions .main');
  await until(() =>
    later.run<boolean>('return /It came out/.test(document.body.innerText) || !document.querySelector(".run")'),
  );
  if (await later.run<boolean>('return document.querySelector(".run") !== null'))
    await later.click('.run .actions .main');
  await later.see('.record', /cardamom oil/);
  const asked = await later.run<string[]>(
    'return performance.getEntriesByType("resource").map((r) => new URL(r.name).host)',
  );
  expect(new Set(asked)).toEqual(new Set([new URL(home).host]));
}

async function toThePad(browser: Driven): Promise<void> {
  await browser.click('.tasks .card', 'Dilute');
  await browser.click('.run .slot[data-name=bottle]');
  await browser.click('.sheet-row', 'A new bottle');
  await browser.type('input[name="new.name"]', 'cardamom oil');
  await browser.click('.actions .aside');
  await browser.see('.say', /^cardamom oil, CARD/);
  await browser.click('.pills button', 'food grade');
  await browser.see('.actions .main', /Next/);
  await browser.click('.actions .main');
  await browser.see('.sentence', /CARD|a new bottle/);
  await browser.click('.run .slot[data-name=solvent]');
  await browser.click('.sheet-row', 'ethanol 96');
  await browser.see('.sentence', /ethanol 96/);
  await browser.click('.pills[data-name^=food] button', 'food grade');
  await browser.click('.actions .main');
  await browser.see('.say', /drops/);
}

/** A scale types at its own pace into the weighings of a calibration, each line whole; at a pad it counts nothing. */
export async function scaleTypes(browser: Driven, home: string): Promise<void> {
  const value = (i: number) => browser.run<string>(`return document.querySelector('[name="mass.${i}"]')?.value ?? ''`);
  await browser.go(`${home}#/new/calibrate`);
  await browser.see('.run .sentence', /scale/);
  await until(() => browser.run<boolean>('return document.querySelector(\'[name="mass.1"]\') !== null'));
  await browser.press('+    0.3124 g  ', 0);
  await browser.see('.readings', /Yes/);
  await browser.click('.readings button', 'Yes');
  let row = 2;
  for (const delay of [0, 3, 8, 20, 60]) {
    await until(() => browser.run<boolean>(`return document.activeElement?.getAttribute('name') === 'mass.${row}'`));
    await browser.press('+    0.3127 g  ', delay);
    await until(async () => (await value(row)) === '0.3127');
    row++;
  }
  await until(() => browser.run<boolean>(`return document.activeElement?.getAttribute('name') === 'mass.${row}'`));
  for (const [line, words] of [
    ['US,+000.3124  g', 'still moving'],
    ['OL', 'shows no weight'],
    ['12.5 oz', 'another unit'],
    ['-    0.0120 g', 'was the vial taken off'],
    ['  0.3124 g', 'cut short'],
  ] as const) {
    await browser.press(line, 0);
    await browser.see('.note.wrong', new RegExp(words));
    expect(await value(row)).toBe('');
  }
}

/** At the pad the same lines count nothing, at any pace. */
async function scaleCountsNothing(browser: Driven): Promise<void> {
  const before = await browser.run<string>('return document.querySelector(".pad .count").textContent');
  for (const delay of [0, 3, 8, 20, 60]) {
    for (const line of lines) await browser.press(line, delay);
    await browser.see('.typed-notice', /A scale is typing/);
    await browser.see('.pad .count', new RegExp(`^${before}$`));
  }
}
