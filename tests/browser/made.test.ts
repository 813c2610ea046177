import { afterAll, beforeAll, expect, test } from 'vitest';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url });
});
afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

const page = () => phone.page;
const button = (words: string) => page().getByRole('button', { name: words, exact: true }).first();
const said = (words: RegExp) => page().getByText(words).first().waitFor();

/** Saves the form and is back on the page of the batch. */
async function save(): Promise<void> {
  await button('Save').tap();
  await page().getByRole('heading', { name: 'Trials that last' }).waitFor();
}

test('a batch is measured, corrected, filled, put aside and tried, and what is due is on the Bench', async () => {
  await page().goto(`${site.url}#/shelf`);
  await page().getByRole('button', { name: 'Look around a made-up workshop' }).tap();
  await page().locator('.demo-notice').waitFor({ timeout: 60_000 });
  await page().goto(`${site.url}#/book`);
  await page().locator('button.open', { hasText: 'first 20 L' }).tap();
  await page().locator('.figures button', { hasText: 'Sugar' }).filter({ hasText: 'by weighing' }).tap();
  await page().getByRole('textbox', { name: 'It shows' }).fill('8.4');
  await said(/8\.21 ± 0\.20 °Brix: 0\.19 of what it shows is acid and alcohol/);
  await save();
  await said(/Add 3500 ± 600 g of water: 8\.21 to 7\.00 °Brix\./);
  await button('Correct it').tap();
  await page().getByRole('textbox', { name: 'Added: water' }).fill('3500');
  await save();
  await said(/added 3500 g of water/);
  await page().getByRole('heading', { name: '4. Correction' }).waitFor();
  await button('Fill bottles').tap();
  await page().getByRole('textbox', { name: 'Bottles filled' }).fill('48');
  await said(/B1-001 to B1-048: 15\.84 L/);
  await save();
  await button('Put some aside').tap();
  await save();
  await said(/Put aside: B1-047 to B1-048/);
  await button('Begin a trial').tap();
  await page().locator('label.choice', { hasText: 'Warm storage' }).tap();
  const begun = new Date(Date.now() - 7 * 86_400_000).toISOString().slice(0, 10);
  await page().locator('input[name=begun]').fill(begun);
  await save();
  await page().goto(`${site.url}#/`);
  await page().locator('.due-list .entry', { hasText: 'B1: Warm storage, day 7' }).tap();
  await page().locator('label.choice', { hasText: 'Slightly off' }).tap();
  await button('Save').tap();
  await page().locator('.tasks').waitFor();
  expect(await page().locator('.due-list .entry', { hasText: 'Warm storage' }).count()).toBe(0);
  expect(phone.complaints).toEqual([]);
}, 180_000);
