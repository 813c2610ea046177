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
  await later.click('.actions .main');
  await later.see('.say', /It is|It came out/);
  await later.click('.actions .main');
  await later.see('.say', /label/);
  await later.click('.actions .main');
  await later.see('.record', /cardamom oil/);
  const asked = await later.run<string[]>(
    'return performance.getEntriesByType("resource").map((r) => new URL(r.name).host)',
  );
  expect(new Set(asked)).toEqual(new Set([new URL(home).host]));
}

async function toThePad(browser: Driven): Promise<void> {
  await browser.click('.tasks .card', 'Dilute');
  await browser.click('label.choice', 'A new bottle');
  await browser.type('input[name="new.name"]', 'cardamom oil');
  await browser.type('input[name="new.code"]', 'CARD');
  await browser.click('.actions .main');
  await browser.see('.say', /label say/);
  await browser.click('.actions .main');
  await browser.click('label.choice', 'Food grade');
  await browser.see('.say', /How strong/);
  await browser.click('.actions .main');
  for (const [words, next] of [
    ['10 mL', /Which solvent/],
    ['ethanol 96', /food grade/],
    ['Food grade', /measure the solvent/],
    ['Syringe', /measure the material/],
    ['By drops', /Which dropper/],
    ['not weighed', /drops of cardamom/],
  ] as const) {
    await browser.click('label.choice', words);
    await browser.see('.say', next);
  }
  await browser.click('.actions .main');
  await browser.see('.say', /into the vial/);
  await browser.click('.actions .main');
}
