import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intermediate, ladder } from '../../../src/core/dilution/intermediate';
import { dilutionOf, dropsFor, fillFor, rescue, solventForDrops } from '../../../src/core/dilution/dilution';
import {
  budget,
  exact,
  measured,
  over,
  plus,
  scaled,
  standardUncertainty,
  times,
} from '../../../src/core/number/measured';
import { purityAtLeast } from '../../../src/core/liquid/strength';
import { gram, gramPerMl, massFraction, millilitre } from '../../../src/core/number/units';
import { relativeUncertainty } from '../uncertainty';

/** Net mass on a scale of division d with repeatability s: two readings, d/√6 (GUM F.2.2.1), and s. */
function weighed(grams: number, d: number, s: number, id: string) {
  return plus(
    measured(grams, d / Math.sqrt(6), { id: `${id} readability`, words: 'readability' }),
    measured(0, s, { id: `${id} repeatability`, words: 'repeatability' }),
  );
}

describe('the true strength of what was put in', () => {
  test('a weighed 0.100 g on a 0.01 g scale is uncertain by 4.08 % from its readability alone (GUM F.2.2.1)', () => {
    const net = weighed(0.1, 0.01, 0, 'net');
    expect(standardUncertainty(net)).toBeCloseTo(0.0040825, 7);
    expect(relativeUncertainty(net)).toBeCloseTo(0.040825, 6);
  });

  // The published form is (1 − m/M)·u1/m for the material and u2/M for the solvent, QUAM:2012; figures computed apart.
  test.each([
    [0.1, 10, 0.01, 0.01, 0.01, 0.106938],
    [0.1, 10, 0.001, 0.001, 0.01, 0.0106938],
    [0.5, 5, 0.01, 0.01, 0.1, 0.0195619],
  ])('%d g in %d g on a scale of d = %d g, s = %d g is w = %d, uncertain by %d of it', (m, M, d, s, w, relative) => {
    const material = { mass: weighed(m, d, s, 'material'), strength: exact(1) };
    const made = dilutionOf([material], weighed(M - m, d, s, 'solvent'));
    expect(made.strength.value).toBeCloseTo(w, 12);
    expect(relativeUncertainty(made.strength)).toBeCloseTo(relative, 6);
  });

  test('a calibration standard: c = 1002.69972 mg/L, u = 0.8351992 mg/L unrounded (QUAM:2012 A1, which prints 1002.7 and 0.9 from rounded inputs)', () => {
    const volume = plus(
      measured(100, 0.1 / Math.sqrt(6), { id: 'flask glass', words: 'tolerance of the glass, triangular' }),
      measured(0, 0.02, { id: 'flask filling', words: 'filling to the mark' }),
      measured(0, (100 * 2.1e-4 * 4) / Math.sqrt(3), { id: 'flask temperature', words: 'room ± 4 K, rectangular' }),
    );
    expect(standardUncertainty(volume)).toBeCloseTo(0.0664731, 7);
    const mass = measured(100.28, 0.05, { id: 'm', words: 'm' }); // mg
    const c = scaled(over(times(mass, purityAtLeast(99.98, { id: 'P', words: 'purity' })), volume), 1000); // mg/L
    expect(c.value).toBeCloseTo(1002.69972, 5);
    expect(standardUncertainty(c)).toBeCloseTo(0.8351992, 6);
    const flask = Math.hypot(...budget(c).flatMap(({ id, u }) => (id.startsWith('flask') ? [u] : [])));
    const part = (id: string) => budget(c).find((line) => line.id === id)!.u;
    expect(flask).toBeCloseTo(0.666525, 5);
    expect(part('m')).toBeCloseTo(0.49995, 5);
    expect(part('P')).toBeCloseTo(0.0578967, 6);
    console.info(
      `QUAM A1: c ${c.value.toFixed(5)}, u ${standardUncertainty(c).toFixed(7)} (published 1002.69972, 0.8351992)`,
    );
  });

  test('what goes in is what is there: mass is conserved and no dilution is stronger than its strongest part', () => {
    const part = fc.record({
      mass: fc.double({ min: 0, max: 10, noNaN: true }),
      strength: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(part, { maxLength: 5 }),
        fc.double({ min: 0.001, max: 30, noNaN: true }),
        (parts, solvent) => {
          const made = dilutionOf(
            parts.map(({ mass, strength }) => ({ mass: exact(mass), strength: exact(strength) })),
            exact(solvent),
          );
          expect(made.mass.value).toBeCloseTo(solvent + parts.reduce((sum, { mass }) => sum + mass, 0), 9);
          expect(made.strength.value * made.mass.value).toBeCloseTo(made.active.value, 9);
          expect(made.strength.value).toBeGreaterThanOrEqual(0);
          expect(made.strength.value).toBeLessThanOrEqual(Math.max(0, ...parts.map(({ strength }) => strength)));
        },
      ),
    );
  });

  test('an empty vial, a negative mass and 1000 % are refused', () => {
    expect(() => dilutionOf([], exact(0))).toThrow('nothing in the vial');
    expect(() => dilutionOf([{ mass: exact(-1), strength: exact(1) }], exact(1))).toThrow('zero or more, not -1 g');
    expect(() => dilutionOf([{ mass: exact(1), strength: exact(10) }], exact(1))).toThrow('not 1000 %');
  });
});

