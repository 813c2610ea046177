import type { Page } from 'playwright-core';

/** What a thumb does on the bench, in the words of the screen. Every one waits until the screen has answered. */
export function hand(page: Page) {
  const say = () => page.locator('.say').first();
  return {
    /** Chooses a task on the Bench. */
    task: (name: string) => page.locator('.tasks .card', { hasText: name }).tap(),
    /** Waits for the instruction that contains these words. */
    sees: (words: string | RegExp) => page.locator('.say', { hasText: words }).first().waitFor(),
    /** A choice that is all a step asks leaves it by itself: then the next one is waited for, as a person looks up. */
    choose: async (words: string) => {
      const leaves = await page.evaluate(markStep);
      await page.locator('label.choice', { hasText: words }).first().tap();
      await page
        .waitForFunction(
          () => !document.querySelector('.say[data-before]') || document.querySelector('[role=alert]'),
          null,
          {
            timeout: leaves ? 20_000 : 250,
          },
        )
        .catch(() => {}); // it stands with other questions
    },
    /** Takes the option with these words where the card shows it; else opens the slot, or chip, of a question, and takes it there, or types where it is no choice. */
    slot: async (name: string, words: string) => {
      const row = `.pills:is([data-name="${name}"], [data-name^="${name}."])`;
      const pills = page.locator(`${row} button`, { hasText: words });
      const slot = page.locator(
        `.slot[data-name="${name}"], .slot[data-name^="${name}."], ${row}, [data-chip="${name}"]`,
      );
      await slot.first().waitFor();
      if (await pills.count()) {
        await pills.first().tap();
        return page.locator(`${row} [aria-pressed=true]`, { hasText: words }).waitFor();
      }
      await slot.first().tap();
      const sheet = page.locator('dialog[open]');
      await sheet.waitFor();
      const box = sheet.locator(`input[name="${name}"]`).first();
      if (await box.count()) {
        await box.fill('');
        await box.pressSequentially(words);
        await sheet.locator('.main').tap();
      } else await sheet.locator('.sheet-row', { hasText: words }).first().tap();
      await sheet.waitFor({ state: 'detached' });
    },
    /** Picks one of several rows, by what is written on the thing: others may name it, too. */
    pick: (code: string) =>
      page
        .locator('button[aria-pressed]', { has: page.locator('.code', { hasText: code }) })
        .first()
        .tap(),
    tab: (name: string) => page.locator('.tabs a', { hasText: name }).tap(),
    /** Types one key at a time, as a person does. */
    type: async (name: string, text: string) => {
      const box = page.locator(`input[name="${name}"]`);
      await box.fill('');
      if ((await box.getAttribute('type')) === 'date') await box.fill(text);
      else await box.pressSequentially(text);
    },
    done: async () => {
      const before = await say().textContent();
      await page.locator('.actions .main, .actions .aside').tap(); // where hits are the next tap, the other way
      await page.waitForFunction(
        (words) => document.querySelector('.say')?.textContent !== words || document.querySelector('[role=alert]'),
        before,
      );
    },
    /** The last tap of a run: its record is shown. */
    finish: async () => {
      await page.locator('.actions .main').tap();
      await page.locator('.record').waitFor();
    },
    /** Behind ⋯ on the page of a thing. */
    more: async (words: string) => {
      await page.getByRole('button', { name: 'More', exact: true }).tap();
      await page.locator('dialog[open] .sheet-row', { hasText: words }).first().tap();
    },
    tap: (words: string) => page.getByRole('button', { name: words }).first().tap(),
    /** Lets drops fall on the pad, each after the last is shown. */
    drops: async (many: number) => {
      for (let i = 0; i < many; i++) {
        const count = Number(await page.locator('.pad .count').textContent());
        await page.locator('.pad').tap();
        await page.waitForFunction(
          (next) => document.querySelector('.pad .count')?.textContent === String(next),
          count + 1,
        );
        await page.waitForTimeout(60); // a finger is no faster
      }
      await page.waitForTimeout(400); // what is beside the pad sleeps for a moment after a drop
    },
    count: async () => Number(await page.locator('.pad .count').textContent()),
    back: () => page.goBack(),
    /** ‹ at the top. */
    wayBack: () => page.getByRole('button', { name: 'Back', exact: true }).tap(),
    /** Leaves a run for the Bench. */
    pause: async () => {
      await page.getByRole('button', { name: 'More', exact: true }).tap();
      await page.locator('dialog[open] .sheet-row', { hasText: 'Pause' }).tap();
      await page.locator('.tasks .card').first().waitFor();
    },
  };
}

/** In the page: marks the instruction, which the next step replaces. Whether a choice is all that this one asks and shows, so that it is left with it. */
function markStep(): boolean {
  document.querySelector('.say')?.setAttribute('data-before', '');
  const parts = document.querySelectorAll('.run .body > :not(.say, .quiet, .offers)');
  const asked = document.querySelectorAll('.run .questions > *');
  return parts.length === 1 && asked.length === 1 && asked[0]!.matches('fieldset.choices');
}
