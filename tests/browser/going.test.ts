import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { material, pipette, vialOf } from '../tasks/count/countShelf';
import { shelve } from './benchRecords';
import { countByHand } from './countByHand';
import { nameBottle } from './firstBottle';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
const profile = newProfile();
let phone: Phone;
let h: ReturnType<typeof hand>;
const at = (selector: string, hasText?: string | RegExp) =>
  phone.page.locator(selector, hasText === undefined ? {} : { hasText }).first();
const onBench = () => at('.tasks .card').waitFor();
const onShelf = () => at('.page.shelf').waitFor();
const paused = () => phone.page.locator('.paused');

beforeAll(async () => {
  site = await serve();
  phone = await openPhone(profile.dir, { home: site.url });
  h = hand(phone.page);
  await phone.page.goto(site.url);
  await onBench();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

describe('an empty Bench', () => {
  test('shows the way, and keeps the tasks where they were painted', async () => {
    const { page } = phone;
    const top = () => page.evaluate(() => document.querySelector('.tasks')!.getBoundingClientRect().top);
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    await at('.first-way .next', 'Add a bottle').waitFor();
    const painted = await top();
    await page.waitForTimeout(1700); // what stands above has been measured
    expect(Math.abs((await top()) - painted)).toBeLessThan(8); // px
    await at('.first-way .next button').tap();
    await h.sees('What is in the bottle?');
    await h.wayBack();
    await at('.first-way').waitFor();
    expect(await paused().count()).toBe(0); // nothing happened in it
  });
});

describe('the way back', () => {
  test('goes a step at a time, pauses, and leads to where the run was started', async () => {
    const { page } = phone;
    await shelve(page, [
      material('card'),
      material('hex'),
      ...pipette,
      vialOf('card', 0.01),
      { ...vialOf('hex', 0.005), made: '2026-05-04T10:00:00Z' },
    ]);
    await onBench();
    await h.tab('Shelf');
    await page.getByRole('button', { name: 'Add a bottle' }).tap();
    await h.sees('What is in the bottle?');
    await at('input[name="new.name"]:focus').waitFor();
    await h.type('new.name', 'quux base'); // nothing is found: Enter takes it as a material of one’s own
    await page.keyboard.press('Enter');
    await at('.task-card').waitFor();
    await page.reload();
    await at('.task-card').waitFor();
    await h.wayBack();
    await h.sees('What is in the bottle?');
    await page.goForward();
    await at('.task-card').waitFor();
    await page.goBack(); // the phone's own
    await h.sees('What is in the bottle?');
    await h.wayBack();
    await onShelf();
  });

  test('of a run that was opened from the Bench leads through its steps to the Bench', async () => {
    const { page } = phone;
    await h.tab('Bench');
    await h.tap('Resume');
    await h.sees('What is in the bottle?');
    await at('input[name="new.name"]:focus').waitFor();
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press('Enter'); // beside all controls
    await at('.task-card').waitFor();
    await h.pause();
    await h.tap('Resume');
    await at('.task-card').waitFor();
    await page.keyboard.press('Escape');
    await h.sees('What is in the bottle?');
    await h.wayBack();
    await at('.paused', 'Add a bottle · quux base').waitFor();
  });

  test('of what a run made leads past its steps', async () => {
    await h.tab('Shelf');
    await onShelf();
    await phone.page.getByRole('button', { name: 'Add a bottle' }).tap();
    await h.sees('What is in the bottle?');
    await nameBottle(phone.page, 'clov', 'clove');
    await at('.task-card').waitFor();
    await h.slot('new.grade', 'smell only');
    await h.finish();
    await at('.record', 'clove').waitFor();
    await h.wayBack();
    await onShelf();
    await h.tab('Bench');
  });

  test('of every page is Escape too; a sheet goes alone', async () => {
    const { page } = phone;
    await page.getByRole('button', { name: 'Settings' }).tap();
    await at('.settings').waitFor();
    await page.keyboard.press('Escape');
    await onBench();
    await h.task('Calibrate drops');
    await at('.slot[data-name=readability]').tap();
    await at('dialog[open]').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
    await at('.run .sentence').waitFor();
    await h.wayBack();
    await onBench();
  });
});

describe('a discarded run', () => {
  test('leaves the Bench by one touch, comes back by one, and moves nothing', async () => {
    await at('.paused', 'quux base').waitFor();
    await phone.page.getByRole('button', { name: /^Discard/ }).tap();
    await at('.paused', 'Discarded').waitFor();
    await h.tap('Undo');
    await at('.paused', /Paused at step 1 .*/).waitFor();
  });

  test('is in the Book, and goes on from there', async () => {
    const { page } = phone;
    await h.tap('Resume');
    await h.sees('What is in the bottle?');
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await at('dialog[open] .sheet-row', 'Discard').tap();
    await onBench();
    expect(await paused().count()).toBe(0);
    await page.reload();
    await onBench();
    expect(await paused().count()).toBe(0);
    await h.tab('Book');
    await at('.page-of-book', 'Discarded').getByRole('button', { name: /^Open/ }).tap();
    await at('.record', 'quux base').waitFor();
    await h.tap('Resume');
    await h.sees('What is in the bottle?');
    await h.wayBack();
    await at('.page.book').waitFor();
    await h.tab('Bench');
    await at('.paused', 'quux base').waitFor();
  });
});

describe('the pad', () => {
  test('offers help for wet hands once', async () => {
    const { page } = phone;
    await h.task('Count drops');
    await countByHand(page, { CARD: '3' });
    await h.slot('dropper', 'Pipette 1');
    await h.done();
    await at('.pad').waitFor();
    await page.getByRole('button', { name: /^Wet hands\?/ }).tap();
    await page.getByRole('switch', { name: /Tick at each drop/ }).tap();
    await page.getByRole('switch', { name: /Tick at each drop/, checked: true }).waitFor();
    await page.getByRole('button', { name: 'Close' }).tap();
    await page.locator('dialog').waitFor({ state: 'detached' });
    expect(await page.locator('.hands-offer').count()).toBe(0);
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    await page.getByRole('switch', { name: /Tick at each drop/, checked: true }).tap();
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
    expect(await page.locator('.hands-offer').count()).toBe(0);
  });

  test('has what takes back and what ends at a distance, asleep for a moment after a drop', async () => {
    const { page } = phone;
    const [pad, undo] = await Promise.all([at('.pad').boundingBox(), at('.actions .second').boundingBox()]);
    expect(undo!.y - pad!.y - pad!.height).toBeGreaterThanOrEqual(32); // px
    await h.drops(2);
    await at('.pad').tap();
    await page.waitForFunction(() => document.querySelector('.pad .count')?.textContent === '3');
    await at('.actions .second').tap(); // a finger that still counts
    await at('.actions .main').tap();
    await page.waitForTimeout(300);
    expect(await h.count()).toBe(3);
    await h.drops(1);
    await at('.pad.over', '1 too many').waitFor();
    await at('.actions .second').tap();
    await page.waitForFunction(() => document.querySelector('.pad .count')?.textContent === '3');
  });

  test('is legible at arm’s length', async () => {
    const sizes = await phone.page.evaluate(() =>
      ['.pad .count', '.counting .say'].map((one) =>
        parseFloat(getComputedStyle(document.querySelector(one)!).fontSize),
      ),
    );
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(28); // px
  });

  test('nothing complained', () => expect(phone.complaints).toEqual([]));
});
