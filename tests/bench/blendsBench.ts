import { beliefAfter, type Belief } from '../../src/core/blend/belief';
import { firstBlends } from '../../src/core/blend/design';
import { standing } from '../../src/core/blend/nextBlend';
import { free, lattice, type Shares } from '../../src/core/blend/region';
import { fitted, heightAt, type Judged } from '../../src/core/blend/scheffe';
import { tastingOrder } from '../../src/core/blend/tastingOrder';
import { seeded } from '../core/seeded';

const CHECKED = [10, 15, 20, 30];
const NOSES = [1, 1.5]; // SD of one liking, points

type Random = () => number;
type Height = (shares: Shares) => number;

/**
 * Points of liking lost against the true best of hidden surfaces, after 10, 15, 20 and 30 likings on the nine-point scale: by the
 * search of the app (first blends with one repeat, then proposals), by the first blends repeated with a quadratic surface, and
 * by blends at random, of which the best liked or the best by the same fit is taken. `-- blends 200 3 1`: surfaces, parts, nose.
 */
export async function blendsBench(count = '200', parts = '3', only?: string): Promise<void> {
  const surfaces = Array.from({ length: Number(count) }, (_, i) => surfaceOf(Number(parts), seeded(1000 + i)));
  const grid = lattice(free(Number(parts)), Number(parts) > 3 ? 8 : 16);
  for (const nose of only ? [Number(only)] : NOSES) {
    const lost = surfaces.map((height, i) => lostBy({ height, nose, grid, seed: i }));
    for (const way of ['search', 'design', 'random best', 'random fitted'] as const)
      print({ nose, way, ...atEach((n) => mean(lost.map((one) => one[way].get(n) ?? NaN))) });
    for (const other of ['design', 'random best', 'random fitted'] as const)
      print({ nose, paired: `${other} less search`, ...atEach((n) => interval(lost.map((one) => (one[other].get(n) ?? NaN) - one.search.get(n)!))) }); // prettier-ignore
    const single = surfaces.map((height) => Math.max(...grid.map(height)) - Math.max(...ends(grid).map(height)));
    print({ nose, way: 'best part alone', always: round(mean(single)) });
    print({ nose, stopsAfter: round(mean(lost.map(({ stop }) => stop.after))), lostThen: round(mean(lost.map(({ stop }) => stop.lost))) }); // prettier-ignore
    print({ nose, expectedGain: true, ...atEach((n) => mean(gains.get(n)!.splice(0))) });
    print({ nose, told: lost.filter(({ stop }) => stop.told).length, toldWrong: lost.filter(({ stop }) => stop.told && stop.wrong).length }); // prettier-ignore
  }
}

interface Case {
  readonly height: Height;
  readonly nose: number;
  readonly grid: readonly Shares[];
  readonly seed: number;
}

type Lost = Map<number, number>;

/** Expected improvements on the way, by likings, of all searches of one nose. */
const gains = new Map(CHECKED.map((n): [number, number[]] => [n, []]));

function lostBy(one: Case) {
  const { search, stop } = searched(one);
  return { search, stop, design: designed(one), ...atRandom(one) };
}

/** The search as the app runs it. */
function searched({ height, nose, grid, seed }: Case) {
  const random = seeded(5000 + seed);
  const first = firstBlends(free(grid[0]!.length));
  const served = tastingOrder(first, seeded(seed)).map(({ blend }) => first[blend]!);
  const judged: Judged[] = [];
  const search: Lost = new Map();
  let stop: { after: number; lost: number; told: boolean; wrong: boolean } | null = null;
  const top = Math.max(...grid.map(height));
  let next: Shares | null = null;
  for (let n = 1; n <= 30; n++) {
    const shares: Shares = n <= served.length ? served[n - 1]! : next!;
    judged.push({ shares, liking: liked(height(shares), nose, random) });
    if (!CHECKED.includes(n) && n < served.length) continue;
    const now = standing(judged, grid);
    next = now.next;
    const lost = top - height(now.best.shares);
    if (CHECKED.includes(n)) search.set(n, lost);
    if (stop === null && n >= served.length && now.enough) {
      const wrong = now.runnerUp !== null && height(now.runnerUp.shares) > height(now.best.shares);
      stop = { after: n, lost, told: now.toldApart, wrong };
    }
    gains.get(n)?.push(now.gain);
  }
  return { search, stop: stop ?? { after: 30, lost: search.get(30)!, told: false, wrong: false } };
}

