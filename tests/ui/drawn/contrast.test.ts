import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hueOf } from '../../../src/ui/drawn/hue';

const ui = resolve(import.meta.dirname, '../../../src/ui');
const css = ['base.css', 'drawn/drawn.css'].map((file) => readFileSync(resolve(ui, file), 'utf8')).join('\n');

/** Colours of a theme: the rules of the day, and over them those of the night. */
function colours(night: boolean): Record<string, string> {
  const blocks = [...css.matchAll(/^(:root(?:\[data-theme='dark'\])?) \{([^}]*)\}/gm)];
  const asked = blocks.filter(([, selector]) => night || selector === ':root');
  const pairs = asked.flatMap(([, , body]) => [...body!.matchAll(/--([\w-]+): (#\w{6})/g)]);
  return Object.fromEntries(pairs.map(([, name, value]) => [name, value!]));
}

/** Relative luminance. Source: WCAG 2.2. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

describe.each([
  ['by day', false],
  ['by night', true],
])('%s', (_, night) => {
  const is = colours(night);

  test.each([
    ['glass-edge', 'paper'],
    ['glass-edge', 'card'],
    ['glass-edge', 'tan'],
    ['glass-edge', 'glass'],
    ['dark-glass-edge', 'paper'],
    ['dark-glass-edge', 'card'],
    ['dark-glass-edge', 'tan'],
    ['past', 'glass'],
    ['dark-surface', 'dark-glass'],
    ['dark-surface', 'dark-liquid'],
    ['green', 'paper'],
    ['green', 'card'],
  ])('%s on %s is 3:1 or more', (one, other) => {
    expect(contrast(is[one]!, is[other]!)).toBeGreaterThanOrEqual(3);
  });

  test('letters are 7:1 on their label, white on the band of what may only be smelled', () => {
    expect(contrast(is['label-ink']!, is['label']!)).toBeGreaterThanOrEqual(7);
    expect(contrast('#fffdf7', '#8b2213')).toBeGreaterThanOrEqual(7);
  });

  test('the tone of a material is told from its label', () => {
    const tones = new Set(Array.from({ length: 200 }, (_, i) => hueOf(`material ${i}`)));
    for (const tone of tones) expect(contrast(tone, is['label']!), tone).toBeGreaterThanOrEqual(3);
  });
});
