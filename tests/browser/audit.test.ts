import { afterAll, beforeAll, expect, test } from 'vitest';
import { inspector } from './audit/inspect';
import { outOfReach } from './audit/keyboard';
import { pagesOf } from './audit/pages';
import { paths } from './audit/paths';
import { settle } from './audit/settle';
import { stroll } from './audit/stroll';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let audit: ReturnType<typeof inspector>;

async function goTo(hash: string): Promise<void> {
  await phone.page.evaluate((hash) => (location.hash = hash), hash);
  await settle(phone.page).catch(() => audit.note(hash, 'page', ['stays busy']));
}

/** What the audit has found since it was last asked. */
function news(): string[] {
  return audit.found.splice(0);
}

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
  await phone.page.emulateMedia({ reducedMotion: 'reduce' });
  await phone.page.goto(site.url);
  audit = inspector(phone.page);
  await phone.page.locator('.tasks .card').first().waitFor();
  await goTo('#/shelf');
  await audit.inspect('Shelf, empty');
  await phone.page.getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await phone.page.locator('.demo-notice').waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

test.each(paths)('every step of $name can be held in one hand and read by everybody', async (path) => {
  if (path.begin) await path.begin(phone.page);
  else await goTo(`#/new/${path.task}`);
  await stroll(phone.page, path, audit);
  expect(news()).toEqual([]);
});

test('every page can be held in one hand and read by everybody', async () => {
  for (const [name, hash, prepare] of await pagesOf(phone.page)) {
    await goTo(hash);
    if (prepare) await prepare(phone.page);
    await audit.inspect(name);
  }
  expect(news()).toEqual([]);
});

test('by keys alone every control is reached, and options can be passed over', async () => {
  const { page } = phone;
  for (const hash of ['#/', '#/shelf', '#/book', '#/settings', '#/labels', '#/new/layer', '#/new/lookup']) {
    await goTo(hash);
    expect(await outOfReach(page), hash).toEqual([]);
  }
  await goTo('#/new/dilute');
  await page.locator('.run .say:focus').waitFor();
  await page.keyboard.press('Tab'); // back and the menu stand before; the first slot follows the sentence
  await page.locator('.slot[data-name=solvent]').focus();
  await page.keyboard.press('Enter');
  await page.locator('dialog[open]').waitFor();
  await page.keyboard.press('Escape');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.locator('.slot[data-name=solvent]:focus').waitFor(); // the focus is back at what opened it
  await page.keyboard.press('Enter');
  await page.locator('dialog[open] .sheet-row').first().focus();
  await page.keyboard.press('Enter');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.locator('.run .main').focus();
  await page.keyboard.press('Enter');
  await page.locator('.run .pad, .run .questions input, dialog[open]').first().waitFor(); // the next step, or what is missing
});

test('nothing complained', () => {
  expect(phone.complaints).toEqual([]);
  console.info(audit.seen.size, 'screens', audit.spent);
});
