/**
 * Which blends to judge first: corners, edge middles, centre and axial points, so that a quadratic surface and its error can
 * be told. 5 blends of two parts, 10 of three, 15 of four.
 * Source: Scheffé, J. R. Stat. Soc. B 20 (1958) 344 (lattice); Cornell, Experiments with Mixtures, 3rd ed. 2002 (axial points).
 */
import { corners, distinct, joined, reachable, type Bounds, type Shares } from './region';
import { Refusal } from '../text/refusal';
import { information, type Model } from './scheffe';

/** How many blends a first design has, by the number of its parts. */
const BLENDS: Readonly<Record<number, number>> = { 2: 5, 3: 10, 4: 15 };

/**
 * The first blends within the bounds, shares as fractions: without upper bounds the lattice with its centre and axial points;
 * of a region with more corners than that the blends that tell most of a quadratic surface.
 * @throws Refusal for fewer than 2 or more than 4 parts, or bounds that leave no room to blend in
 */
export function firstBlends(given: Bounds): Shares[] {
  const bounds = reachable(given);
  const ends = corners(bounds);
  if (ends.length < 2) throw new Refusal('the bounds leave one blend only');
  const middles = ends.flatMap((one, i) =>
    ends.slice(i + 1).flatMap((other) => (joined(one, other, bounds) ? [between(one, other)] : [])),
  );
  const centre = ends[0]!.map((_, i) => ends.reduce((sum, one) => sum + one[i]!, 0) / ends.length);
  const axial = ends.map((one) => between(one, centre));
  const all = distinct([...ends, ...middles, centre, ...axial]);
  const count = BLENDS[bounds.length]!;
  return all.length <= count ? all : mostInformative(all, count, 'quadratic');
}

/**
 * `count` of the candidates (shares as fractions), each once, that tell most of a surface together: begun with those that lie
 * far apart, then exchanged as long as that helps. Source: point exchange, Fedorov 1972; D-optimality.
 */
export function mostInformative(candidates: readonly Shares[], count: number, model: Model): Shares[] {
  let chosen = started(candidates, count);
  let value = information(chosen, model);
  for (let better = true; better;) {
    better = false;
    for (let i = 0; i < chosen.length; i++)
      for (const candidate of candidates.filter((one) => !chosen.includes(one))) {
        const changed = chosen.with(i, candidate);
        const told = information(changed, model);
        if (told > value * (1 + 1e-9)) [chosen, value, better] = [changed, told, true];
      }
  }
  return candidates.filter((one) => chosen.includes(one));
}

/** The blends that are furthest from those chosen before, from the first candidate on. */
function started(candidates: readonly Shares[], count: number): Shares[] {
  const chosen = [candidates[0]!];
  while (chosen.length < Math.min(count, candidates.length)) {
    const room = (one: Shares) => Math.min(...chosen.map((other) => Math.hypot(...one.map((x, i) => x - other[i]!))));
    chosen.push(candidates.reduce((best, one) => (room(one) > room(best) ? one : best)));
  }
  return chosen;
}

function between(one: Shares, other: Shares): Shares {
  return one.map((share, i) => (share + other[i]!) / 2);
}
