import { beliefAfter } from '../../src/core/blend/belief';
import { firstBlends } from '../../src/core/blend/design';
import { standing, type Standing } from '../../src/core/blend/nextBlend';
import { free, lattice, type Shares } from '../../src/core/blend/region';
import { fitted, heightAt, type Judged } from '../../src/core/blend/scheffe';
import { tastingOrder } from '../../src/core/blend/tastingOrder';
import { seeded } from '../core/seeded';
import { hiddenSurfaces, normal, type Height, type Random, type Sort } from './hiddenSurfaces';

const CHECKED = [10, 15, 20, 30];
const NOSES = [1, 1.5]; // SD of one liking, points
/**
 * Where the seeds begin. The search was chosen on the first (1000 to 1999) and is reported on the second, which nothing was
 * chosen on; noses and random blends have seeds of their own after them.
 */
const SEEDS = { tuning: 1_000, report: 200_000 };
type Seeds = keyof typeof SEEDS;

/** Everything but the search, which is compared with each. */
const OTHERS = ['design, quadratic', 'design, same fit', 'random, best liked', 'random, same fit'] as const;
type Way = 'search' | (typeof OTHERS)[number];

/**
 * Points of liking lost against the true best of hidden surfaces, after 10, 15, 20 and 30 likings on the nine-point scale: by the
 * search of the app (first blends with one repeat, then proposals); by the first blends again and again, with a quadratic
 * surface or the fit of the app; by blends at random, of which the best liked or the best by the fit of the app is taken.
 * `-- blends 300 3 1 tuning loudness`: surfaces, parts, nose ('' for both), other seeds, other surfaces.
 */
export async function blendsBench(count = '300', parts = '3', only = '', ...words: string[]): Promise<void> {
  const seeds: Seeds = words.includes('tuning') ? 'tuning' : 'report';
  const sort: Sort = words.includes('loudness') ? 'loudness' : 'usual';
  const from = SEEDS[seeds];
  const surfaces = hiddenSurfaces({ count: Number(count), parts: Number(parts), from, sort });
  const grid = lattice(free(Number(parts)), Number(parts) > 3 ? 8 : 16);
  for (const nose of only !== '' ? [Number(only)] : NOSES) {
    const lost = surfaces.map((height, i) => lostBy({ height, nose, grid, seed: from + i }));
    const row = (facts: object) =>
      print({ surfaces: surfaces.length, seeds, sort, parts: Number(parts), nose, ...facts });
    const at = (way: Way, n: number) => lost.map((one) => one[way].get(n) ?? NaN);
    for (const way of ['search', ...OTHERS] as const) row({ way, ...atEach((n) => mean(at(way, n))) });
    for (const other of OTHERS) {
      const apart = (n: number) => at(other, n).map((one, i) => one - at('search', n)[i]!);
      row({ paired: `${other} less search`, ...atEach((n) => interval(apart(n))) });
    }
    row({ way: 'best part alone', always: round(mean(surfaces.map((height) => topOf(grid, height) - topOf(ends(grid), height)))) }); // prettier-ignore
    stopRows(lost.map(({ stop }) => stop), row); // prettier-ignore
  }
}

/** When the search says that it is enough, what is lost then, and how often two that it calls different are the other way round. */
function stopRows(stops: readonly Stop[], row: (facts: object) => void): void {
  row({
    stopsAfter: round(mean(stops.map(({ after }) => after))),
    lostThen: round(mean(stops.map(({ lost }) => lost))),
  });
  const told = stops.filter((stop) => stop.told);
  row({ told: told.length, toldWrong: told.filter(({ wrong }) => wrong).length });
}

interface Case {
  readonly height: Height;
  readonly nose: number;
  readonly grid: readonly Shares[];
  readonly seed: number;
}

type Lost = Map<number, number>;

/** Where a search said that it is enough: after how many likings, points lost, and whether it told two apart, wrongly or not. */
interface Stop {
  readonly after: number;
  readonly lost: number;
  readonly told: boolean;
  readonly wrong: boolean;
}

function lostBy(one: Case): Readonly<Record<Way, Lost>> & { readonly stop: Stop } {
  return { ...searched(one), ...designed(one), ...atRandom(one) };
}

