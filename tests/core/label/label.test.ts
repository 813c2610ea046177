import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layoutLabel, type LabelLayout } from '../../../src/core/label/label';
import type { LabelContent, LabelFace, LabelSpan } from '../../../src/core/label/labelContent';
import { blocksFor, dotsPerMm, withQuiet } from '../../../src/core/label/labelBlocks';
import { LABEL_ORDER, rankOf, type LabelPart } from '../../../src/core/label/labelOrder';
import { BAR } from '../../../src/core/label/labelText';
import { capHeightOf, widthInFont } from '../../fontFile';
import published from '../../reference/squareCodes.json';
import { Refusal } from '../../../src/core/text/refusal';

const widthOf = widthInFont;

function span(text: string, rank = 0, face: LabelFace = 'plain', large = false): LabelSpan {
  return { text, face, large, rank, what: `the words “${text}”` };
}

function part(text: string, what: LabelPart): LabelSpan {
  return { text: text.replaceAll(' ', '\u00a0'), face: 'plain', large: false, rank: rankOf(what), what };
}

function tagged(code: string, strength: string): LabelSpan[] {
  return [span(code, 0, 'code', true), span(strength.replaceAll(' ', '\u00a0'), 0, 'bold', true)];
}

/** The label of a vial, with everything that such a label can say. */
function vialLabel({ code = 'HEX3', strength = '1 %', name = 'cis-3-hexenol', smell = true } = {}): LabelContent {
  return {
    paragraphs: [
      [...tagged(code, strength), part('(1.05 ± 0.11) % w/v', 'the exact strength')],
      ...(smell ? [[span('SMELL ONLY', 0, 'badge')]] : []),
      [{ ...part('', 'the name'), text: name, face: 'bold', mayShorten: true }],
      [
        part('made 2026-05-04', 'the day it was made'),
        part('use by 2027-05-04', 'the use-by day'),
        ...(smell ? [] : [part('fit for drinks', 'fit for drinks')]),
      ],
      [part('in isopropanol 99 %', 'the solvent')],
      [part('Northgate', 'the supplier'), part(`lot ${code}-17`, 'the lot')],
      [{ ...part('ZRD7 QQ57', 'the short id'), face: 'code' }],
    ],
    codeModules: 21,
    flame: true,
    rings: 1,
  };
}
const usual = vialLabel();

interface Box {
  left: number;
  right: number;
  top: number;
  foot: number;
}

