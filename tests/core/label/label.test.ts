import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layoutLabel, type LabelLayout } from '../../../src/core/label/label';
import type { LabelContent, LabelFace, LabelSpan } from '../../../src/core/label/labelContent';
import { blocksFor, dotsPerMm, withQuiet } from '../../../src/core/label/labelBlocks';
import { BADGE_PAD } from '../../../src/core/label/labelText';
import published from '../../reference/squareCodes.json';
import { Refusal } from '../../../src/core/text/refusal';

/** Widths a little like those of a text face: narrow letters, wide letters, digits. */
function widthOf(text: string, face: LabelFace): number {
  if (face === 'code') return 0.63 * text.length;
  const one = (sign: string) => (/[ilj.,'· ]/.test(sign) ? 0.28 : /[mwMW%]/.test(sign) ? 0.85 : 0.58);
  return [...text].reduce((sum, sign) => sum + one(sign), 0) * (face === 'plain' ? 1 : 1.05);
}

function span(text: string, rank = 0, face: LabelFace = 'plain', scale = 1): LabelSpan {
  return { text, face, scale, rank, what: `the words “${text}”` };
}

const usual: LabelContent = {
  paragraphs: [
    [span('HEX3', 0, 'code', 1.5), span('SMELL ONLY', 0, 'badge')],
    [span('cis-3-hexenol', 1, 'bold')],
    [span('1.05 ± 0.11 % w/v', 2, 'bold'), span('in isopropanol 99 %', 5)],
    [span('made 2026-05-04', 6), span('use by 2027-05-04', 4)],
    [span('Northgate Botanicals (made up)', 8), span('lot HEX3-17', 7)],
    [span('ZRD7 QQ57', 3, 'code', 0.9)],
  ],
  codeModules: 21,
  flame: true,
};

interface Box {
  left: number;
  right: number;
  top: number;
  foot: number;
}

/** What a text covers: from its tallest letters to its longest tails; white on black reaches a little farther. */
function boxesOf(layout: LabelLayout): { texts: Box[]; blocks: Box[] } {
  const texts = layout.texts.map(({ x, y, width, size, face }) => {
    const pad = face === 'badge' ? BADGE_PAD * size : 0;
    return { left: x - pad, right: x + width + pad, top: y - 0.72 * size, foot: y + 0.2 * size };
  });
  const squares = [layout.code && withQuiet(layout.code), layout.flame].flatMap((square) => square ?? []);
  return {
    texts,
    blocks: squares.map(({ x, y, side }) => ({ left: x, right: x + side, top: y, foot: y + side })),
  };
}

function apart(a: Box, b: Box): boolean {
  const tiny = 1e-6;
  return a.right <= b.left + tiny || b.right <= a.left + tiny || a.foot <= b.top + tiny || b.foot <= a.top + tiny;
}

const words = fc.string({ minLength: 1, maxLength: 14, unit: fc.constantFrom(...'abcdefghimw0123-%') });
const someSpan = fc
  .record({ text: fc.array(words, { minLength: 1, maxLength: 5 }), rank: fc.integer({ min: 1, max: 9 }) })
  .map(({ text, rank }) => span(text.join(' '), rank));
const someContent = fc
  .record({
    code: words.map((text) => text.slice(0, 6)),
    rest: fc.array(fc.array(someSpan, { minLength: 1, maxLength: 3 }), { maxLength: 6 }),
    codeModules: fc.constantFrom(null, 21, 25),
    flame: fc.boolean(),
    smell: fc.boolean(),
  })
  .map(({ code, rest, codeModules, flame, smell }): LabelContent => {
    const head = [span(code, 0, 'code', 1.5), ...(smell ? [span('SMELL ONLY', 0, 'badge')] : [])];
    return { paragraphs: [head, ...rest], codeModules, flame };
  });
const someFrame = fc.record({
  widthMm: fc.double({ min: 15, max: 90, noNaN: true }),
  heightMm: fc.double({ min: 6, max: 50, noNaN: true }),
  dpi: fc.constantFrom(203, 300),
});

describe('a label', () => {
  test('never has text on text, on the code, on its quiet zone, on the flame, or over the edge', () => {
    fc.assert(
      fc.property(someContent, someFrame, (content, frame) => {
        const layout = layoutLabel(content, { ...frame, widthOf });
        const { texts, blocks } = boxesOf(layout);
        const all = [...texts, ...blocks];
        for (const box of all) {
          expect(box.left).toBeGreaterThanOrEqual(-1e-6);
          expect(box.top).toBeGreaterThanOrEqual(-1e-6);
          expect(box.right).toBeLessThanOrEqual(frame.widthMm + 1e-6);
          expect(box.foot).toBeLessThanOrEqual(frame.heightMm + 1e-6);
        }
        all.forEach((a, i) => all.slice(i + 1).forEach((b) => expect(apart(a, b)).toBe(true)));
      }),
      { numRuns: 60 },
    );
  });

  test('says every word, or names what it leaves out', () => {
    fc.assert(
      fc.property(someContent, someFrame, (content, frame) => {
        const layout = layoutLabel(content, { ...frame, widthOf });
        const kept = content.paragraphs.flat().filter(({ what, rank }) => rank === 0 || !layout.leftOut.includes(what));
        const letters = (texts: readonly { text: string }[]) =>
          texts.map(({ text }) => text.replace(/\s/g, '')).join('');
        expect(letters(layout.texts)).toBe(letters(kept));
        expect(layout.code === null && content.codeModules !== null).toBe(layout.leftOut.includes('the QR code'));
        expect(layout.flame === null && content.flame).toBe(layout.leftOut.includes('the flame'));
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    ['HEX3', '0.1 %'],
    ['CARD', '1 % w/w'],
    ['GRAPEF', '0.05 %'],
    ['HEX3B', '250 mg/kg'],
  ])(
    'of 15 × 6 mm still says %s, %s and SMELL ONLY whole, smaller than on a larger one if it must',
    (code, strength) => {
      const tag = [span(code, 0, 'code', 1.5), span(strength.replaceAll(' ', '\u00a0'), 0, 'bold', 1.5)];
      const content: LabelContent = {
        paragraphs: [[...tag, span('SMELL ONLY', 0, 'badge')], [span('cis-3-hexenol', 1, 'bold')]],
        codeModules: null,
        flame: false,
      };
      const said = (widthMm: number, heightMm: number) =>
        layoutLabel(content, { widthMm, heightMm, dpi: 203, widthOf }).texts.map(({ text }) =>
          text.replaceAll('\u00a0', ' '),
        );
      expect(said(15, 6)).toEqual([code, strength, 'SMELL ONLY']);
      const large = layoutLabel(content, { widthMm: 30, heightMm: 20, dpi: 203, widthOf });
      const [first, second, ...others] = large.texts.map(({ size }) => size);
      expect(first).toBe(second);
      expect(Math.max(...others)).toBeLessThan(first!);
    },
  );

  test('the flame is not said to be left out when the code alone makes room', () => {
    const content: LabelContent = {
      paragraphs: [[span('a', 0, 'code', 1.5), span('SMELL ONLY', 0, 'badge')]],
      codeModules: 25,
      flame: true,
    };
    const layout = layoutLabel(content, { widthMm: 15, heightMm: 8.381999999915333, dpi: 300, widthOf });
    expect(layout.flame === null).toBe(layout.leftOut.includes('the flame'));
  });

  test('text shrinks before anything is left out', () => {
    const sizes = [50, 40, 34, 30].map((widthMm) =>
      layoutLabel(usual, { widthMm, heightMm: widthMm / 2 + 4, dpi: 203, widthOf }),
    );
    expect(sizes.map(({ leftOut }) => leftOut)).toEqual([[], [], [], []]);
    expect(sizes.map(({ textMm }) => textMm)).toEqual(sizes.map(({ textMm }) => textMm).sort((a, b) => b - a));
    expect(sizes.at(-1)!.textMm).toBeLessThan(sizes[0]!.textMm);
  });

  test('of what finds no room the least important goes first', () => {
    const { leftOut } = layoutLabel(usual, { widthMm: 25, heightMm: 15, dpi: 203, widthOf });
    expect(leftOut.length).toBeGreaterThan(0);
    expect(leftOut[0]).toContain('Northgate');
    expect(leftOut.join()).not.toContain('SMELL ONLY');
  });

  test('a word longer than the label is broken, not cut off', () => {
    const name = 'tetrahydromethylmethylpropenylpyran'.repeat(2);
    const { texts, leftOut } = layoutLabel(
      { paragraphs: [[span('TMP', 0, 'code', 1.5)], [span(name, 1)]], codeModules: null, flame: false },
      { widthMm: 25, heightMm: 15, dpi: 203, widthOf },
    );
    expect(leftOut).toEqual([]);
    expect(texts.slice(1).length).toBeGreaterThan(1);
    expect(
      texts
        .slice(1)
        .map(({ text }) => text)
        .join(''),
    ).toBe(name);
  });

  test('the flame is 10 mm high where there is room (CLP Annex I 1.2.1: not under 10 mm)', () => {
    expect(layoutLabel(usual, { widthMm: 63.5, heightMm: 38.1, dpi: 300, widthOf }).flame?.side).toBe(10);
  });

  test('a label too small for a code and its grade is refused in one sentence', () => {
    const frame = { dpi: 203, widthOf };
    expect(() => layoutLabel(usual, { ...frame, widthMm: 10, heightMm: 20 })).toThrow(
      'a label is at least 15 mm wide and 6 mm high, not 10 × 20 mm',
    );
    expect(() => layoutLabel(usual, { ...frame, widthMm: NaN, heightMm: 20 })).toThrow(Refusal);
  });
});

/** The published sizes for "300 dpi" reckon with 12 dots to the mm, that is 304.8 dpi; at exactly 300 dpi (11.81) a code is 1.6 % larger. */
const printed = (dpi: number) => (dpi === 300 ? 12 * 25.4 : dpi);

describe('the code on a label', () => {
  test('has whole dots to a module, three at least, and begins on a dot', () => {
    fc.assert(
      fc.property(someFrame, fc.constantFrom(21, 25, 29), (frame, codeModules) => {
        for (const { code } of blocksFor({ paragraphs: [], codeModules, flame: false }, { ...frame, widthOf })) {
          if (!code) continue;
          const perMm = dotsPerMm(frame.dpi);
          const dots = [code.x, code.y, code.side, code.module].map((mm) => mm * perMm);
          dots.forEach((count) => expect(count).toBeCloseTo(Math.round(count), 6));
          expect(code.dots).toBeGreaterThanOrEqual(3);
        }
      }),
    );
  });

  test.each(published.withQuietMm)(
    'at $dpi dpi with $dots dots, version $version takes $mm mm with its quiet zone (published sizes)',
    ({ dpi, dots, version, mm, fits12mm }) => {
      const ways = (heightMm: number, at: number) =>
        blocksFor(
          { paragraphs: [], codeModules: 17 + 4 * version, flame: false },
          { widthMm: 60, heightMm, dpi: at, widthOf },
        ).flatMap(({ code }) => code ?? []);
      const there = ways(30, printed(dpi)).find((code) => code.dots === dots)!;
      expect(withQuiet(there).side).toBeCloseTo(mm, 1);
      expect(ways(12, dpi).some((code) => code.dots === dots)).toBe(fits12mm);
    },
  );

  test.each(published.moduleMm)('a module of $dots dots at $dpi dpi is $mm mm (qrcode.com)', ({ dpi, dots, mm }) => {
    expect(dots / dotsPerMm(printed(dpi))).toBeCloseTo(mm, 2);
  });
});
