import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, onTestFailed, test } from 'vitest';
import { addFirstBottle } from './firstBottle';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let h: ReturnType<typeof hand>;

/** From now on the page counts taps of the finger and keys typed. */
function counting(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const count = (name: string) => (sessionStorage[name] = String(Number(sessionStorage[name] ?? 0) + 1));
    addEventListener('pointerdown', () => count('taps'), true);
    addEventListener('keydown', () => count('keys'), true);
  });
}

/** Taps of the finger and keys typed since the last look. */
async function counted(page: Page): Promise<{ taps: number; keys: number }> {
  return page.evaluate(() => {
    const seen = { taps: Number(sessionStorage['taps'] ?? 0), keys: Number(sessionStorage['keys'] ?? 0) };
    sessionStorage['taps'] = sessionStorage['keys'] = '0';
    return seen;
  });
}

/** Taps and keys as README.md states them after these words, and how many of the taps are drops. */
function stated(words: string): Record<string, number> {
  const [sentence] = new RegExp(`${words}[^.]*`).exec(readFileSync('README.md', 'utf8'))!;
  return Object.fromEntries([...sentence.matchAll(/(\d+) (taps|keys|drops)/g)].map(([, n, what]) => [what, Number(n)]));
}

/** Narrows the Book down to one task. */
async function narrowTo(task: string): Promise<void> {
  await page().locator('.filters .pick', { hasText: 'Task' }).tap();
  await page().locator('dialog[open] .sheet-row', { hasText: task }).tap();
}

/** A litre of ethanol onto the Shelf. */
async function addSpirit(grade: string, lot: string): Promise<void> {
  await open('shelf', '.shelf .list');
  await h.tap('Add solvents and supplies');
  await h.tap('ethanol 96');
  await h.slot('grade.ethanol-96', grade);
  await h.slot('lot.ethanol-96', lot);
  await h.finish();
}

/** The words of the entries on the page, top to bottom. */
const entries = () => phone.page.locator('.entry').allTextContents();
const page = () => phone.page;

async function open(hash: string, waitFor: string): Promise<void> {
  await page().goto(`${site.url}#/${hash}`);
  await page().locator(waitFor).first().waitFor();
}

/** Opens the record of the Shelf whose entry says this. */
async function openRecord(query: string, words: string): Promise<void> {
  await open('shelf', '.search-box input');
  await page().locator('.search-box input').fill(query);
  await page().locator('.entry', { hasText: words }).first().tap();
  await page().locator('.record').waitFor();
}

/** Opens the material of the bottle that is found so. */
async function openMaterial(query: string): Promise<void> {
  await openRecord(query, 'Bottle');
  await page().locator('.entry', { hasText: 'About ' }).tap();
  await page().locator('.thing-code', { hasText: /^\w+$/ }).waitFor();
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url, width: 360, height: 740 });
  await counting(page());
  await page().goto(site.url);
  await page().evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page().reload();
  await page().locator('.tasks .card').first().waitFor();
  await phone.context.setOffline(true); // from here on there is no network at all
  h = hand(page());
});

