import { describe, expect, test } from 'vitest';
import { aged, mostLost, strongerBy } from '../../../src/core/dilution/ageing';
import { measured, standardUncertainty, times } from '../../../src/core/number/measured';
import { closings } from '../../../src/tables/closings';
import { seeded } from '../seeded';

const of = (value: number, u: number, id: string) => measured(value, u, { id, words: id });

describe('what may have evaporated', () => {
  const vial = { closing: closings['dropper cap'], years: 0, openings: 0, massG: 8 };

  test('nothing on the day it was made; 15 % in a year under a dropper cap, 4 % under a lined one', () => {
    expect(mostLost(vial)).toBe(0);
    expect(mostLost({ ...vial, years: 1 })).toBe(0.15);
    expect(mostLost({ ...vial, years: 0.5, closing: closings['lined cap'] })).toBeCloseTo(0.02, 12);
  });

  test('a hundred openings of 8 g are 0.45 g, 5.6 %; it is never more than one half, and never less than nothing', () => {
    expect(mostLost({ ...vial, openings: 100 })).toBeCloseTo(0.45 / 8, 12);
    expect(mostLost({ ...vial, years: 20 })).toBe(0.5);
    expect(mostLost({ ...vial, years: -1 })).toBe(0);
  });

  test('its part in the ± is what drawing losses from 0 to the most gives about the strength as made (Monte Carlo)', () => {
    const strength = of(0.01, 0.0001, 'making');
    const now = aged(strength, 0.15, 'v');
    expect(now.value).toBe(0.01);
    const random = seeded(9);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const off = Array.from({ length: 40_000 }, () => (0.01 + 0.0001 * normal()) * (1 + 0.15 * random()) - 0.01);
    const rms = Math.sqrt(off.reduce((sum, x) => sum + x * x, 0) / off.length);
    expect(Math.abs(standardUncertainty(now) / rms - 1)).toBeLessThan(0.02);
    expect(now.sources.at(-1)!.id).toBe('age:v');
  });
});

describe('what the weighing says', () => {
  test('1.000 % at 10.0 g, now 9.3 g with nothing taken, is 1.075 %', () => {
    const stronger = strongerBy(of(10, 0.01, 'then'), of(9.3, 0.01, 'now'))!;
    expect(times(of(1, 0, 'w'), stronger).value).toBeCloseTo(1.0753, 4);
  });

  test('less missing than the weighing tells is nothing, and so is more than there should be', () => {
    expect(strongerBy(of(10, 0.1, 'then'), of(9.75, 0.1, 'now'))).toBeNull(); // 0.25 g, u 0.14 g
    expect(strongerBy(of(10, 0.1, 'then'), of(9.65, 0.1, 'now'))).not.toBeNull();
    expect(strongerBy(of(10, 0.01, 'then'), of(10.3, 0.01, 'now'))).toBeNull();
    expect(strongerBy(of(10, 0.01, 'then'), of(0, 0.01, 'now'))).toBeNull();
  });

  test('what both share cancels: two weighings on the same vial know the loss better than what was in it', () => {
    const made = of(10, 0.5, 'made');
    const found = { value: 9.3, sources: [...made.sources, { id: 'scale', words: 'scale', u: 0.004 }] };
    expect(strongerBy(made, found)).not.toBeNull();
  });
});