/** The search as the app runs it. */
function searched({ height, nose, grid, seed }: Case): { readonly search: Lost; readonly stop: Stop } {
  const random = seeded(seed + 100_000);
  const first = firstBlends(free(grid[0]!.length));
  const served = tastingOrder(first, seeded(seed)).map(({ blend }) => first[blend]!);
  const judged: Judged[] = [];
  const search: Lost = new Map();
  let stop: Stop | null = null;
  let next: Shares | null = null;
  for (let n = 1; n <= Math.max(...CHECKED); n++) {
    const shares: Shares = n <= served.length ? served[n - 1]! : next!;
    judged.push({ shares, liking: liked(height(shares), nose, random) });
    if (!CHECKED.includes(n) && n < served.length) continue;
    const now = standing(judged, grid);
    next = now.next;
    if (CHECKED.includes(n)) search.set(n, topOf(grid, height) - height(now.best.shares));
    if (n >= served.length && now.enough) stop ??= stopOf(now, n, { height, grid });
  }
  return { search, stop: stop! }; // after thirty it is enough in any case
}

function stopOf(
  { best, runnerUp, toldApart }: Standing,
  after: number,
  { height, grid }: Pick<Case, 'height' | 'grid'>,
): Stop {
  const wrong = runnerUp !== null && height(runnerUp.shares) > height(best.shares);
  return { after, lost: topOf(grid, height) - height(best.shares), told: toldApart, wrong };
}

/** The first blends again and again: with a quadratic surface, and with the fit of the app. */
function designed({
  height,
  nose,
  grid,
  seed,
}: Case): Readonly<Record<'design, quadratic' | 'design, same fit', Lost>> {
  const random = seeded(seed + 100_000);
  const first = firstBlends(free(grid[0]!.length));
  const judged = judging(Array.from({ length: 30 }, (_, i) => first[i % first.length]!), { height, nose, random }); // prettier-ignore
  const some = CHECKED.filter((n) => n >= first.length);
  return {
    'design, quadratic': lostAt(some, { height, grid }, (n) => {
      const surface = fitted(judged.slice(0, n), 'quadratic');
      return highest(grid, (shares) => heightAt(surface, shares));
    }),
    'design, same fit': lostAt(some, { height, grid }, (n) => expectedBest(grid, judged.slice(0, n))),
  };
}

/** Blends at random: the one that was liked best, and the one that the fit of the app expects to be best of all. */
function atRandom({
  height,
  nose,
  grid,
  seed,
}: Case): Readonly<Record<'random, best liked' | 'random, same fit', Lost>> {
  const random = seeded(seed + 200_000);
  const blends = Array.from({ length: 30 }, () => grid[Math.floor(random() * grid.length)]!);
  const judged = judging(blends, { height, nose, random });
  const bestLiked = (some: readonly Judged[]) => some.reduce((one, other) => (other.liking > one.liking ? other : one));
  return {
    'random, best liked': lostAt(CHECKED, { height, grid }, (n) => bestLiked(judged.slice(0, n)).shares),
    'random, same fit': lostAt(CHECKED, { height, grid }, (n) => expectedBest(grid, judged.slice(0, n))),
  };
}

function judging(
  blends: readonly Shares[],
  { height, nose, random }: { height: Height; nose: number; random: Random },
): Judged[] {
  return blends.map((shares) => ({ shares, liking: liked(height(shares), nose, random) }));
}

function lostAt(
  counts: readonly number[],
  { height, grid }: Pick<Case, 'height' | 'grid'>,
  chosen: (n: number) => Shares,
): Lost {
  return new Map(counts.map((n) => [n, topOf(grid, height) - height(chosen(n))]));
}

function topOf(grid: readonly Shares[], height: Height): number {
  return Math.max(...grid.map(height));
}

function expectedBest(grid: readonly Shares[], judged: readonly Judged[]): Shares {
  const belief = beliefAfter(judged);
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

function ends(grid: readonly Shares[]): Shares[] {
  return grid.filter((shares) => shares.some((share) => share === 1));
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
