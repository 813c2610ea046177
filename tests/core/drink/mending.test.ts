import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CORRECTED, isOff, mendingOf, type Corrected, type DrinkNow } from '../../../src/core/drink/mending';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';

const drink = (mass: number, shares: Partial<Record<Corrected, number>>): DrinkNow => ({
  mass: exact(mass),
  shares: Object.fromEntries(CORRECTED.map((id) => [id, exact(shares[id] ?? 0)])) as DrinkNow['shares'],
});

/** The same by a linear system: unknown are water, what is added of each, and the drink; solved by Gauss with pivots. */
function bySystem(
  now: DrinkNow,
  targets: Partial<Record<Corrected, number>>,
  spirit: number,
  most: Corrected | 'water',
) {
  const wanted = CORRECTED.filter((id) => targets[id] !== undefined);
  const n = wanted.length + 2; // adds, water, drink
  const [water, whole] = [wanted.length, wanted.length + 1];
  const rows = wanted.map((id, i) => {
    const row = Array<number>(n + 1).fill(0);
    row[i] = id === 'ethanol' ? spirit : 1;
    row[whole] = -targets[id]!;
    row[n] = -now.mass.value * now.shares[id].value;
    return row;
  });
  const sum = Array<number>(n + 1).fill(1);
  sum[whole] = -1;
  sum[n] = -now.mass.value;
  const none = Array<number>(n + 1).fill(0);
  none[most === 'water' ? water : wanted.indexOf(most)] = 1;
  const found = solve([...rows, sum, none]);
  return {
    water: found[water]!,
    mass: found[whole]!,
    adds: Object.fromEntries(wanted.map((id, i) => [id, found[i]!])),
  };
}

function solve(rows: number[][]): number[] {
  const n = rows.length;
  for (let i = 0; i < n; i++) {
    const pivot = rows
      .slice(i)
      .reduce((best, _, k) => (Math.abs(rows[i + k]![i]!) > Math.abs(rows[best]![i]!) ? i + k : best), i);
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const factor = rows[k]![i]! / rows[i]![i]!;
      for (let j = i; j <= n; j++) rows[k]![j]! -= factor * rows[i]![j]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}

describe('what brings a drink back', () => {
  test('too sweet takes water, and the rest follows', () => {
    const now = drink(20_000, { sugar: 0.074, acid: 0.002 });
    const { water, adds, shares } = mendingOf(now, { sugar: 0.07 });
    expect(water.value).toBeCloseTo(20_000 * (7.4 / 7 - 1), 6);
    expect(adds).toEqual({ sugar: expect.objectContaining({ value: 0 }) });
    expect(shares.acid).toBeCloseTo((0.002 * 7) / 7.4, 12);
  });

  test('not sweet enough takes sugar alone: Pearson’s square', () => {
    const { water, adds } = mendingOf(drink(1000, { sugar: 0.06 }), { sugar: 0.07 });
    expect(water.value).toBeCloseTo(0, 9);
    expect(adds.sugar!.value).toBeCloseTo((1000 * (7 - 6)) / (100 - 7), 9);
  });

  test('too little alcohol takes spirit, whose water counts', () => {
    const { water, adds, mass } = mendingOf(drink(1000, { ethanol: 0.15 }), { ethanol: 0.16 }, 0.92);
    expect(water.value).toBeCloseTo(0, 9);
    expect(adds.ethanol!.value).toBeCloseTo((1000 * (16 - 15)) / (92 - 16), 9);
    expect((150 + 0.92 * adds.ethanol!.value) / mass.value).toBeCloseTo(0.16, 12);
  });

  test('a spirit that is weaker than the drink, and alcohol that cannot be taken out, are refused', () => {
    expect(() => mendingOf(drink(1000, { ethanol: 0.3 }), { ethanol: 0.4 }, 0.35)).toThrow('the spirit is too weak');
    expect(() => mendingOf(drink(1000, { ethanol: 0.01 }), { ethanol: 0 })).toThrow('cannot be taken out');
  });

  test('over random drinks it hits every target, adds nothing negative, closes its mass, and agrees with a linear system', () => {
    const share = (most: number) => fc.double({ min: 0.0005, max: most, noNaN: true });
    const shares = fc.record({ sugar: share(0.3), ethanol: share(0.2), acid: share(0.02), concentrate: share(0.01) });
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 1e6, noNaN: true }),
        shares,
        shares,
        fc.subarray([...CORRECTED], { minLength: 1 }),
        (mass, is, want, held) => {
          const now = drink(mass, is);
          const targets = Object.fromEntries(held.map((id) => [id, want[id]]));
          const found = mendingOf(now, targets, 0.92);
          const grams = (id: Corrected) => (found.adds[id]?.value ?? 0) * (id === 'ethanol' ? 0.92 : 1);
          for (const id of held) expect((mass * is[id] + grams(id)) / found.mass.value).toBeCloseTo(want[id], 9);
          const adds = Object.values(found.adds).map(({ value }) => value);
          for (const one of [...adds, found.water.value]) expect(one).toBeGreaterThan(-1e-6 * mass);
          expect(mass + found.water.value + adds.reduce((sum, one) => sum + one, 0)).toBeCloseTo(found.mass.value, 4);
          const again = bySystem(now, targets, 0.92, found.most);
          expect(again.water / mass).toBeCloseTo(found.water.value / mass, 9);
          for (const id of held) expect(again.adds[id]! / mass).toBeCloseTo(found.adds[id]!.value / mass, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('its ± is that of the reading: the slope of the water is M over the target', () => {
    const source = { id: 'r', words: 'refractometer' };
    const now = { ...drink(20_000, {}), shares: { ...drink(1, {}).shares, sugar: measured(0.074, 0.001, source) } };
    const { water } = mendingOf(now, { sugar: 0.07 });
    expect(standardUncertainty(water)).toBeCloseTo((20_000 / 0.07) * 0.001, 2);
    expect(isOff(now.shares.sugar, 0.07)).toBe(true);
    expect(isOff(now.shares.sugar, 0.0725)).toBe(false);
  });
});