describe('drops for a target', () => {
  const source = { mgPerDrop: 20, purity: massFraction(1) };

  test('0.7 % in 11.35 g takes exactly 4 drops of 20 mg, and the solvent for 4 drops is 11.35 g', () => {
    const target = massFraction(0.08 / (0.08 + 11.35));
    const found = dropsFor({ target, solvent: gram(11.35), ...source });
    expect(found.exactDrops).toBeCloseTo(4, 9);
    expect(found.drops).toBe(4);
    expect(found.error).toBeCloseTo(0, 12);
    expect(solventForDrops({ target, drops: 4, ...source })).toBeCloseTo(11.35, 9);
  });

  test('drops are whole, one or more, and no other whole number is nearer to the target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.double({ min: 5, max: 60, noNaN: true }),
        (w, solvent, mgPerDrop) => {
          const target = massFraction(w);
          const found = dropsFor({ target, solvent: gram(solvent), mgPerDrop, purity: massFraction(0.98) });
          const strengthOf = (n: number) => (n * mgPerDrop * 0.98) / (n * mgPerDrop + solvent * 1000);
          expect(Number.isInteger(found.drops) && found.drops >= 1).toBe(true);
          expect(found.strength).toBeCloseTo(strengthOf(found.drops), 12);
          expect(found.error).toBeCloseTo(strengthOf(found.drops) / w - 1, 8);
          for (const n of [found.drops - 1, found.drops + 1].filter((n) => n > 0))
            expect(Math.abs(strengthOf(n) - w)).toBeGreaterThanOrEqual(Math.abs(found.strength - w) - 1e-12);
        },
      ),
    );
  });

  test('solvent made for whole drops needs just those drops', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.double({ min: 1e-4, max: 0.9, noNaN: true }), (drops, w) => {
        const target = massFraction(w);
        const solvent = solventForDrops({ target, drops, ...source });
        expect(dropsFor({ target, solvent, ...source }).exactDrops / drops).toBeCloseTo(1, 9);
      }),
    );
  });

  test('five drops instead of four: the rescue brings the vial back to the strength wanted', () => {
    const made = dilutionOf([{ mass: exact(5 * 0.02), strength: exact(1) }], exact(11.35));
    const target = massFraction(0.08 / 11.43);
    const { add, addVolume, total } = rescue(made, target, gramPerMl(0.80742));
    expect(made.strength.value * 100).toBeCloseTo(0.8734, 4);
    expect(total * target).toBeCloseTo(0.1, 12);
    expect(addVolume * 0.80742).toBeCloseTo(add, 12);
    expect(dilutionOf([{ mass: made.mass, strength: made.strength }], exact(add)).strength.value).toBeCloseTo(
      target,
      12,
    );
  });

  test('what cannot be is refused in one sentence', () => {
    const target = massFraction(0.01);
    expect(() => dropsFor({ target: massFraction(1), solvent: gram(1), ...source })).toThrow('cannot be made from it');
    expect(() => dropsFor({ target: massFraction(0), solvent: gram(1), ...source })).toThrow('above zero');
    expect(() => dropsFor({ target, solvent: gram(0), ...source })).toThrow('more than 0 g');
    expect(() => dropsFor({ target, solvent: gram(1), mgPerDrop: 0, purity: massFraction(1) })).toThrow(
      'more than 0 mg',
    );
    expect(() => solventForDrops({ target, drops: -4, ...source })).toThrow('whole and one or more, not -4');
    expect(() => solventForDrops({ target, drops: 1.5, ...source })).toThrow('not 1.5');
    const weak = dilutionOf([{ mass: exact(0.1), strength: exact(1) }], exact(99));
    expect(() => rescue(weak, target, gramPerMl(0.8))).toThrow('add drops, not solvent');
    expect(() => fillFor(millilitre(0))).toThrow('more than 0 mL');
  });

  test('a vial is filled to its nominal volume, and never above nine tenths of brimful (common practice, no source)', () => {
    expect(fillFor(millilitre(15))).toBe(15);
    expect(fillFor(millilitre(15), millilitre(18))).toBe(15);
    expect(fillFor(millilitre(15), millilitre(15))).toBeCloseTo(13.5, 12);
  });
});

