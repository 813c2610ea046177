import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { material, pipette, vialOf } from '../tasks/count/countShelf';
import { codeTextOf, shortIdOf } from '../../src/records/kind/shortId';
import published from '../reference/scaleLines.json';
import { shelve } from './benchRecords';
import { countByHand } from './countByHand';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

const lines = published.lines as [string, { g?: number; stable?: boolean | null; refuse?: string } | null][];

const vial = vialOf('card', 0.01);
const other = vialOf('hex', 0.005);

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let page: Page;
let h: ReturnType<typeof hand>;
let cdp: CDPSession;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  page = phone.page;
  h = hand(page);
  await page.goto(site.url);
  await page.locator('.tasks .card').first().waitFor();
  await shelve(page, [material('card'), material('hex'), ...pipette, vial, other]);
  cdp = await phone.context.newCDPSession(page);
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** Types a line as a scale does that acts as a keyboard, with so many ms between keys. */
async function typeLine(line: string, delay: number, end = 'Enter'): Promise<void> {
  await page.keyboard.type(line, { delay });
  await page.keyboard.press(end);
}

const slowed = (rate: number) => cdp.send('Emulation.setCPUThrottlingRate', { rate });
const count = async () => Number(await page.locator('.pad .count').textContent());
const shows = (n: number) =>
  page.waitForFunction((n) => document.querySelector('.pad .count')?.textContent === String(n), n);

async function toThePad(drops: string): Promise<void> {
  await page.goto(`${site.url}#/new/count`);
  await countByHand(page, { CARD: drops });
  await h.done();
  await page.locator('.pad').waitFor();
}

declare global {
  var cableEnd: ReadableStreamDefaultController<Uint8Array>;
}

/** A cable in place of the one that no test machine has; all that reads it is the app's own. */
function makeUpCable(): void {
  const readable = new ReadableStream<Uint8Array>({ start: (end) => void (globalThis.cableEnd = end) });
  const port = { open: () => Promise.resolve(), readable };
  Object.defineProperty(navigator, 'serial', {
    value: { requestPort: () => Promise.resolve(port) },
    configurable: true,
  });
}

const send = (text: string) => page.evaluate((text) => cableEnd.enqueue(new TextEncoder().encode(text)), text);

describe('a scale that types at a pad', () => {
  beforeAll(() => toThePad('500'));

  test('counts nothing, at any speed and with a slowed processor, and is told of', async () => {
    for (const [delay, rate] of [
      [0, 1],
      [3, 1],
      [8, 1],
      [20, 1],
      [60, 1],
      [0, 6],
      [8, 6],
    ] as const) {
      await slowed(rate);
      for (const [line] of delay >= 20 ? lines.slice(0, 4) : lines) await typeLine(line, delay);
      await page.getByText('A scale is typing').waitFor();
      expect([delay, rate, await count()]).toEqual([delay, rate, 0]);
    }
    await slowed(1);
  });

  test('counts nothing after a touch either, which gives the pad no focus, and presses no button that was touched', async () => {
    await page.locator('.pad').tap();
    await shows(1);
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Undo' }).tap();
    await shows(0);
    await page.locator('.pad').tap();
    await shows(1);
    for (const [line] of lines) await typeLine(line, 0);
    expect(await count()).toBe(1);
    expect(await page.locator('.pad').isVisible()).toBe(true);
  });

  test('with the focus on the pad the blanks of its lines are taken back, and 200 of 200 presses of Space count', async () => {
    await page.locator('.pad').focus();
    for (const [line] of lines) await typeLine(line, 70);
    await shows(1);
    for (let i = 2; i <= 201; i++) {
      await page.waitForTimeout(65); // a hand is no faster
      await page.keyboard.press(i % 2 ? 'Space' : 'Enter');
      await shows(i);
    }
  });
});

describe('a hand-held reader of codes', () => {
  const code = (id: string) => codeTextOf(shortIdOf(id));

  test('checks the label at the pad, and counts nothing', async () => {
    await toThePad('20');
    await typeLine(code(vial.id), 0);
    await page.getByText('✓ It is CARD').waitFor();
    await typeLine(code(other.id), 0);
    await page.locator('.wrong-thing', { hasText: 'HEX' }).waitFor();
    await typeLine('M:ZZZZZZZZ', 0, 'Tab');
    await page.getByText('Nothing on this Shelf has that label.').waitFor();
    await typeLine(code(vial.id), 8);
    await page.locator('.pad').waitFor();
    expect(await count()).toBe(0);
  });

  test('opens what it read where a label is scanned, without a touch', async () => {
    for (const end of ['Enter', 'Tab']) {
      await page.goto(`${site.url}#/scan`);
      await page.locator('input[name=shortId]').waitFor();
      await typeLine('4006381333931', 0, end);
      await page.getByText('That is not a label of Minim.').waitFor();
      await typeLine(code(other.id), 0, end);
      await page.locator('.record', { hasText: 'HEX' }).waitFor();
    }
  });
});

