import type { Page } from 'playwright-core';

/** Until what was done is stored and shown. */
export async function settle(page: Page): Promise<void> {
  await page.waitForTimeout(30);
  await page.waitForFunction(() => document.querySelector('main:not([aria-busy=true])'), undefined, { polling: 30 });
}

/** Until a screen of another size is laid out: a wide one has panes of its own. */
export async function laidOut(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  await settle(page);
}
