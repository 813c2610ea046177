import type { Page } from 'playwright-core';
import { hand } from './hand';

/** On the card of a count: these vials, by what is written on them, with so many drops each. */
export async function countByHand(page: Page, drops: Readonly<Record<string, string>>): Promise<void> {
  const h = hand(page);
  await page.locator('.run .slot[data-name=formula]').waitFor();
  if ((await page.locator('.slot[data-name=formula]').textContent())?.match(/vials/) === null)
    await h.slot('formula', 'Vials and drops');
  await h.tap('Pick vials');
  const sheet = page.locator('dialog[open]');
  await sheet.waitFor();
  for (const code of Object.keys(drops)) {
    await sheet.locator('button[aria-pressed=false]', { hasText: code }).first().tap();
    await sheet.locator('button[aria-pressed=true]', { hasText: code }).first().waitFor();
  }
  await sheet.locator('.main').tap();
  await sheet.waitFor({ state: 'detached' });
  for (const many of Object.values(drops)) {
    const open = page.locator('.run .slot.empty[data-name^="plan."]');
    const left = await open.count();
    await open.first().tap();
    await sheet.locator('input').fill(many);
    await sheet.locator('.main:not([disabled])').tap();
    await sheet.waitFor({ state: 'detached' });
    await page.waitForFunction((n) => document.querySelectorAll('.run .slot.empty').length < n, left);
  }
}
