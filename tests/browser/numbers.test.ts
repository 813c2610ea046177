import { mkdirSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inspector } from './audit/inspect';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  site = await serve();
});
afterAll(() => site.stop());

const SIGNS = [
  ['en-US', '1.000 mL', '12.345'],
  ['de-DE', '1,000 mL', '12,345'],
] as const;

test.each(SIGNS)('on a phone of %s, 1,000 and 1.000 mL of a drink are asked about', async (locale, small, shown) => {
  const profile = newProfile();
  const phone = await openPhone(profile.dir, { home: site.url, locale });
  try {
    await askedAbout(phone, small, shown, locale === 'en-US');
    expect(phone.complaints).toEqual([]);
  } finally {
    await phone.context.close();
    profile.forget();
  }
});

async function askedAbout({ page }: Phone, small: string, shown: string, inspects: boolean): Promise<void> {
  page.setDefaultTimeout(10_000);
  const h = hand(page);
  const box = page.locator('input[name="base.ml"]');
  const reading = (words: string) => page.locator('.readings').getByRole('button', { name: words, exact: true });
  const said = (words: string) => page.locator('.note', { hasText: words }).waitFor();
  await toTheAmount(page);
  for (const typed of ['1,000', '1.000']) {
    await h.type('base.ml', typed);
    await reading(small).waitFor();
    expect(await page.locator('.readings button').allTextContents()).toEqual(['1000 mL', small]);
    await page.locator('[role=alert]', { hasText: `“${typed}” is 1000 mL or ${small}: choose one.` }).waitFor();
    expect(await page.locator('dialog[open] .main').isDisabled()).toBe(true); // the sheet stays
    if (inspects && typed === '1,000') {
      await pictures(page);
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const audit = inspector(page);
      await audit.inspect('A number with two readings');
      expect(audit.found).toEqual([]);
    }
    await reading(typed === '1,000' ? small : '1000 mL').tap();
    await said(`Read as ${typed === '1,000' ? small : '1000 mL'}.`);
    expect(await box.inputValue()).toBe(typed === '1,000' ? '1' : '1000');
    expect(await page.locator('.readings').count()).toBe(0);
  }
  await h.type('base.ml', '12.345');
  await reading(`${shown} mL`).waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter'); // by keyboard: the second reading
  await said(`Read as ${shown} mL.`);
  expect(await box.inputValue()).toBe(shown);
  await expect.poll(() => box.evaluate((input) => input === document.activeElement)).toBe(true);
  await h.type('base.ml', '1,000.5');
  await said(`Read as 1000${small[1]}5 mL.`);
  await h.type('base.ml', '1000');
  await page.locator('dialog[open] .main').tap();
  await page.locator('.slot[data-name="base.ml"]', { hasText: '1000 mL' }).waitFor();
}

/** Dose a drink, with the sheet open in which its amount is typed. */
async function toTheAmount(page: Phone['page']): Promise<void> {
  await page.goto(`${site.url}#/shelf`);
  await page.getByRole('button', { name: 'Look around' }).tap();
  await page.locator('.demo-notice').waitFor({ timeout: 60_000 });
  await page.locator('.shelf .kinds .pick').nth(4).waitFor({ timeout: 60_000 }); // all of the demo is there
  await page.goto(`${site.url}#/new/dose`);
  await page.locator('.slot[data-name="base.ml"]').tap();
  await page.locator('dialog[open]').waitFor();
}

/** Pictures of the two buttons for the eye, where `MINIM_PICTURES` names a folder. */
async function pictures(page: Phone['page']): Promise<void> {
  const folder = process.env['MINIM_PICTURES'];
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  for (const [width, height] of [
    [360, 740],
    [390, 844],
  ] as const)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await page.screenshot({ path: `${folder}/readings-${width}-${colorScheme}.png` });
    }
  await page.emulateMedia({ colorScheme: 'light' });
}
