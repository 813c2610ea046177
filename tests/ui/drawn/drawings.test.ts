import { h } from 'preact';
import { describe, expect, test } from 'vitest';
import { Icon } from '../../../src/ui/drawn/Icon';
import { iconHtml } from '../../../src/ui/drawn/iconHtml';
import { hueOf } from '../../../src/ui/drawn/hue';
import { Strip } from '../../../src/ui/drawn/Strip';
import { tipSigns, type TipSign } from '../../../src/ui/drawn/tipSigns';
import { Bottle, Vial } from '../../../src/ui/drawn/Vial';
import { Flask, Glass, Jug } from '../../../src/ui/drawn/Ware';
import { markup, writing } from './markup';

const levels = [-1, 0, 0.003, 0.5, 1, 3, NaN, Infinity];
const sizes = [24, 46, 96, 220, 'fill'] as const;
const card = { code: 'CARD', strength: '1 %', share: 0.01 };
const vial = (more: Partial<Parameters<typeof Vial>[0]> = {}) =>
  markup(h(Vial, { level: 0.5, tag: card, size: 220, hue: hueOf('card'), ...more }));

/** Where the surface of what is in it is drawn; null without one. */
function surfaceOf(drawn: string): number | null {
  const found = /class="surface" d="M[\d.-]+ ([\d.-]+)/.exec(drawn);
  return found && Number(found[1]);
}

/** Rings of a label. */
function ringsIn(drawn: string): number {
  return /class="rings" d="([^"]*)"/.exec(drawn)![1]!.split('M').length - 1;
}

describe('at every level and size', () => {
  test.each([Vial, Bottle])('%o has no number that is none, and its surface is in the glass', (Thing) => {
    for (const level of levels)
      for (const size of sizes)
        for (const smellOnly of [false, true]) {
          const drawn = markup(h(Thing, { level, size, smellOnly, tag: card, hue: hueOf('x'), state: 'now' }));
          expect(drawn).not.toMatch(/NaN|undefined|Infinity/);
          const y = surfaceOf(drawn);
          expect(y === null ? !(level > 0) : y >= 60 && y < 192, `${level} at ${size}`).toBe(true);
        }
  });

  test.each([Glass, Jug, Flask])('so has %o', (Ware) => {
    for (const level of levels)
      for (const size of sizes) {
        const drawn = markup(h(Ware, { level, size }));
        expect(drawn).not.toMatch(/NaN|undefined|Infinity/);
        const y = surfaceOf(drawn);
        expect(y === null ? !(level > 0) : y > 8 && y < 152, `${level} at ${size}`).toBe(true);
      }
  });
});

describe('a vial', () => {
  test('has code and strength on it, where they can be read', () => {
    expect(writing(vial())).toEqual(['CARD', '1 %']);
    expect(writing(vial({ size: 'fill' }))).toEqual(['CARD', '1 %']);
    expect(writing(vial({ size: 46 }))).toEqual([]);
    expect(writing(vial({ tag: null }))).toEqual([]);
  });

  test('has its rings at every size, with letters or without', () => {
    for (const size of sizes)
      for (const [share, rings] of [
        [0.1, 0],
        [0.01, 1],
        [0.001, 2],
        [0.0001, 3],
      ] as const)
        // prettier-ignore
        expect(ringsIn(vial({ size, tag: { ...card, share } })), `${share} at ${size}`).toBe(rings);
  });

  test('that may only be smelled has a band, and says so where that can be read', () => {
    expect(vial()).not.toContain('smell-band');
    for (const size of sizes) expect(vial({ size, smellOnly: true })).toContain('smell-band');
    expect(writing(vial({ smellOnly: true }))).toContain('SMELL ONLY');
  });

  test('of a rack tells made, now and next apart by shape', () => {
    const shapes = (['made', 'now', 'next'] as const).map((state) => {
      const [, mark] = /<g class="state"[^>]*>(.*?)<\/g>/.exec(vial({ state }))!;
      return mark!.replace(/[\d.-]+/g, '');
    });
    expect(new Set(shapes).size).toBe(3);
  });

  test('of which no one knows how full it is has no surface', () => {
    expect(surfaceOf(markup(h(Bottle, { level: null, tag: card, size: 100 })))).toBeNull();
  });
});

test('a drawing is decoration, or says what it is', () => {
  expect(vial()).toMatch(/^<svg[^>]* aria-hidden="true"/);
  expect(vial({ title: 'CARD 1 %, half full' })).toMatch(/^<svg[^>]* role="img" aria-label="CARD 1 %, half full"/);
  expect(markup(h(Icon, { of: 'M0 0', title: 'Weigh' }))).toMatch(/role="img" aria-label="Weigh"/);
});

test('an icon in the page is the icon that the app draws', () => {
  expect(iconHtml('M4 4h16')).toBe(markup(h(Icon, { of: 'M4 4h16' })));
});

describe('a strip', () => {
  const strip = (wet: number, sign: TipSign | null) =>
    markup(h(Strip, { tag: 'CARD 1 %', wet, tip: sign && { hue: '#8bb257', sign }, size: 200 }));

  test('says wet by a drop, and its colour by a sign', () => {
    expect(strip(1, 'disc')).toContain('class="drop"');
    expect(strip(0, 'disc')).not.toContain('class="drop"');
    expect(strip(0, null)).not.toContain('class="sign"');
    const signs = Object.keys(tipSigns) as TipSign[];
    expect(new Set(signs.map((sign) => strip(0, sign))).size).toBe(10);
    expect(writing(strip(0, 'disc'))).toEqual(['CARD 1 %']);
  });
});

test('a tone is always the same for a material, and many materials have many', () => {
  expect(hueOf('cardamom')).toBe(hueOf('cardamom'));
  const tones = new Set(Array.from({ length: 60 }, (_, i) => hueOf(`material ${i}`)));
  expect(tones.size).toBeGreaterThan(9);
});
