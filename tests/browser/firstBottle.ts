import type { Page } from 'playwright-core';
import { hand } from './hand';

/** From the empty Shelf: a bottle of cardamom oil, named by four letters. `rest` is waited for between two touches or keys. */
export async function addFirstBottle(page: Page, rest = () => page.waitForTimeout(30)): Promise<void> {
  const h = hand(page);
  await h.tap('Add your first bottle');
  await rest();
  await nameBottle(page, 'card', 'cardamom oil', rest);
  await rest();
  await h.slot('new.grade', 'food grade');
  await rest();
  await h.finish();
}

/** Types the first letters of a name, the field being ready for them, and takes what is found. */
export async function nameBottle(page: Page, letters: string, found: string, rest = () => page.waitForTimeout(30)) {
  await page.locator('[name="new.name"]:focus').waitFor();
  for (const letter of letters) {
    await page.keyboard.type(letter);
    await rest();
  }
  await page.locator('.matches .entry', { hasText: found }).first().tap();
  await page.locator('.task-card').waitFor();
}
