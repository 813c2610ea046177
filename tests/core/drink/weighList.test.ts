import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rescueList, weighList } from '../../../src/core/drink/weighList';
import { smallestMass } from '../../../src/core/dilution/smallestMass';
import { gram } from '../../../src/core/number/units';
import minimum from '../../reference/minimumWeight.json';

const parts = [
  { id: 'linalool', mass: gram(12) },
  { id: 'citral', mass: gram(3) },
  { id: 'damascenone', mass: gram(0.02) },
  { id: 'carrier', mass: gram(85) },
];
const least = smallestMass({ readability: gram(0.01), repeatability: gram(0) }, 0.01); // 0.82 g

describe('the weigh list', () => {
  test('the smallest amounts of the published rule are those of our scale (USP <41> and looser)', () => {
    for (const row of minimum.rows.filter(({ id }) => id.startsWith('min_'))) {
      const { d_g, tol_pct } = row.inputs as { d_g: number; tol_pct: number };
      const got = smallestMass({ readability: gram(d_g), repeatability: gram(0) }, tol_pct / 100);
      expect(got / (row.value as number), row.id).toBeCloseTo(1, 9);
    }
  });

  test('goes from small to large, the carrier last, because what went over is cured by what is still to come', () => {
    const { steps } = weighList(parts, 'carrier', { least: gram(0.001) });
    expect(steps.map(({ id }) => id)).toEqual(['damascenone', 'citral', 'linalool', 'carrier']);
  });

  test('volatile material comes after the carrier', () => {
    const { steps } = weighList(parts, 'carrier', { least: gram(0.001), volatile: ['citral'] });
    expect(steps.map(({ id }) => id)).toEqual(['damascenone', 'linalool', 'carrier', 'citral']);
  });

  test('0.02 g on a 0.01 g scale is thinned to 2 % and weighed as 1 g; the carrier gives what the stock brings', () => {
    const { steps } = weighList(parts, 'carrier', { least });
    const [thinned] = steps;
    expect(thinned!.diluted!.strength).toBe(0.02);
    expect(thinned!.mass).toBeCloseTo(1, 12);
    expect(thinned!.diluted!.neat).toBeGreaterThanOrEqual(least * (1 - 1e-12));
    expect(steps.at(-1)!.mass).toBeCloseTo(85 - 0.98, 12);
  });

  test('what 1 % does not bring over is not thinned: 1 mg on that scale would be a stock of 8 kg', () => {
    const lines = [
      { id: 'a', mass: gram(0.001) },
      { id: 'carrier', mass: gram(100) },
    ];
    expect(weighList(lines, 'carrier', { least }).steps[0]).toMatchObject({ enough: false, diluted: null });
    const enough = [{ id: 'a', mass: gram(0.0083) }, lines[1]!];
    expect(weighList(enough, 'carrier', { least }).steps[0]!.diluted!.strength).toBe(0.01);
  });

  test('a stock is made large enough to draw from: 0.8 g at 50 % needs 1.6 g out of at least 1.78 g', () => {
    const lines = [
      { id: 'a', mass: gram(0.8) },
      { id: 'carrier', mass: gram(10) },
    ];
    const { diluted: thinned, mass } = weighList(lines, 'carrier', { least }).steps[0]!;
    expect(mass).toBeCloseTo(1.6, 12);
    expect(thinned!.neat + thinned!.carrier).toBeCloseTo(1.6 / 0.9, 9);
  });

  test('with no carrier left to thin with it says so instead of pretending', () => {
    const { steps } = weighList(
      [
        { id: 'a', mass: gram(0.02) },
        { id: 'carrier', mass: gram(0.1) },
      ],
      'carrier',
      { least },
    );
    expect(steps[0]).toMatchObject({ id: 'a', enough: false, diluted: null, mass: 0.02 });
    expect(() => weighList(parts, 'carrier', { least: gram(0) })).toThrow('above 0 g');
  });

  test('mass and every neat amount are conserved, whatever has to be thinned', () => {
    const amounts = fc.array(fc.double({ min: 1e-4, max: 20, noNaN: true }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(amounts, fc.double({ min: 0, max: 200, noNaN: true }), (masses, carrier) => {
        const lines = masses.map((mass, i) => ({ id: String(i), mass: gram(mass) }));
        const { steps } = weighList([...lines, { id: 'carrier', mass: gram(carrier) }], 'carrier', { least });
        const on = steps.reduce((sum, step) => sum + step.mass, 0);
        expect(on).toBeCloseTo(
          masses.reduce((sum, mass) => sum + mass, carrier),
          8,
        );
        for (const step of steps.filter(({ id }) => id !== 'carrier')) {
          expect(step.neat).toBe(masses[Number(step.id)]);
          expect(step.mass * (step.diluted?.strength ?? 1)).toBeCloseTo(step.neat, 10);
          expect(step.mass).toBeGreaterThan(0);
          if (step.diluted)
            expect(step.mass).toBeLessThanOrEqual((step.diluted.neat + step.diluted.carrier) * 0.9 * (1 + 1e-9));
        }
      }),
    );
  });
});

describe('one went over', () => {
  const list = weighList(parts, 'carrier', { least: gram(0.001) });

  test('nothing over, nothing to rescue', () => {
    expect(rescueList(list, [{ id: 'citral', mass: gram(3) }])).toBeNull();
    expect(rescueList(list, [])).toBeNull();
  });

  test('3.3 g of citral instead of 3: everything times 1.1 brings every share back', () => {
    const rescue = rescueList(list, [
      { id: 'damascenone', mass: gram(0.02) },
      { id: 'citral', mass: gram(3.3) },
    ])!;
    expect(rescue.id).toBe('citral');
    expect(rescue.factor).toBeCloseTo(1.1, 12);
    const add = Object.fromEntries(rescue.add.map(({ id, mass }) => [id, mass]));
    expect(add['damascenone']).toBeCloseTo(0.002, 12);
    expect(add['citral']).toBeCloseTo(0, 12);
    expect(add['linalool']).toBeCloseTo(13.2, 12);
  });

  test('or it is kept: citral is then 9.7 % over its share, the rest 0.3 % under', () => {
    const { keep } = rescueList(list, [{ id: 'citral', mass: gram(3.3) }])!;
    const error = Object.fromEntries(keep.map(({ id, error: e }) => [id, e]));
    expect(error['citral']).toBeCloseTo((1.1 * 100.02) / 100.32 - 1, 12);
    expect(error['linalool']).toBeCloseTo(100.02 / 100.32 - 1, 12);
  });

  test('after the rescue every share is as planned, whatever was weighed', () => {
    const over = fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(over, (ratios) => {
        const weighed = list.steps.map((step, i) => ({ id: step.id, mass: gram(step.mass * ratios[i]!) }));
        const rescue = rescueList(list, weighed);
        if (!rescue) return;
        list.steps.forEach((step, i) => {
          const whole = weighed[i]!.mass + rescue.add[i]!.mass;
          expect(whole / step.mass).toBeCloseTo(rescue.factor, 9);
          expect(rescue.add[i]!.mass).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });
});
