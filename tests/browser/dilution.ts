import type { Page } from 'playwright-core';
import { hand } from './hand';

/** On the card of a dilution: fills slots by the names of their questions, and goes on to the pad or the scale. */
export async function dilute(page: Page, slots: Readonly<Record<string, string>> = {}): Promise<void> {
  const h = hand(page);
  await page.locator('.run .sentence').waitFor();
  for (const [name, words] of Object.entries(slots)) await h.slot(name, words);
  await page.locator('.run .main:not([aria-haspopup])').tap();
  await page.locator('.pad, .run .questions input').first().waitFor();
}

/** The same from the Bench. */
export async function diluteFromBench(page: Page, slots: Readonly<Record<string, string>> = {}): Promise<void> {
  await page.locator('.tasks .card', { hasText: 'Dilute' }).tap();
  await dilute(page, slots);
}
