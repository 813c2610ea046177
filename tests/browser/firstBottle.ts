import type { Page } from 'playwright-core';
import { hand } from './hand';

/** From the empty Shelf: a bottle of cardamom oil, named by four letters. `rest` is waited for between two touches or keys. */
export async function addFirstBottle(page: Page, rest = () => page.waitForTimeout(30)): Promise<void> {
  const h = hand(page);
  await h.tap('Add your first bottle');
  await rest();
  await page.locator('[name="new.name"]').tap();
  for (const letter of 'card') {
    await rest();
    await page.keyboard.type(letter);
  }
  await rest();
  await page.locator('.matches .entry', { hasText: 'cardamom oil' }).tap();
  await page.locator('.chosen-material').waitFor();
  await rest();
  await h.done();
  await rest();
  await h.done();
  await rest();
  await h.choose('Food grade');
  await page.locator('.record').waitFor();
}