describe('a foot switch', () => {
  test('that sends Space is asked for once, and then 200 of 200 presses count wherever the focus is', async () => {
    await toThePad('500');
    await page.keyboard.press('Space');
    await h.tap('Let Space count');
    for (let i = 1; i <= 200; i++) {
      await page.waitForTimeout(65);
      await page.keyboard.press('Space');
      await shows(i);
    }
  });

  test('that sends page keys counts, also while a scale types', async () => {
    await page.keyboard.press('PageDown');
    await shows(201);
    await page.keyboard.type('0.31');
    await page.waitForTimeout(65);
    await page.keyboard.press('PageDown');
    await shows(202);
    await page.keyboard.press('Enter');
    await page.keyboard.press('PageUp');
    await shows(201);
  });
});

describe('where a weight is wanted', () => {
  const box = (i: number) => page.locator(`input[name="mass.${i}"]`);
  const value = (i: number) => box(i).inputValue();

  beforeAll(async () => {
    await page.goto(`${site.url}#/new/calibrate`);
    await box(1).waitFor();
  });

  test('the first line of a scale is asked about, and then goes on with Undo', async () => {
    await typeLine('+    0.3124 g  ', 0);
    await page.getByText('0.3124 g, from the scale. Is that what it shows?').waitFor();
    await h.tap('Yes');
    await page.locator('.typed-notice', { hasText: '0.3124 g, from the scale.' }).waitFor();
    expect(await value(1)).toBe('0.3124');
    await page.waitForFunction(() => (document.activeElement as HTMLInputElement).name === 'mass.2');
    expect(await box(2).getAttribute('inputmode')).toBe('none');
  });

  test.each([0, 3, 8, 20, 60])('a line is whole at %d ms a key, also with a slowed processor', async (delay) => {
    for (const rate of [1, 6]) {
      await slowed(rate);
      const at = await page.locator('input[data-weighed]').count();
      await typeLine('+    0.3127 g  ', delay);
      await page.waitForFunction((name) => document.activeElement?.getAttribute('name') === name, `mass.${at + 1}`);
      expect(await value(at)).toBe('0.3127');
    }
    await slowed(1);
  });

  test('what is refused is told in one sentence, and nothing is lost', async () => {
    const at = await page.locator('input[data-weighed]').count();
    const before = await value(at - 1);
    await box(at - 1).focus();
    for (const [line, words] of [
      ['US,+000.3124  g', 'still moving'],
      ['OL', 'shows no weight (“OL”)'],
      ['12.5 oz', '“oz” is another unit'],
      ['-    0.0120 g  ', 'was the vial taken off?'],
      ['  0.3124 g', 'cut short'],
      ['+  900.0000 g  ', 'at most 100 g'],
    ] as const) {
      await typeLine(line, 0);
      await page.locator('.note.wrong', { hasText: words }).waitFor();
      expect([line, await value(at - 1)]).toEqual([line, before]);
    }
    expect(await page.locator('input[data-weighed]').count()).toBe(at);
  });

  test('Undo takes it back', async () => {
    const at = await page.locator('input[data-weighed]').count();
    await box(at).focus();
    await typeLine('+    0.3333 g  ', 0, 'Tab');
    await page.locator('.typed-notice', { hasText: '0.3333 g' }).waitFor();
    await h.tap('Undo');
    await page.waitForFunction(
      (name) => document.querySelector<HTMLInputElement>(`[name="${name}"]`)?.value === '',
      `mass.${at}`,
    );
  });

  test('forgets what was learnt of its lines', async () => {
    await page.goto(`${site.url}#/settings`);
    await h.tap('Forget the scale that types');
    await page.getByRole('button', { name: 'Forget the scale that types' }).waitFor({ state: 'detached' });
  });

  test('a cable brings the same lines; only the cable itself is made up', async () => {
    await page.evaluate(makeUpCable);
    await page.goto(`${site.url}#/`);
    await page.goto(`${site.url}#/settings`);
    await h.tap('Connect a scale by cable');
    await page.getByText('Connected: its weights go').waitFor();
    await page.goto(`${site.url}#/new/calibrate`);
    await box(1).waitFor();
    await send('US,+000.31');
    await send('24  g\r\nST,+000.3124  g\r');
    await page.getByText('0.3124 g, from the scale. Is that what it shows?').waitFor();
    await h.tap('Yes');
    await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'mass.2');
    await send('\nST,+000.3199  g\r\n');
    await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'mass.3');
    expect([await value(1), await value(2)]).toEqual(['0.3124', '0.3199']);
    await toThePad('20');
    await send('ST,+000.3199  g\r\n');
    await page.getByText('Take its weight where one is needed').waitFor();
    expect(await count()).toBe(0);
  });

  test('nothing complained', () => expect(phone.complaints).toEqual([]));
});
