import { afterAll, beforeAll, expect, test } from 'vitest';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url, locale: 'de-DE' });
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

test('on a German phone numbers have a comma and days are German; a comma can be typed', async () => {
  const { page, complaints } = phone;
  const h = hand(page);
  await page.goto(`${site.url}#/new/calibrate`);
  await h.sees('a new dropper');
  await page.locator('.slot', { hasText: '0,01 g' }).waitFor();
  await h.slot('liquid', 'ethanol 96');
  await h.slot('readability', '0,001');
  await h.type('mass.1', '0,309');
  await page.locator('.card-answer', { hasText: '15,4' }).waitFor();
  await page.getByRole('button', { name: 'Save' }).tap();
  await page.locator('.record').waitFor();
  await page.getByRole('img', { name: /mean, 15,4 ± \d,\d+ mg\. 1: 15,4/ }).waitFor();
  await page.locator('.record').waitFor();
  await page.locator('.facts', { hasText: '20 drops, 0,309 g' }).waitFor();
  await h.more('Print or CSV');
  const today = new Intl.DateTimeFormat('de-DE', { dateStyle: 'medium', timeZone: 'UTC' }).format(new Date());
  await page.locator('.paper', { hasText: `made ${today}` }).waitFor();
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'CSV' }).tap()]);
  const csv = await (await file.createReadStream()).reduce((all: string, part: Buffer) => all + part.toString(), '');
  expect(csv).toContain('"20 drops, 0.309 g"');
  expect(csv).not.toMatch(/\d,\d+ (g|mg)/);
  expect(complaints).toEqual([]);
});
