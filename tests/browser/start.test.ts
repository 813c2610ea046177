import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { newRecord } from '../../src/records/shelf';
import { shelve } from './benchRecords';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
const profile = newProfile();
let phone: Phone;

beforeAll(async () => {
  site = await serve();
  phone = await openPhone(profile.dir, { home: site.url, width: 360, height: 740 });
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** Notes each place at which the tasks stand, and whether their elements are those of the page. */
function watchTasks(page: Page) {
  return page.addInitScript(() => {
    const seen = Object.assign(window as never as { tops: Set<number>; painted: Element | null }, { tops: new Set() });
    const look = () => {
      const tasks = document.querySelector('.tasks');
      seen.painted ??= tasks && tasks.querySelector('.card');
      if (tasks) seen.tops.add(Math.round(tasks.getBoundingClientRect().top));
    };
    new MutationObserver(look).observe(document, { childList: true, subtree: true });
    const frame = () => {
      look();
      requestAnimationFrame(frame);
    };
    frame();
  });
}

test('a task tapped before the app has begun is opened by it, and no Bench stays beside it', async () => {
  const page = await phone.context.newPage();
  let begin = () => {};
  const held = new Promise<void>((resolve) => (begin = resolve));
  await page.route('**/assets/*.js', (route) => held.then(() => route.continue()));
  await page.goto(site.url, { waitUntil: 'commit' });
  await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
  begin();
  await page.locator('.run .sentence').waitFor();
  expect(await page.locator('.tasks').count()).toBe(0);
  expect(await page.locator('main').count()).toBe(1);
  await page.close();
});

test('the tasks stay where they were painted while the app begins and what is paused comes above them', async () => {
  const { page } = phone;
  await page.goto(site.url);
  const paused = ['A', 'B'].map((name) =>
    newRecord('run', { task: 'dilute', open: 1, kept: [], title: `Dilute ${name}` }),
  );
  await shelve(page, paused);
  await page.locator('.paused').nth(1).waitFor();
  await page.waitForFunction(() => Number(localStorage.getItem('minim-news')) > 100); // px
  await watchTasks(page);
  await page.reload();
  await page.locator('.paused', { hasText: 'Paused at step 1' }).nth(1).waitFor();
  await page.getByRole('button', { name: 'Settings' }).waitFor();
  expect(await page.evaluate(() => [...(window as never as { tops: Set<number> }).tops])).toHaveLength(1);
  expect(
    await page.evaluate(
      () => document.querySelector('.tasks .card') === (window as never as { painted: Element }).painted,
    ),
  ).toBe(true);
  await page.waitForTimeout(1600); // what stands above has been measured
  await hand(page).tab('Shelf');
  await page.locator('.first-run, .search-box').first().waitFor();
  await hand(page).tab('Bench');
  await page.locator('.paused').nth(1).waitFor();
  expect(phone.complaints).toEqual([]);
});

test('a touch that comes twice leaves one step, not two', async () => {
  const { page } = phone;
  const h = hand(page);
  await page.goto(site.url);
  await h.task('Dilute');
  await h.slot('bottle', 'A new bottle');
  await h.done();
  await h.type('new.name', 'cardamom oil');
  await page.waitForTimeout(300); // all that was typed is stored
  await page.evaluate(() => {
    const main = document.querySelector<HTMLElement>('.run .actions .aside')!;
    main.click();
    setTimeout(() => main.click()); // the first one is on its way to the disk
  });
  await h.sees(/^cardamom oil, CARD/);
  await page.waitForTimeout(300); // a second step would be left by then
  await h.sees(/^cardamom oil, CARD/);
});

test('a finger that answers each step as soon as it is there is not sent back', async () => {
  const { page } = phone;
  await page.goto(site.url);
  await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
  await hand(page).slot('bottle', 'A new bottle');
  await hand(page).done();
  await hand(page).type('new.name', 'cardamom oil');
  await hand(page).done();
  await hand(page).slot('new.grade', 'food grade');
  await page.waitForTimeout(500);
  await page.evaluate(() => {
    window.requestAnimationFrame = (then) => Number(setTimeout(then, 300, 0)); // frames are late on a busy phone
    const steps = ((window as never as { steps: string[] }).steps = []);
    let last = ''; // what was answered: a sentence that changes under an open sheet is answered anew
    const answer = () => {
      const step = location.hash.split('/')[3] ?? '';
      if (step && (steps as string[]).at(-1) !== step) (steps as string[]).push(step);
      const say = document.querySelector('.run .say')?.textContent ?? '';
      const sheet = document.querySelector('dialog[open]')?.getAttribute('aria-label') ?? '';
      if (say === '' || last === say + sheet || document.querySelector('.pad')) return;
      last = say + sheet;
      tap();
    };
    const tap = () => {
      const wanted = /ethanol 96|Food grade/;
      const offered = document.querySelectorAll<HTMLElement>('.run label.choice, dialog[open] .sheet-row');
      const choice = [...offered].find((one) => wanted.test(one.textContent!));
      const main = document.querySelector('dialog') ? null : document.querySelector<HTMLElement>('.run .main'); // what is behind a sheet cannot be touched
      setTimeout(() => (choice ?? main)?.click());
    };
    // A tap that came while the one before was on its way is none: whoever sees nothing happen taps again.
    setInterval(() => document.querySelector('.pad') ?? tap(), 3000);
    new MutationObserver(answer).observe(document.body, { childList: true, subtree: true, characterData: true });
    document.querySelector<HTMLElement>('.run .main')!.click();
  });
  await page
    .locator('.pad')
    .waitFor()
    .catch(() => {});
  const seen = await page.evaluate(() => (window as never as { steps: string[] }).steps);
  expect(seen.filter((say, i) => seen.indexOf(say) !== i)).toEqual([]);
  expect(await page.locator('.pad').count()).toBe(1);
});
