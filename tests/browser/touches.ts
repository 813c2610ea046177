import type { Page } from 'playwright-core';
import { hand } from './hand';
import type { TouchWalk } from './touchWalks';

/** What a walk took: fingers lifted from what can be touched, keys, drops apart, and what was touched in turn. */
export interface Touches {
  readonly taps: number;
  readonly keys: number;
  readonly drops: number;
  readonly touched: readonly string[];
}

/** Counts on every page that is opened from now on. */
export async function countOn(page: Page): Promise<void> {
  await page.addInitScript(countTouches);
}

/** Walks one task, and counts from where it begins; what has to be there before is not counted. */
export async function walked(page: Page, home: string, { before, from, go }: TouchWalk): Promise<Touches> {
  const onBench = async () => {
    await page.goto(`${home}#/`);
    await page.locator('.tasks .card').first().waitFor();
  };
  await onBench();
  await before?.(hand(page), page);
  await (from ?? onBench)(hand(page), page);
  await page.evaluate(() => sessionStorage.removeItem('touches'));
  await go(hand(page), page);
  const kept = await page.evaluate(() => sessionStorage.getItem('touches') ?? '[]');
  const all = JSON.parse(kept) as [what: 'tap' | 'key' | 'drop', of: string][];
  const many = (sort: string) => all.filter(([what]) => what === sort).length;
  return {
    taps: many('tap'),
    keys: many('key'),
    drops: many('drop'),
    touched: all.filter(([what]) => what === 'tap').map(([, of]) => of),
  };
}

/** In the page: writes down each touch and key. No named function: tsx gives those a call the page lacks. */
function countTouches(): void {
  for (const type of ['pointerup', 'keydown'])
    addEventListener(
      type,
      ({ target }) => {
        const hit = (target as Element).closest('a, button, label, input, select, textarea, summary, [role=button]');
        if (type === 'pointerup' && !hit) return;
        const what = type === 'keydown' ? 'key' : hit!.closest('.pad, .plus') ? 'drop' : 'tap';
        const of = hit?.getAttribute('aria-label') ?? hit?.textContent ?? '';
        const seen = JSON.parse(sessionStorage.getItem('touches') ?? '[]') as string[][];
        sessionStorage.setItem('touches', JSON.stringify([...seen, [what, of.trim().slice(0, 40)]]));
      },
      true,
    );
}
