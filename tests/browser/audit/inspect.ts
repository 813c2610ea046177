import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { laidOut } from './settle';
import { breaches, unheard, type Held } from './screenRules';

declare const axe: { run: (options: RunOptions & { [key: string]: unknown }) => Promise<AxeResults> };
type Context = { include?: string[][] };

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Size {
  readonly width: number;
  readonly height: number;
  /** Font size of the root in px, 16 where it is not said. */
  readonly text?: number;
  /** Which hands hold it. */
  readonly hands?: readonly ('left' | 'right')[];
}

const sizes: readonly Size[] = [
  { width: 320, height: 640 },
  { width: 360, height: 740 },
  { width: 430, height: 932 },
  { width: 844, height: 390 },
  { width: 390, height: 844, text: 32 },
  { width: 390, height: 844, hands: ['left', 'right'] }, // last: the screen is left in this size
];

/** From here on list and page are side by side, CSS px (app/nav/wide.ts). */
const WIDE = 840;

/** Words on the keyboard: what it leaves of the height. */
const KEYBOARD_LEAVES = 0.45;

/** Holds one screen after the other to the rules of one hand and of everybody; each screen once. */
export function inspector(page: Page) {
  const seen = new Set<string>();
  const found: string[] = [];
  const spent = { sizes: 0, axe: 0 };
  const note = (name: string, how: string, what: readonly string[]) =>
    void found.push(...what.map((each) => `${name} (${how}): ${each}`));

  async function inspect(name: string): Promise<void> {
    if (seen.has(name)) return;
    seen.add(name);
    let from = Date.now();
    for (const size of sizes) await atSize(name, size);
    await atKeyboard(name);
    spent.sizes += Date.now() - from;
    from = Date.now();
    note(name, 'for everybody', await page.evaluate(unheard));
    note(name, 'day', await barriers(page, 'light'));
    note(name, 'night', await barriers(page, 'dark'));
    spent.axe += Date.now() - from;
  }

  async function atSize(name: string, { width, height, text = 16, hands = ['right'] }: Size): Promise<void> {
    const before = page.viewportSize()!.width;
    await page.setViewportSize({ width, height });
    if (before >= WIDE !== width >= WIDE) await laidOut(page);
    for (const hand of hands) {
      const held: Held = { width, height, text, hand, keyboard: false };
      note(name, `${width}×${height}, text ${text}, ${hand} hand`, await page.evaluate(breaches, held));
    }
  }

  /** The first and the last field are typed in, with a keyboard on the smallest and on the usual screen. */
  async function atKeyboard(name: string): Promise<void> {
    const fields = page.locator('input:not([type=radio], [type=checkbox], [type=file], [type=date], [type=range])');
    const last = (await fields.count()) - 1;
    if (last < 0) return;
    for (const { width, height } of [sizes[0]!, sizes.at(-1)!]) {
      const left = { width, height: Math.round(height * KEYBOARD_LEAVES) };
      await page.setViewportSize(left);
      for (const at of new Set([0, last])) {
        await fields.nth(at).evaluate((field) => (field as HTMLElement).focus());
        const held: Held = { ...left, text: 16, hand: 'right', keyboard: true };
        note(name, 'keyboard', await page.evaluate(breaches, held));
      }
    }
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.setViewportSize(sizes.at(-1)!);
  }

  return { inspect, note, seen, found, spent };
}

/** What axe-core finds against WCAG 2.2 AA, and amounts under AAA contrast. By night only colours can differ. */
async function barriers(page: Page, theme: 'light' | 'dark'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(async (theme) => {
    const was = document.documentElement.dataset['theme'] ?? 'system';
    document.documentElement.dataset['theme'] = theme;
    const run = axe.run as unknown as (context: Context | Document, options: object) => Promise<AxeResults>;
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const runOnly = theme === 'light' ? { type: 'tag', values: tags } : { type: 'rule', values: ['color-contrast'] };
    const options = { runOnly, resultTypes: ['violations'] };
    const wide = await run(document, options);
    const amounts = ['.amount', '.number b', '.count', '.headline'].filter((each) => document.querySelector(each));
    const enhanced = { ...options, runOnly: { type: 'rule', values: ['color-contrast-enhanced'] } };
    const strict = amounts.length > 0 ? await run({ include: amounts.map((each) => [each]) }, enhanced) : null;
    document.documentElement.dataset['theme'] = was;

    const found: string[] = [];
    for (const { id, help, nodes } of [...wide.violations, ...(strict?.violations ?? [])])
      for (const { html, any, target } of nodes)
        if (id !== 'target-size' || !(await isWholeInTheMiddle(target as string[])))
          found.push(`${id}: ${help}: ${html.slice(0, 120)} ${any[0]?.message.slice(0, 160) ?? ''}`);
    scrollTo(0, 0);
    return found;

    /** What the bar at the foot lies over is large enough where it is scrolled to. */
    async function isWholeInTheMiddle(target: string[]): Promise<boolean> {
      document.querySelector(target[0]!)!.scrollIntoView({ block: 'center' });
      const again = await run(
        { include: [target] },
        { ...options, runOnly: { type: 'rule', values: ['target-size'] } },
      );
      return again.violations.length === 0;
    }
  }, theme);
}

export interface Inspector {
  inspect: (name: string) => Promise<void>;
  note: (name: string, how: string, what: readonly string[]) => void;
}
