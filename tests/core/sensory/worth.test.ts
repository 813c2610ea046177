import { describe, expect, test } from 'vitest';
import { worth, type Try } from '../../../src/core/sensory/worth';
import reference from '../../reference/preference.json';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

const example = reference.ridge_main_plus_pair_example;
const tries: Try[] = example.tries.map((vials, i) => ({ vials, liking: example.score[i]! }));

/** One simulated bench: parts of SD 1, pairs (0,1) and (2,3) good by 2, (4,5) bad by 2, noise of SD 1. */
function bench(v: number, count: number, random: () => number): Try[] {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const parts = Array.from({ length: v }, normal);
  return Array.from({ length: count }, () => {
    const left = Array.from({ length: v }, (_, i) => i);
    const three = Array.from({ length: 3 }, () => left.splice(Math.floor(random() * left.length), 1)[0]!);
    const both = (a: number, b: number) => (three.includes(a) && three.includes(b) ? 2 : 0);
    const liking = three.reduce((sum, i) => sum + parts[i]!, 0) + both(0, 1) + both(2, 3) - both(4, 5) + normal();
    return { vials: three.map((i) => `${i}`), liking };
  });
}

describe('worth of vials and pairs', () => {
  test('five vials in ten pairs: all fifteen parts of an independent ridge fit', () => {
    const { mean, byVial, byPair } = worth(tries);
    expect(mean).toBeCloseTo(example.mean_score, 12);
    let worst = 0;
    for (const part of byVial) worst = Math.max(worst, Math.abs(part.worth - example.coef_main[part.vials[0] as 'A']));
    for (const part of byPair)
      worst = Math.max(worst, Math.abs(part.worth - example.coef_pair[part.vials.join('') as 'AB']));
    console.info(`ridge parts, 15 worked values: worst ${worst.toExponential(1)}`);
    expect(byVial).toHaveLength(5);
    expect(byPair).toHaveLength(10);
    expect(worst).toBeLessThan(0.5001e-6);
  });

  test('the left-out error in closed form, for nine shrinkages of the same example', () => {
    for (const [held, error] of Object.entries(example.loo_mse)) {
      const [vial, pair] = held.split(',').map(Number) as [number, number];
      expect(worth(tries, { vial, pair }).leftOutError).toBeCloseTo(error, 10);
    }
  });

  test('the left-out error is what comes of leaving each try out in turn', () => {
    const misses = tries.map((one, i) => {
      const others = tries.filter((_, j) => j !== i);
      const { mean, byVial, byPair } = worth(others);
      const share = (vials: readonly string[]) =>
        others.filter((t) => vials.every((v) => t.vials.includes(v))).length / others.length;
      const predicted = [...byVial, ...byPair].reduce(
        (sum, part) =>
          sum + part.worth * ((part.vials.every((v) => one.vials.includes(v)) ? 1 : 0) - share(part.vials)),
        mean,
      );
      return (predicted - one.liking) ** 2;
    });
    expect(worth(tries).leftOutError).toBeCloseTo(misses.reduce((a, b) => a + b) / misses.length, 10);
  });

  test('the ridge example printed with scikit-learn: both parts 0.34545455, intercept 0.13636', () => {
    const { y, published, alpha } = reference.ridge_check;
    const three = [['Z'], ['Z'], ['Z', 'A', 'B']].map((vials, i) => ({ vials, liking: y[i]! }));
    const { mean, byVial } = worth(three, { vial: alpha, pair: 1e12 });
    const of = (vial: string) => byVial.find((part) => part.vials[0] === vial)!.worth;
    expect(of('A')).toBeCloseTo(published.coef[0]!, 8);
    expect(of('B')).toBeCloseTo(published.coef[1]!, 8);
    expect(of('Z')).toBeCloseTo(0, 12); // was in every try: nothing can be said of it
    expect(mean - (of('A') + of('B')) / 3).toBeCloseTo(published.intercept, 5);
  });

  test('a hint on vials waits for 15 tries, one on pairs for four tries a vial and one a pair', () => {
    const random = seeded(8);
    const eight = bench(8, 40, random);
    expect(worth(eight.slice(0, 14)).vialsReady).toBe(false);
    expect(worth(eight.slice(0, 31)).pairsReady).toBe(false);
    const all = worth(eight);
    expect([all.vialsReady, all.pairsReady]).toEqual([true, true]);
    expect(worth(bench(12, 65, random)).pairsReady).toBe(false);
    expect(worth(bench(12, 66, random)).pairsReady).toBe(true);
  });

  test('liking by a die brings a hint in at most 5 % of the benches', () => {
    const random = seeded(6);
    for (const [v, count] of [
      [6, 15],
      [8, 20],
      [8, 32],
    ] as const) {
      let hints = 0;
      for (let game = 0; game < 200; game++)
        if (worth(bench(v, count, random).map(({ vials }) => ({ vials, liking: random() }))).vialsReady) hints++;
      console.info(`worth by a die, ${count} tries of ${v} vials: a hint in ${hints} of 200 benches`);
      expect(hints / 200).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / 200));
    }
  });

  test('the first pair is truly a good one in about half the benches after 15 tries of 8 vials, two of three after 30', () => {
    // An earlier study of 300 benches gave 0.48 and 0.78. Ours of 800 gives 0.48 and 0.68; the second is the lower and is
    // the one we say. Both are compared within four standard errors of the 200 played here.
    const random = seeded(78);
    const share = (v: number, count: number) => {
      let good = 0;
      for (let game = 0; game < 200; game++)
        if (['0,1', '2,3'].includes(worth(bench(v, count, random)).byPair[0]!.vials.join())) good++;
      return good / 200;
    };
    const [few, enough] = [share(8, 15), share(8, 30)];
    console.info(`first pair truly good, 8 vials: ${few} after 15 tries (0.48), ${enough} after 30 (0.68; study 0.78)`);
    expect(Math.abs(few - 0.48)).toBeLessThan(4 * Math.sqrt((0.48 * 0.52) / 200));
    expect(Math.abs(enough - 0.68)).toBeLessThan(4 * Math.sqrt((0.68 * 0.32) / 200));
  });

  test('the uncertainty covers what is true: parts lie within two of them in about 95 %', () => {
    const random = seeded(95);
    let [inside, all] = [0, 0];
    for (let game = 0; game < 60; game++) {
      const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
      const truth = new Map<string, number>();
      const part = (key: string, sd: number) => truth.get(key) ?? truth.set(key, sd * normal()).get(key)!;
      const seen = bench(6, 30, random).map(({ vials }) => {
        const sorted = [...vials].sort();
        const pairs = sorted.flatMap((a, i) => sorted.slice(i + 1).map((b) => part(`${a},${b}`, 0.5)));
        return {
          vials,
          liking: sorted.reduce((sum, a) => sum + part(a, 1), 0) + pairs.reduce((a, b) => a + b) + normal(),
        };
      });
      const found = worth(seen);
      for (const { vials, worth: value, uncertainty } of [...found.byVial, ...found.byPair]) {
        all++;
        if (Math.abs(value - truth.get(vials.join())!) <= 2 * uncertainty) inside++;
      }
    }
    console.info(`worth: ${((100 * inside) / all).toFixed(1)} % of ${all} true parts within two uncertainties`);
    expect(inside / all).toBeGreaterThan(0.9);
    expect(inside / all).toBeLessThan(0.99);
  });

  test('two tries, or a try without a liking, are refused', () => {
    expect(() => worth(tries.slice(0, 2))).toThrow('a worth needs at least 3 layerings with a liking, not 2');
    expect(() => worth([...tries, { vials: [], liking: 3 }])).toThrow(Refusal);
    expect(() => worth([...tries, { vials: ['A'], liking: NaN }])).toThrow(Refusal);
  });
});
