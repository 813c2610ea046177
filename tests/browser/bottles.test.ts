import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { nameBottle } from './firstBottle';
import { hand } from './hand';
import { newProfile, openPhone, serve, type Phone } from './phone';

let site: Awaited<ReturnType<typeof serve>>;
let profile: ReturnType<typeof newProfile>;
let phone: Phone;
let h: ReturnType<typeof hand>;
const page = () => phone.page;

beforeAll(async () => {
  site = await serve();
  profile = newProfile();
  phone = await openPhone(profile.dir, { home: site.url, width: 360, height: 740 });
  h = hand(page());
  await page().addInitScript(() => {
    const count = (name: string) => (sessionStorage[name] = String(Number(sessionStorage[name] ?? 0) + 1));
    addEventListener('pointerdown', () => count('taps'), true);
    addEventListener('keydown', () => count('keys'), true);
  });
  await page().goto(`${site.url}#/shelf`);
  await page().locator('.first-run').waitFor();
});

afterAll(async () => {
  await phone.context.close();
  await site.stop();
  profile.forget();
});

/** Taps and keys that the work takes. */
async function costOf(work: () => Promise<unknown>): Promise<{ taps: number; keys: number }> {
  const seen = () =>
    page().evaluate(() => ({ taps: Number(sessionStorage['taps'] ?? 0), keys: Number(sessionStorage['keys'] ?? 0) }));
  const before = await seen();
  await work();
  const after = await seen();
  return { taps: after.taps - before.taps, keys: after.keys - before.keys };
}

const saved = () => page().locator('.record').waitFor();
const facts = async (on: Page) => (await on.locator('.record').textContent()) ?? '';

describe('a bottle from the catalogue', () => {
  test('goes from its first letters to its record', async () => {
    await h.tap('Add your first bottle');
    await nameBottle(page(), 'card', 'cardamom oil');
    await h.slot('new.grade', 'food grade');
    await h.finish();
  });

  test('is followed by the next one of the delivery without leaving: supplier, day and amount are there', async () => {
    await page().goto(`${site.url}#/shelf`);
    await page().getByRole('button', { name: 'Add a bottle' }).tap();
    await nameBottle(page(), 'limon', 'd-limonene');
    await h.slot('new.supplier', 'Pebblewick Oils');
    await h.slot('new.amount', '10');
    await h.slot('new.grade', 'food grade');
    const cost = await costOf(async () => {
      await h.tap('Save and next');
      await h.sees('What is in the bottle?');
      await page().locator('.run', { hasText: 'd-limonene is on the Shelf.' }).waitFor();
      await nameBottle(page(), 'citr', 'citral');
      await page().locator('.sentence', { hasText: 'Pebblewick Oils' }).waitFor();
      await h.slot('new.grade', 'smell only');
    });
    expect(cost.taps).toBeLessThanOrEqual(3); // Save and next is that of the bottle before
    expect(cost.keys).toBeLessThanOrEqual(8);
    await h.finish();
    const told = await facts(page());
    expect(told).toContain('Pebblewick Oils');
    expect(told).toContain('8.89 g'); // 10 mL by its density
    expect(told).toContain('smell only');
  });

  test('is not saved before its grade is said: the button says so and opens it', async () => {
    await page().goto(`${site.url}#/shelf`);
    await page().getByRole('button', { name: 'Add a bottle' }).tap();
    await nameBottle(page(), 'vanil', 'vanillin');
    expect(await page().locator('.pills [aria-pressed=true]').count()).toBe(0);
    await h.tap('Save and next');
    await page().locator('[role=alert]', { hasText: 'Say the grade' }).waitFor();
    await h.tap('Say the grade');
    await page().locator('dialog[open] .sheet-row', { hasText: 'Food grade' }).tap();
    await h.finish();
  });

  test('goes by the keyboard alone', async () => {
    await page().goto(`${site.url}#/shelf`);
    const keys = page().keyboard;
    await page().getByRole('button', { name: 'Add a bottle' }).focus();
    await keys.press('Enter');
    await page().locator('[name="new.name"]:focus').waitFor();
    await keys.type('ginger');
    await page().locator('.matches .entry').first().waitFor();
    await keys.press('Tab');
    await keys.press('Enter');
    await page().locator('.task-card').waitFor();
    await page().locator('.pills button').first().focus();
    await keys.press('Space');
    await page().locator('.pills [aria-pressed=true]').waitFor();
    await page().locator('.actions .main').focus();
    await keys.press('Enter');
    await saved();
    expect(await facts(page())).toContain('ginger oil');
  });
});

describe('supplies', () => {
  test('ethanol and propylene glycol, each in its usual pack and graded, take 6 taps', async () => {
    await page().goto(`${site.url}#/shelf`);
    await page().locator('.shelf .list').first().waitFor();
    const cost = await costOf(async () => {
      await h.tap('Add solvents and supplies');
      await h.tap('ethanol 96');
      await h.tap('propylene glycol');
      await h.slot('grade.ethanol-96', 'food grade');
      await h.slot('grade.propylene-glycol', 'food grade');
      await h.tap('Save 2');
      await saved();
    });
    expect(cost).toEqual({ taps: 6, keys: 0 });
    expect(await facts(page())).toContain('807');
  });
});

test('nothing was complained of', () => expect(phone.complaints).toEqual([]));