beforeEach((context) => {
  onTestFailed(async () => {
    await page().screenshot({ path: `tests/output/shelf ${context.task.name.slice(0, 40)}.png` });
  });
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('the first bottle', () => {
  test('is on the Shelf after 12 taps and keys at most, counted from the empty Shelf, without a network', async () => {
    await h.tab('Shelf');
    await page().locator('.first-run').waitFor();
    expect(
      await page()
        .locator('.first-run')
        .evaluate((it) => it.scrollHeight <= innerHeight + 1),
    ).toBe(true);
    await counted(page());
    await addFirstBottle(page());
    const first = await counted(page());
    expect(first.taps + first.keys).toBeLessThanOrEqual(12);
    expect(first).toEqual(stated('first bottle'));
  });

  test('knows CAS, density with its source, and until when it keeps', async () => {
    const facts = await page().locator('.record .facts').allTextContents();
    expect(facts.join()).toContain('0.926 ± 0.009 g/mL');
    expect(facts.join()).toContain('ISO 4733:1981');
    expect(facts.join()).toContain('Use by');
    await openMaterial('8000-66-6');
    expect((await page().locator('.facts').allTextContents()).join()).toContain('8000-66-6');
  });

  test('a second lot of it is two taps away and stands beside the first', async () => {
    await openMaterial('8000-66-6');
    await h.tap('Add a bottle');
    await h.sees('cardamom oil');
    await h.slot('new.supplier', 'Pebblewick Oils');
    await h.slot('new.lot', 'C-2208');
    await h.slot('new.amount', '5');
    await h.slot('new.grade', 'food grade');
    await h.finish();
    await page().locator('.lots').waitFor();
    await expect.poll(() => page().locator('.lots thead th').count()).toBe(2);
    expect(await page().locator('.lots').textContent()).toContain('Pebblewick Oils');
  });
});

describe('a bottle on the Shelf', () => {
  test('is corrected by weighing it, with the empty glass kept for next time', async () => {
    await h.more('Weigh what is left');
    await h.type('gross', '19,3');
    await h.type('empty', '14.8');
    await page().locator('[role=status]', { hasText: '4.5' }).waitFor();
    await page().locator('.main').tap();
    await page().locator('.record .left', { hasText: '4.5' }).waitFor();
    await h.more('Weigh what is left');
    await expect.poll(() => page().locator('[name=empty]').inputValue()).toBe('14.8');
    await h.type('gross', '10');
    await page().locator('.trouble', { hasText: 'less than nothing' }).waitFor(); // the glass weighs more than all
    await page().goBack();
  });

  test('gets a place, and is found by it', async () => {
    await h.more('Change');
    await h.type('box', 'Q');
    await h.type('row', '4');
    await page().locator('.main').tap();
    await page().locator('.thing-words', { hasText: 'Box Q, row 4' }).waitFor();
  });

  test('a mistyped amount gets one sentence and nothing is lost', async () => {
    await h.more('Change');
    await h.type('lot', 'C-2209');
    await h.type('amountG', 'five');
    await page().locator('.main').tap();
    await page().locator('.note.wrong', { hasText: 'not a number' }).waitFor();
    expect(await page().locator('[name=lot]').inputValue()).toBe('C-2209');
    await page().goBack();
    await page().locator('.record').waitFor();
  });

  test('its material is given an odour threshold by hand', async () => {
    await openMaterial('8000-66-6');
    await h.more('Change');
    await h.tap('Add an odour threshold');
    await h.type('thresholds.0.low', '0,4');
    await h.type('thresholds.0.medium', 'air');
    await page().locator('.field', { hasText: 'Smelled from' }).filter({ hasText: 'mg/m³' }).waitFor();
    await page().locator('.main').tap();
    await page()
      .locator('.facts', { hasText: /Threshold in air0.4 mg\/m³.*as typed/ })
      .waitFor();
    await openRecord('C-2208', 'Bottle');
  });

  test('goes onto the shopping list and off it', async () => {
    await h.more('Put on the shopping list');
    await page().locator('dialog').waitFor({ state: 'detached' });
    await open('shelf', '.watch');
    await page().locator('.watch button', { hasText: 'running low' }).tap();
    await page().locator('.bought', { hasText: 'Pebblewick Oils' }).waitFor();
    await page().locator('.bought button', { hasText: 'Take off' }).tap();
    await page().getByText('Enough of everything').waitFor();
  });

  test('is put away and brought back, never erased', async () => {
    await openRecord('C-2208', 'C-2208');
    await h.more('Archive');
    await page().getByText('hidden, not deleted').waitFor();
    await open('shelf', '.shelf .list');
    expect((await entries()).some((words) => words.includes('C-2208'))).toBe(false);
    await page().locator('button', { hasText: 'Archived (1)' }).tap();
    await page().locator('.entry', { hasText: 'C-2208' }).tap();
    await h.tap('Restore from archive');
    await page().getByText('hidden, not deleted').waitFor({ state: 'detached' });
    await open('shelf/bottle', '.shelf .list');
    await page().locator('.entry', { hasText: 'C-2208' }).waitFor();
  });

  test('is found misspelled, and the catalogue answers beside it', async () => {
    await open('shelf', '.search-box input');
    await page().locator('.search-box input').fill('cardemom');
    await page().locator('h2', { hasText: 'In the catalogue' }).waitFor();
    expect((await entries())[0]).toContain('cardamom oil');
    await page().locator('.search-box input').fill('vanilin');
    await page().locator('.entry', { hasText: 'vanillin' }).first().tap();
    await page().locator('.facts', { hasText: '121-33-5' }).waitFor();
    await page().locator('.facts', { hasText: 'Melts at' }).waitFor();
    await page().goBack();
    await expect.poll(() => page().locator('.search-box input').inputValue()).toBe('vanilin');
    await page().locator('.search-box input').fill('');
  });
});

describe('the demo', () => {
  test('opens from the empty Shelf of another phone, is marked, and goes in one tap', async () => {
    const other = newProfile();
    const guest = await openPhone(other.dir, { home: site.url, dark: true });
    await guest.page.goto(`${site.url}#/shelf`);
    await guest.page.getByRole('button', { name: 'Look around' }).tap();
    await guest.page.locator('.demo-notice').waitFor();
    await guest.page.getByText('Add solvents and supplies').waitFor();
    await guest.page.locator('.entry', { hasText: 'TIDE' }).first().waitFor();
    await guest.page.waitForFunction(() => document.querySelectorAll('.kinds .pick').length >= 5);
    const shown = await guest.page.locator('.shelf-entry').allTextContents();
    expect(shown.every((words) => words.includes('demo'))).toBe(true);
    await guest.page.goto(`${site.url}#/book`);
    await guest.page.locator('.page-of-book').nth(15).waitFor();
    await guest.page.getByRole('button', { name: 'Remove the demo' }).tap();
    await guest.page.getByText('is written down here').waitFor();
    await guest.page.reload();
    await guest.page.goto(`${site.url}#/shelf`);
    await guest.page.locator('.first-run').waitFor();
    expect(guest.complaints).toEqual([]);
    await guest.context.close();
    other.forget();
  });
});

describe('trace, make again and the Book', () => {
  beforeAll(async () => {
    await addSpirit('smell only', 'E-4001');
    await addSpirit('food grade', 'E-5512');
    await openRecord('C-2208', 'Bottle');
    await h.tap('Dilute it');
    await h.slot('solvent', 'lot E-5512'); // its label was read already: nothing is asked about it
    await h.slot('dropper', 'On a scale');
    expect(await page().locator('.slot[data-name=food]').count()).toBe(0);
    await h.tap('In one step all the same'); // 0.1 g is little for such a scale
    await page().locator('.actions .main', { hasText: /^Pour/ }).tap();
    await h.type('material.g', '0.081');
    await page().locator('.actions .main').tap();
    await page().locator('.record').waitFor();
  });

  test('a vial leads back to its lot, in a picture with words and in a list', async () => {
    await h.more('Trace');
    const picture = page().locator('.lineage svg[role=img]');
    await expect.poll(() => picture.getAttribute('aria-label')).toContain('3 in it, 0 led to it');
    expect(await page().locator('.lineage .box').count()).toBe(4);
    expect((await entries()).join()).toMatch(/lot C-2208.*lot E-5512/);
    await page().locator('.entry', { hasText: 'lot C-2208' }).tap();
    await page().locator('.record').waitFor();
    await h.more('Trace');
    await page().locator('h2', { hasText: 'It is in' }).waitFor();
    expect((await entries()).some((words) => words.includes('Vial') && /81(\.\d+)?( ± [\d.]+)? mg/.test(words))).toBe(
      true,
    );
    expect(await page().locator('.lineage figcaption').textContent()).toContain('dashed: led to it, and is not in it');
  });

  test('what is left of the bottle follows the vial', async () => {
    await openRecord('E-5512', 'ethanol 96');
    await page().locator('.record .left', { hasText: '799' }).waitFor(); // 807 g less 9.4 mL of 0.807 g/mL
    const lots = await page().locator('.lots table').allInnerTexts();
    expect(lots.join()).toMatch(/E-5512\s*E-4001[^]*Grade\s*fit for drinks\s*smell only[^]*Left\s*799.* g\s*807.* g/);
    await openRecord('C-2208', 'Bottle');
    await page().locator('.record .left', { hasText: '4.4' }).waitFor(); // 4.5 g weighed, 0.08 g taken
  });

  test('made again with the lot put away, it takes the other one and says what is different', async () => {
    await h.more('Archive');
    await page().getByText('not deleted').waitFor();
    await openRecord('ethanol', 'Vial');
    await h.tap('Make exactly this');
    await page().locator('.differences', { hasText: 'CARD neat lot C-2208 is archived' }).waitFor();
    await page().locator('.main', { hasText: 'Begin' }).tap();
    await h.sees('of ethanol 96 % vol'); // the same amounts: nothing is asked or planned
    await h.sees('Weigh in 0.08 g of CARD neat');
  });

  test('the Book is narrowed down by task and by words, and saved as a table', async () => {
    await open('book', '.page-of-book');
    const all = await page().locator('.page-of-book').count();
    const fewer = () =>
      page().waitForFunction((before) => document.querySelectorAll('.page-of-book').length < before, all);
    await narrowTo('Dilute');
    await fewer();
    await page().locator('.filters .pick', { hasText: 'Dilute' }).tap(); // takes it off
    await page().locator('.filters .pick', { hasText: 'Task' }).waitFor();
    await page().locator('.search-box input').fill('C-2208');
    await fewer();
    const download = page().waitForEvent('download');
    await page().locator('button', { hasText: 'as a table' }).tap();
    const text = readFileSync((await (await download).path())!, 'utf8');
    expect(text.startsWith('\uFEFFended (UTC),task,run')).toBe(true);
    expect(text).toContain('C-2208');
  });

  test('any record goes on paper without its buttons', async () => {
    await openRecord('C-2208', 'Bottle');
    await h.more('Print or CSV');
    await page().locator('.paper').waitFor();
    await page().emulateMedia({ media: 'print' });
    expect(await page().locator('.paper .actions').isVisible()).toBe(false);
    expect(await page().locator('.paper .facts').first().isVisible()).toBe(true);
    await page().emulateMedia({ media: 'screen' });
    const download = page().waitForEvent('download');
    await page().locator('button', { hasText: 'CSV' }).tap();
    expect(readFileSync((await (await download).path())!, 'utf8')).toContain('Bottle,cardamom oil');
  });

  test('so does a run of the Book, with every step that was done', async () => {
    await open('book', '.page-of-book');
    await narrowTo('Dilute');
    await page().locator('.search-box input').fill('cardamom');
    await page().locator('.page-of-book', { hasText: 'cardamom oil' }).first().locator('.open').tap();
    await page().locator('summary', { hasText: 'How it was made' }).tap();
    await h.tap('Print these steps');
    const run = /record\/([^/]+)\/paper/.exec(page().url())![1]!;
    await open(`record/${run}`, '.record .story');
    await h.more('Trace'); // of what it ended in
    await page().locator('.lineage svg[aria-label*="3 in it"]').waitFor();
    await page().goBack();
    await h.more('Print or CSV');
    await page().emulateMedia({ media: 'print' });
    await page().locator('.paper .story li').first().waitFor();
    const steps = await page().locator('.paper .story li').allTextContents();
    expect(steps.join()).toMatch(/CARD neat to 1 % w\/v in a 10 mL vial of ethanol 96 % vol/);
    await page().emulateMedia({ media: 'screen' });
    const download = page().waitForEvent('download');
    await page().locator('button', { hasText: 'CSV' }).tap();
    const rows = readFileSync((await (await download).path())!, 'utf8').split('\r\n');
    expect(rows.join('\n')).toContain('CARD neat to 1 % w/v in a 10 mL vial of ethanol 96 % vol');
    expect(rows.filter((row) => /^\d{4}-\d\d-\d\dT/.test(row)).length).toBeGreaterThanOrEqual(steps.length);
  });

  test('nothing complained, and no other host was asked', () => {
    expect(phone.complaints).toEqual([]);
  });
});
