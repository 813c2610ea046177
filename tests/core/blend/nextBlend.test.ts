import { describe, expect, test } from 'vitest';
import { beliefAfter } from '../../../src/core/blend/belief';
import { firstBlends } from '../../../src/core/blend/design';
import { repeatability, standing } from '../../../src/core/blend/nextBlend';
import { free, lattice } from '../../../src/core/blend/region';
import type { Judged } from '../../../src/core/blend/scheffe';
import { Refusal } from '../../../src/core/text/refusal';

/** A liking that is highest, 8, at 60 % of the first and 40 % of the second. */
function liking([a, b, c = 0]: readonly number[]): number {
  return 8 - 9 * ((a! - 0.6) ** 2 + (b! - 0.4) ** 2 + c ** 2);
}

function judgedExactly(parts: number, times = 1): Judged[] {
  const once = firstBlends(free(parts)).map((shares) => ({ shares, liking: liking(shares) }));
  return Array.from({ length: times }, () => once).flat();
}

describe('what is believed of blends', () => {
  test('after many exact likings the belief follows them, and is sure of them', () => {
    const judged = judgedExactly(3, 5);
    const belief = beliefAfter(judged);
    for (const { shares, liking } of judged) {
      const { value, uncertainty } = belief.at(shares);
      expect(Math.abs(value - liking)).toBeLessThan(0.35);
      expect(uncertainty).toBeLessThan(0.5);
    }
  });

  test('it is by hand the normal conditioned on one liking: pulled from the middle towards it, less sure further off', () => {
    const belief = beliefAfter([{ shares: [1, 0, 0], liking: 8 }]);
    const [near, far] = [belief.at([1, 0, 0]), belief.at([0, 1, 0])];
    expect(near.value).toBeGreaterThan(6);
    expect(near.value).toBeLessThan(8);
    expect(far.value).toBeLessThan(near.value);
    expect(far.value).toBeGreaterThan(5);
    expect(far.uncertainty).toBeGreaterThan(near.uncertainty);
    expect(belief.noise).toBeGreaterThan(0.7);
    expect(belief.noise).toBeLessThan(2);
  });

  test('a difference is surer than its two ends apart, and a blend differs from itself by nothing', () => {
    const belief = beliefAfter(judgedExactly(3));
    const [one, other] = [[0.6, 0.4, 0], [0.5, 0.5, 0]] as const; // prettier-ignore
    const apart = belief.between(one, other);
    expect(apart.value).toBeCloseTo(belief.at(one).value - belief.at(other).value, 9);
    expect(apart.uncertainty).toBeLessThan(Math.hypot(belief.at(one).uncertainty, belief.at(other).uncertainty));
    expect(belief.between(one, one)).toEqual({ value: 0, uncertainty: 0 });
  });

  test('expected improvement is never below 0, and largest where it is high or not known', () => {
    const belief = beliefAfter(judgedExactly(3));
    const all = lattice(free(3), 10);
    expect(Math.min(...all.map((shares) => belief.at(shares).gain))).toBeGreaterThanOrEqual(0);
    expect(belief.at([0.6, 0.4, 0]).gain).toBeGreaterThan(belief.at([0, 0, 1]).gain);
  });

  test('one more judgement tells less of a gain, the better a blend is known; never more than all of it', () => {
    const often = Array.from({ length: 20 }, () => ({ shares: [0.5, 0.5, 0], liking: 6 }));
    const belief = beliefAfter([...judgedExactly(3), ...often]);
    const part = (shares: number[]) => belief.at(shares).worth / belief.at(shares).gain;
    expect(part([0.5, 0.5, 0])).toBeLessThan(0.1);
    expect(part([0.75, 0.25, 0])).toBeGreaterThan(2 * part([0.5, 0.5, 0]));
    for (const shares of lattice(free(3), 6)) {
      const { gain, worth } = belief.at(shares);
      expect(worth).toBeGreaterThanOrEqual(0);
      expect(worth).toBeLessThanOrEqual(gain);
    }
  });

  test('no likings, or one that is no number, are refused', () => {
    expect(() => beliefAfter([])).toThrow(Refusal);
    expect(() => beliefAfter([{ shares: [1, 0], liking: NaN }])).toThrow('needs its liking');
  });
});

describe('which blend next', () => {
  test('the same likings give the same proposal, among the blends that can be made', () => {
    const candidates = lattice(free(3), 6);
    const first = standing(judgedExactly(3), candidates);
    expect(standing(judgedExactly(3), candidates).next).toEqual(first.next);
    expect(candidates).toContain(first.next);
    const worth = (shares: readonly number[]) => first.belief.at(shares).worth;
    expect(worth(first.next)).toBe(Math.max(...candidates.map(worth)));
    expect(first.gain).toBe(first.belief.at(first.next).gain);
    expect(Math.hypot(first.best.shares[0]! - 0.6, first.best.shares[1]! - 0.4)).toBeLessThan(0.25);
  });

  test('the best and its rival are told apart by twice their error, and not by less', () => {
    const candidates = lattice(free(2), 10);
    const little = standing(judgedExactly(2).slice(0, 3), candidates);
    expect(little.toldApart).toBe(false);
    expect(little.enough).toBeNull();
    const much = standing(judgedExactly(2, 6), [[0.6, 0.4], [0, 1]]); // prettier-ignore
    expect(much.lead!.value).toBeGreaterThan(2 * much.lead!.uncertainty);
    expect(much.toldApart).toBe(true);
    expect(much.runnerUp!.shares).toEqual([0, 1]);
  });

  test('it ends where little is to be gained, and after thirty in any case', () => {
    const flat = Array.from({ length: 12 }, () => firstBlends(free(2)).map((shares) => ({ shares, liking: 6 }))).flat();
    expect(standing(flat, lattice(free(2), 10)).enough).toBe('little to gain');
    expect(standing(judgedExactly(2, 12), [[0.5, 0.5], [0, 1]]).enough).toBe('clear'); // prettier-ignore
    const unsure = Array.from({ length: 30 }, (_, i) => ({ shares: [0.5, 0.5], liking: i % 2 ? 9 : 1 }));
    expect(standing(unsure, lattice(free(2), 10)).enough).toBe('many');
  });

  test('with one blend there is no rival, and without one nothing to choose', () => {
    const only = standing(judgedExactly(2), [[0.5, 0.5]]);
    expect([only.runnerUp, only.lead, only.toldApart]).toEqual([null, null, false]);
    expect(() => standing(judgedExactly(2), [])).toThrow('no blend to choose from');
  });

  test('how well a nose repeats comes from repeats alone: 6 and 8 of one blend are an SD of √2', () => {
    expect(repeatability(judgedExactly(3))).toBeNull();
    const twice = [...judgedExactly(2), { shares: [0.5, 0.5], liking: liking([0.5, 0.5]) - 2 }];
    expect(repeatability(twice)!.sd).toBeCloseTo(Math.SQRT2, 12);
    expect(repeatability(twice)!.freedom).toBe(1);
  });
});
