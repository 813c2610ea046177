import type { Page } from 'playwright-core';

/** Controls that the Tab key does not come to from the top of the page, round and round. */
export async function outOfReach(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    getSelection()?.removeAllRanges();
    for (const each of document.querySelectorAll('[data-reached]')) each.removeAttribute('data-reached');
  });
  const many = await page.locator('button, a[href], input, select, summary').count();
  for (let i = 0; i < many + 4; i++) {
    await page.keyboard.press('Tab');
    await page.evaluate(() => document.activeElement?.setAttribute('data-reached', ''));
  }
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLInputElement>('button, a[href], input, select, summary')]
      .filter((each) => each.checkVisibility() && !each.disabled && !each.hasAttribute('data-reached'))
      .filter(
        (each) =>
          each.type !== 'radio' ||
          !document.querySelector(`[type=radio][name="${CSS.escape(each.name)}"][data-reached]`),
      )
      .map((each) => each.outerHTML.slice(0, 120)),
  );
}