describe('the bridge between', () => {
  const drops = (n: number) => gram(n * 0.02);

  test('the ladder goes 50, 20, 10, 5 % … and stays strictly between', () => {
    expect(ladder(massFraction(1), massFraction(0.01))).toEqual([0.5, 0.2, 0.1, 0.05, 0.02]);
    expect(ladder(massFraction(0.1), massFraction(0.1))).toEqual([]);
  });

  test('0.1 % by drops goes over 5 %: 12.5 drops’ worth of neat, then 10 of the bridge, instead of half a drop', () => {
    const found = intermediate({
      target: massFraction(0.001),
      purity: massFraction(1),
      batch: gram(10),
      bridgeBatch: gram(5),
      leastSource: drops(3),
      leastBridge: drops(3),
    })!;
    expect(found.first.strength).toBe(0.05);
    expect(found.first.source).toBeCloseTo(12.5 * 0.02, 12);
    expect(found.second.source).toBeCloseTo(10 * 0.02, 12);
  });

  test('both steps reach their strengths with enough in each transfer, or there is no such bridge', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 0.05, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0.005, max: 1, noNaN: true }),
        (target, purity, least) => {
          const [batch, bridgeBatch] = [gram(12), gram(8)];
          const sizes = { batch, bridgeBatch, leastSource: gram(least), leastBridge: gram(least) };
          const found = intermediate({ target: massFraction(target), purity: massFraction(purity), ...sizes });
          const possible = ladder(massFraction(purity), massFraction(target)).filter((w) => {
            const [first, second] = [(bridgeBatch * w) / purity, (batch * target) / w];
            return Math.min(first, second) >= least && second <= 0.9 * bridgeBatch;
          });
          expect(found === null).toBe(possible.length === 0);
          if (!found) return;
          expect((found.first.source * purity) / bridgeBatch).toBeCloseTo(found.first.strength, 12);
          expect((found.second.source * found.first.strength) / batch).toBeCloseTo(target, 12);
          expect(Math.min(found.first.source, found.second.source)).toBeGreaterThanOrEqual(least);
        },
      ),
    );
  });
});
