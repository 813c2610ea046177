import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterEach, expect, test, vi } from 'vitest';
import { showLook } from '../../../src/app/nav/look';

const root = resolve(import.meta.dirname, '../../..');
const boot = readFileSync(resolve(root, 'public/boot.js'), 'utf8');
const css = readFileSync(resolve(root, 'src/ui/base.css'), 'utf8');
const papers = [...css.matchAll(/--paper: (#\w{6})/g)].map(([, colour]) => colour);

/** As much of a page as the two scripts touch, on a phone that has kept `kept`. */
function page(kept: Map<string, string>) {
  const bars = ['light', 'dark'].map((scheme) => ({ media: `(prefers-color-scheme: ${scheme})`, content: '' }));
  const dataset: Record<string, string> = {};
  const documentElement = { dataset, style: { setProperty: () => {} } };
  const localStorage = {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => void kept.set(name, value),
    removeItem: (name: string) => void kept.delete(name),
  };
  return {
    dataset,
    bars,
    localStorage,
    location: { hash: '' },
    document: { documentElement, querySelectorAll: () => bars },
  };
}

function shown(kept: Map<string, string>, look: Parameters<typeof showLook>[0]) {
  const here = page(kept);
  vi.stubGlobal('document', here.document);
  vi.stubGlobal('localStorage', here.localStorage);
  showLook(look);
  return here;
}

/** The next start, before any other script has run. */
function started(kept: Map<string, string>) {
  const here = page(kept);
  runInNewContext(boot, here);
  return here;
}

afterEach(() => void vi.unstubAllGlobals());

test.each([
  ['dark', 'left', papers[1], { theme: 'dark', hand: 'left' }],
  ['light', 'right', papers[0], { theme: 'light' }], // the usual hand is not kept
] as const)(
  '%s and the %s hand are there before the next page is painted, with both colours of the bar',
  (theme, hand, paper, known) => {
    const kept = new Map<string, string>();
    const last = shown(kept, { theme, hand });
    const next = started(kept);
    expect(next.dataset).toEqual(known);
    for (const { bars } of [last, next]) expect(bars.map(({ content }) => content)).toEqual([paper, paper]);
  },
);

test('as the phone: each bar has the colour of its own light again', () => {
  const kept = new Map([['minim-theme', 'dark']]);
  const { bars } = shown(kept, { theme: 'system', hand: 'right' });
  expect(bars.map(({ content }) => content)).toEqual([papers[0], papers[1]]);
  expect(started(kept).dataset).toEqual({});
  expect([...kept]).toEqual([]); // what is usual is not kept
});

test.each(['', 'toString', '<b>'])('what is no theme (%s) changes nothing', (wrong) => {
  const kept = new Map([
    ['minim-theme', wrong],
    ['minim-hand', wrong],
  ]);
  const next = started(kept);
  expect(next.dataset).toEqual({});
  expect(next.bars.map(({ content }) => content)).toEqual(['', '']);
});
