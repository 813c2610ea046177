import type { Page } from 'playwright-core';
import type { Batch } from '../../src/records/kind/batch';
import { hand } from './hand';
import { storedOf } from './pageStore';

/** Makes batches on the bench as a person does who weighs exactly what is asked. */
export function batchMaker(page: Page, home: string) {
  const main = () => page.locator('.actions .main');
  const slot = (name: string) => page.locator(`.slot[data-name="${name}"]`);
  const batches = () => storedOf<Batch>(page, 'batch');
  return {
    main,
    slot,
    section: (title: string) =>
      page.locator('.card-sections > section', { has: page.locator('h3', { hasText: new RegExp(`^${title}$`) }) }),
    /** A new batch with this in its slots, in their order. */
    recipe: async (slots: Readonly<Record<string, string>>) => {
      await page.goto(`${home}#/bench`);
      await page.locator('.tasks .card', { hasText: 'Make a batch' }).tap();
      await page.locator('.card-sections').waitFor();
      for (const [name, words] of Object.entries(slots)) await hand(page).slot(name, words);
    },
    /** Weighs all of it exactly, and saves it. What `sees` does is done at each step before it is left. */
    make: async (name: string, sees: () => Promise<void> = async () => {}): Promise<Batch> => {
      for (let i = 0; i < 60 && (await slot('name').count()) === 0; i++) {
        const before = new URL(page.url()).hash;
        await sees();
        const exact = page.locator('.second', { hasText: /xactly/ }).first();
        await ((await exact.count()) > 0 ? exact.tap() : main().tap());
        await page.waitForFunction((hash) => location.hash !== hash, before);
      }
      await hand(page).slot('name', name);
      if ((await page.locator('[data-name="although"], input[name="although"]').count()) > 0)
        await page.locator('input[name="although"]').fill('made to be tried');
      await sees();
      await main().tap();
      await page.locator('.record').waitFor();
      return (await batches()).find((one) => one.name === name)!;
    },
  };
}
