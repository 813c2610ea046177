import type { Page } from 'playwright-core';

/** What hands on a keyboard do: Tab to what is meant, Enter, Space, letters. No pointer is used. */
export function keyHand(page: Page) {
  const press = (key: string) => page.keyboard.press(key);
  /** Tabs on until the focus is on a control that matches, with these words in it. */
  const tabTo = async (selector: string, words = ''): Promise<void> => {
    const passed: string[] = [];
    await page.locator(selector, { hasText: words }).first().waitFor();
    for (let i = 0; i < 90; i++) {
      const at = await page.evaluate(heldIn, { selector, words });
      if (at === true) return;
      passed.push(at);
      await press('Tab');
    }
    throw new Error(`Tab does not come to ${selector} “${words}”, but to ${[...new Set(passed)].join(' | ')}`);
  };
  return {
    press,
    tabTo,
    /** Comes to a control and presses it. */
    enter: async (selector: string, words = '') => {
      await tabTo(selector, words);
      await press('Enter');
    },
    space: async (selector: string, words = '') => {
      await tabTo(selector, words);
      await press('Space');
    },
    /** The name of the slot that has the focus, '' where another thing has it. */
    heldSlot: () =>
      page.evaluate(() => (document.activeElement as HTMLElement).closest<HTMLElement>('.slot')?.dataset['name'] ?? ''),
    /** All drops that the pad asks for, one key each, with the focus on it. */
    drops: async (key: string) => {
      await tabTo('.pad');
      const count = () => page.locator('.pad .count').textContent().then(Number);
      const asked = Number(/of (\d+)/.exec((await page.locator('.pad .live').textContent())!)![1]);
      for (let now = await count(); now < asked; now++) {
        await press(key);
        await page.waitForFunction((n) => document.querySelector('.pad .count')?.textContent === String(n), now + 1);
        await page.waitForTimeout(80); // a hand is no faster
      }
      await page.waitForTimeout(450); // what is beside the pad sleeps for a moment after a drop
    },
  };
}

/** In the page: true where the focus is on what is meant, else what has it. */
function heldIn({ selector, words }: { selector: string; words: string }): true | string {
  const held = document.activeElement!;
  if (held.matches(selector) && (held.textContent ?? '').toLowerCase().includes(words.toLowerCase())) return true;
  return (held.getAttribute('aria-label') ?? held.textContent ?? '').trim().slice(0, 30) || held.tagName;
}