/** What a text covers: from its tallest letters to its longest tails; white on black as far as its bar. */
function boxesOf(layout: LabelLayout): { texts: Box[]; blocks: Box[] } {
  const texts = layout.texts.map(({ x, y, width, size, bar }) => ({
    left: bar?.x ?? x,
    right: bar ? bar.x + bar.width : x + width,
    top: y - (bar ? BAR.above : 0.72) * size,
    foot: bar ? y + (BAR.height - BAR.above) * size : y + 0.2 * size,
  }));
  const squares = [layout.code && withQuiet(layout.code), layout.flame].flatMap((square) => square ?? []);
  const blocks = squares.map(({ x, y, side }) => ({ left: x, right: x + side, top: y, foot: y + side }));
  const rings = layout.rings.map(({ x, y, width, height }) => ({
    left: x,
    right: x + width,
    top: y,
    foot: y + height,
  }));
  return { texts, blocks: [...blocks, ...rings] };
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
    rings: fc.integer({ min: 0, max: 4 }),
  })
  .map(({ code, rest, smell, ...others }): LabelContent => {
    const head = [span(code, 0, 'code', true), ...(smell ? [span('SMELL ONLY', 0, 'badge')] : [])];
    const named = rest.map((spans, i) => spans.map((one, k) => ({ ...one, what: `${one.what}, ${i}.${k}` }))); // each by a name of its own
    return { paragraphs: [head, ...named], ...others };
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
        expect(layout.rings.length).toBe(layout.leftOut.includes('the rings') ? 0 : content.rings);
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    ['HEX3', '0.1 %'],
    ['CARD', '1 % w/w'],
    ['GRAPEF', '0.05 %'],
    ['HEX3B', '250 mg/kg'],
  ])('of 15 × 6 mm still says %s, %s and SMELL ONLY whole, in capitals of 1.2 mm', (code, strength) => {
    const { texts, leftOut } = layoutLabel(vialLabel({ code, strength }), {
      widthMm: 15,
      heightMm: 6,
      dpi: 203,
      widthOf,
    });
    expect(texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')).toBe(`${code} ${strength} SMELL ONLY`);
    expect(leftOut).toContain('the name');
    expect(smallest(texts)).toBeGreaterThanOrEqual(1.2);
  });

  test('the flame is not said to be left out when the code alone makes room', () => {
    const content: LabelContent = {
      paragraphs: [[span('a', 0, 'code', true), span('SMELL ONLY', 0, 'badge')]],
      codeModules: 25,
      flame: true,
      rings: 0,
    };
    const layout = layoutLabel(content, { widthMm: 15, heightMm: 8.381999999915333, dpi: 300, widthOf });
    expect(layout.flame === null).toBe(layout.leftOut.includes('the flame'));
  });

  test('a word longer than the label is broken, not cut off', () => {
    const name = 'tetrahydromethylmethylpropenylpyran';
    const { texts, leftOut } = layoutLabel(
      {
        paragraphs: [[span('TMP', 0, 'code', true)], [{ ...span(name, 1), mayShorten: true }]],
        codeModules: null,
        flame: false,
        rings: 0,
      },
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

const SIZES = [
  [25, 15],
  [30, 20],
  [40, 12],
  [40, 30],
  [50, 25],
  [57, 32],
  [63.5, 38.1],
] as const;
const TAGS = [
  ['CARD', '1 %'],
  ['CARD', '0.1 %'],
  ['GRAPEF', '0.05 %'],
  ['HEX3B', '250 mg/kg'],
  ['GRAPEF', '0.05 % w/w'],
  ['CARD', 'neat'],
] as const;

/** Height of the capitals of a text, mm, by the metrics of its font. */
function capsOf({ size, face }: { size: number; face: LabelFace }): number {
  return size * capHeightOf(face);
}

function smallest(texts: LabelLayout['texts']): number {
  return Math.min(...texts.map(capsOf));
}

describe('what is read at arm’s length', () => {
  const layouts = [...SIZES.map((size) => [...size, 203] as const), [30, 20, 300] as const].flatMap(
    ([widthMm, heightMm, dpi]) =>
      TAGS.flatMap(([code, strength]) =>
        [true, false].map((smell) => ({
          of: `${code} ${strength}`,
          smell,
          layout: layoutLabel(vialLabel({ code, strength, smell }), { widthMm, heightMm, dpi, widthOf }),
        })),
      ),
  );
  const isHead = (layout: LabelLayout) => (text: LabelLayout['texts'][number]) => text.size === layout.headMm;

  test('code and strength are there in whole, in one size, and larger than all else', () => {
    for (const { of, layout } of layouts) {
      const large = layout.texts.filter(isHead(layout));
      expect(large.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')).toBe(of);
      for (const text of layout.texts.filter((other) => !isHead(layout)(other)))
        expect(text.size).toBeLessThanOrEqual(layout.headMm + 1e-9);
    }
  });

  test('their capitals are 3 mm high and more on 30 × 20 mm and on all that are larger', () => {
    for (const { of, layout } of layouts.filter(({ layout: { widthMm, heightMm } }) => widthMm >= 30 && heightMm >= 20))
      for (const text of layout.texts.filter(isHead(layout)))
        expect(`${of} ${capsOf(text) >= 3 - 1e-9}`).toBe(`${of} true`);
  });

  test('no capital of any text is lower than 1.2 mm', () => {
    for (const { layout } of layouts) expect(smallest(layout.texts)).toBeGreaterThanOrEqual(1.2);
    fc.assert(
      fc.property(someContent, someFrame, (content, frame) => {
        expect(smallest(layoutLabel(content, { ...frame, widthOf }).texts)).toBeGreaterThanOrEqual(1.2);
      }),
      { numRuns: 60 },
    );
  });

  test('SMELL ONLY is a bar as wide as the room beside code and flame, and never left out', () => {
    for (const { smell, layout } of layouts) {
      const bars = layout.texts.filter(({ bar }) => bar);
      expect(bars.map(({ text }) => text)).toEqual(smell ? ['SMELL ONLY'] : []);
      for (const { bar, x, width } of bars) {
        expect(bar!.x).toBeLessThan(x);
        expect(bar!.x + bar!.width).toBeGreaterThan(x + width);
      }
      const [bar] = bars;
      if (bar && !layout.flame && !layout.code) expect(bar.bar!.width).toBeCloseTo(layout.widthMm - 1.6, 6);
    }
  });

  test('what finds no room goes by the order that is stated', () => {
    const rank = (what: string) => rankOf(what.replace('the end of ', '') as LabelPart);
    for (const { layout } of layouts) {
      const texts = layout.leftOut.filter((what) => what !== 'the flame' && what !== 'the QR code');
      for (const what of texts) expect(LABEL_ORDER).toContain(what.replace('the end of ', ''));
      expect(texts.map(rank)).toEqual(texts.map(rank).sort((a, b) => b - a));
      expect(texts.length === 0 || texts[0] === 'the exact strength' || texts[0] === 'the solvent').toBe(true);
    }
  });

  test('code and day stay on 30 × 20 mm beside a name that is cut before them', () => {
    const name =
      'a base with a very long name, as bases have them, from three houses, a fourth by the sea, and two in the hills';
    const layout = layoutLabel(vialLabel({ code: 'LONG', strength: '0.01 %', name }), {
      widthMm: 30,
      heightMm: 20,
      dpi: 203,
      widthOf,
    });
    const words = layout.texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ');
    expect(words).toMatch(/^LONG 0\.01 % SMELL ONLY a base with .*…/);
    expect(words).toContain('made 2026-05-04');
    expect(layout.leftOut).toContain('the end of the name');
  });

  test('a ring for each tenfold step lies under the text, apart from the next', () => {
    for (const rings of [1, 2, 3, 4]) {
      const { rings: placed } = layoutLabel({ ...usual, rings }, { widthMm: 40, heightMm: 30, dpi: 203, widthOf });
      expect(placed).toHaveLength(rings);
      placed.slice(1).forEach(({ y }, i) => expect(y - placed[i]!.y - placed[i]!.height).toBeGreaterThanOrEqual(0.4));
    }
  });
});

/** The published sizes for "300 dpi" reckon with 12 dots to the mm, that is 304.8 dpi; at exactly 300 dpi (11.81) a code is 1.6 % larger. */
const printed = (dpi: number) => (dpi === 300 ? 12 * 25.4 : dpi);

describe('the code on a label', () => {
  test('has whole dots to a module, three at least, and begins on a dot', () => {
    fc.assert(
      fc.property(someFrame, fc.constantFrom(21, 25, 29), (frame, codeModules) => {
        for (const { code } of blocksFor(
          { paragraphs: [], codeModules, flame: false, rings: 0 },
          { ...frame, widthOf },
        )) {
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
    'at $dpi dpi with $dots dots, version $version takes $mm mm with its quiet zone (17 + 4 × version modules and four each side: ISO/IEC 18004)',
    ({ dpi, dots, version, mm, fits12mm }) => {
      const ways = (heightMm: number, at: number) =>
        blocksFor(
          { paragraphs: [], codeModules: 17 + 4 * version, flame: false, rings: 0 },
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