/** The first blends again and again, with a quadratic surface. */
function designed({ height, nose, grid, seed }: Case): Lost {
  const random = seeded(5000 + seed);
  const first = firstBlends(free(grid[0]!.length));
  const judged = Array.from({ length: 30 }, (_, i) => {
    const shares = first[i % first.length]!;
    return { shares, liking: liked(height(shares), nose, random) };
  });
  const top = Math.max(...grid.map(height));
  return new Map(
    CHECKED.flatMap((n) => {
      if (n < first.length) return [];
      const surface = fitted(judged.slice(0, n), 'quadratic');
      return [[n, top - height(highest(grid, (shares) => heightAt(surface, shares)))]];
    }),
  );
}

/** Blends at random: the one that was liked best, and the one that the same fit expects to be best. */
function atRandom({ height, nose, grid, seed }: Case) {
  const random = seeded(7000 + seed);
  const judged = Array.from({ length: 30 }, () => {
    const shares = grid[Math.floor(random() * grid.length)]!;
    return { shares, liking: liked(height(shares), nose, random) };
  });
  const top = Math.max(...grid.map(height));
  const [best, byFit]: [Lost, Lost] = [new Map(), new Map()];
  for (const n of CHECKED) {
    const some = judged.slice(0, n);
    const liked = some.reduce((one, other) => (other.liking > one.liking ? other : one));
    best.set(n, top - height(liked.shares));
    byFit.set(n, top - height(expectedBest(grid, beliefAfter(some))));
  }
  return { 'random best': best, 'random fitted': byFit };
}

function expectedBest(grid: readonly Shares[], belief: Belief): Shares {
  return highest(grid, (shares) => belief.at(shares).value);
}

function highest(grid: readonly Shares[], height: Height): Shares {
  const heights = grid.map(height);
  return grid[heights.indexOf(Math.max(...heights))]!;
}

/** A liking as it is tapped: whole, 1 to 9. */
function liked(height: number, nose: number, random: Random): number {
  return Math.min(9, Math.max(1, Math.round(height + nose * normal(random))));
}

/**
 * A hidden surface: for one half a special cubic of Scheffé, parts about 5 ± 1.2 points alone, pairs lifting or spoiling each other by SD
 * 0.9 at half and half; for the other half a peak anywhere, of any width, on a tilted plane. Our choice.
 */
function surfaceOf(parts: number, random: Random): Height {
  return random() < 0.5 ? cubic(parts, random) : peak(parts, random);
}

function cubic(parts: number, random: Random): Height {
  const alone = Array.from({ length: parts }, () => 5 + 1.2 * normal(random));
  const pairs = alone.flatMap((_, i) =>
    alone.slice(i + 1).map((__, k) => ({ of: [i, i + 1 + k], by: 3.5 * normal(random) })),
  );
  const threes = pairs.flatMap(({ of }) =>
    alone.flatMap((_, k) => (k > of[1]! ? { of: [...of, k], by: 9 * normal(random) } : [])),
  );
  return (shares) =>
    within(
      alone.reduce((sum, one, i) => sum + one * shares[i]!, 0) +
        [...pairs, ...threes].reduce((sum, { of, by }) => sum + by * of.reduce((all, i) => all * shares[i]!, 1), 0),
    );
}

function peak(parts: number, random: Random): Height {
  const weights = Array.from({ length: parts }, () => -Math.log(1 - random()));
  const all = weights.reduce((sum, one) => sum + one, 0);
  const [floor, top, width] = [3 + 1.5 * random(), 6.5 + 2 * random(), 0.2 + 0.3 * random()];
  const tilt = weights.map(() => 0.6 * normal(random));
  return (shares) => {
    const apart = shares.reduce((sum, share, i) => sum + (share - weights[i]! / all) ** 2, 0);
    const tilted = shares.reduce((sum, share, i) => sum + share * tilt[i]!, 0);
    return within(floor + (top - floor) * Math.exp(-apart / (2 * width * width)) + tilted);
  };
}

function within(liking: number): number {
  return Math.min(9, Math.max(1, liking));
}

function ends(grid: readonly Shares[]): Shares[] {
  return grid.filter((shares) => shares.some((share) => share === 1));
}

function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function atEach<T>(of: (n: number) => T): Record<string, T | number> {
  return Object.fromEntries(
    CHECKED.map((n) => {
      const value = of(n);
      return [`after ${n}`, typeof value === 'number' ? round(value) : value];
    }),
  );
}

/** Mean and 95 % interval of paired differences. */
function interval(differences: readonly number[]): string {
  const m = mean(differences);
  const sd = Math.sqrt(differences.reduce((sum, one) => sum + (one - m) ** 2, 0) / (differences.length - 1));
  return `${round(m)} ± ${round((1.96 * sd) / Math.sqrt(differences.length))}`;
}

function mean(all: readonly number[]): number {
  return all.reduce((sum, one) => sum + one, 0) / all.length;
}

function round(x: number): number {
  return Number(x.toFixed(3));
}

function print(row: object): void {
  console.log(JSON.stringify({ bench: 'blends', ...row }));
}
