import { afterAll, beforeAll, describe, expect, onTestFailed, test } from 'vitest';
import { hand } from './hand';
import { openBench, type OpenBench } from './openBench';
import type { Phone } from './phone';

let opened: OpenBench;
let phone: Phone;
let h: ReturnType<typeof hand>;
const at = (selector: string, words?: string | RegExp) =>
  phone.page.locator(selector, words === undefined ? {} : { hasText: words });
const bench = async () => {
  await phone.page.goto(`${opened.url}#/`);
  await at('.tasks .card').first().waitFor();
};

beforeAll(async () => {
  opened = await openBench({
    before: (page) =>
      page.addInitScript(() => {
        window.print = () => void (sessionStorage['printed'] = 'yes');
      }),
  });
  ({ phone } = opened);
  h = hand(phone.page);
});

afterAll(() => opened.close());

/** A dilution of what the card opens with, by 4 drops or by weight, to its record. */
async function diluted(slots: Readonly<Record<string, string>>, work: () => Promise<unknown>): Promise<void> {
  await bench();
  await h.task('Dilute');
  await at('.sentence').waitFor();
  for (const [name, words] of Object.entries(slots)) await h.slot(name, words);
  await at('.run .main:not([aria-haspopup])').tap();
  await work();
  await at('.actions .main').tap();
  await at('.record, .run .say:has-text("It came out")').first().waitFor();
  if ((await at('.record').count()) === 0) await at('.actions .main').tap();
  await at('.record').waitFor();
}

describe('from an empty profile', () => {
  test('the hit below a name is the next tap, Enter takes it, and a material of one’s own is the other way', async () => {
    onTestFailed(async () => void (await phone.page.screenshot({ path: 'tests/output/newcomer.png' })));
    await at('.first-way button', 'Add a bottle').tap();
    await h.type('new.name', 'limon');
    await at('.first-match', 'd-limonene').waitFor();
    await at('.actions .second', 'Own material “limon”').waitFor();
    expect(await at('.actions .main').count()).toBe(0);
    await phone.page.keyboard.press('Enter');
    await at('.card-answer', 'd-limonene').waitFor();
  });

  test('a sheet to type in has the focus in its field, and its title once', async () => {
    await at('.slot[data-name="new.lot"]').tap();
    await at('dialog[open] input[name="new.lot"]:focus').waitFor();
    const seen = await at('dialog[open]').evaluate(
      (sheet) =>
        [...sheet.querySelectorAll('h2, .title')].filter((one) => one.getBoundingClientRect().width > 1).length,
    );
    expect(seen).toBe(1);
    await phone.page.keyboard.type('L-7');
    await phone.page.keyboard.press('Enter');
    await at('dialog[open]').waitFor({ state: 'detached' });
    await at('.slot[data-name="new.lot"]', 'L-7').waitFor();
    await h.slot('new.grade', 'food grade');
    await h.finish();
  });

  test('what is a solvent leads to the supplies, and leaves no run behind', async () => {
    await bench();
    await at('.first-way .past button', 'Add a bottle').tap();
    await h.type('new.name', 'glycerol');
    await at('.first-match', 'a solvent').tap();
    await at('.advice', 'This is a solvent').waitFor();
    await at('.actions button', 'Add it as a solvent').tap();
    await at('.run', 'Came from').waitFor();
    await at('.run', 'Say the grade of glycerol').waitFor();
    await bench();
    await at('.tasks .card', 'LIMO neat to 1 %').waitFor(); // the tile says what the card opens with
    expect(await at('.paused', 'Add a bottle').count()).toBe(0);
  });

  test('a vial waits on the Bench for its label: printed, or written by hand', async () => {
    await diluted({ solvent: 'ethanol 96', food: 'Food grade' }, () => h.drops(4));
    await bench();
    await at('.labels-waiting', '1 label not printed').waitFor();
    await h.tap('Written by hand');
    await at('.labels-waiting', '1 label is written').waitFor();
    await at('.labels-waiting button', 'Undo').tap();
    await at('.labels-waiting', '1 label not printed').waitFor();
    await h.tap('Print label');
    await at('.actions .main', 'Print 1 label').tap();
    expect(await phone.page.evaluate(() => sessionStorage['printed'])).toBe('yes');
    await phone.page.reload(); // it is stored
    await bench();
    await at('.first-way .next', 'Dip a strip').waitFor(); // the way stays until one is dipped
    await expect.poll(() => at('.labels-waiting').count()).toBe(0);
  });

  test('a second vial of the day is proposed its own code; what is weighed has its field focused', async () => {
    await diluted({ strength: '5', dropper: 'On a scale', food: 'Food grade' }, async () => {
      await at('.run .questions input:focus').waitFor();
      expect(await at('.run .questions input').getAttribute('inputmode')).toBe('decimal');
      await phone.page.keyboard.type(/Weigh in ([\d.]+) g/.exec((await at('.say').textContent())!)![1]!);
    });
    await bench();
    await h.task('Dilute');
    await h.slot('food', 'Food grade');
    await at('.slot[data-name="vial.code"]', 'LIMOB').waitFor();
    await at('.run', /a code means one vial: this one is LIMOB 5 %/).waitFor();
    await at('.answer-row svg', 'LIMOB').waitFor();
  });
});
