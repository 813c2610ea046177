import { expect } from 'vitest';
import type { Driven } from './driven';

/** A new bottle is diluted by drops up to the record; in the middle of the drops the browser is opened again, and goes on where it was. */
export async function thinNewBottle(browser: Driven, home: string, anew: () => Promise<Driven>): Promise<void> {
  await toThePad(browser);
  for (let i = 1; i <= 3; i++) {
    await new Promise((resolve) => setTimeout(resolve, 60)); // a finger is no faster
    await browser.click('.pad');
    await browser.see('.pad .count', new RegExp(`^${i}$`));
  }
  const later = await anew();
  await later.see('.paused', /drop 3 of/);
  await later.click('.paused .main');
  await later.see('.pad .count', /^3$/);
  await later.click('.pad');
  await later.see('.pad .count', /^4$/);
  await new Promise((resolve) => setTimeout(resolve, 450)); // what is beside the pad sleeps for a moment after a drop
  await later.click('.actions .main');
  await later.see('.record, .run .say', /cardamom oil|It came out/);
  if (await later.run<boolean>('return !document.querySelector(".record")')) await later.click('.actions .main');
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
  await browser.see('.actions .main', /Add the bottle/);
  await browser.click('.actions .main');
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
