/** Hidden surfaces of liking over blends, that a search is tried on. Shares are fractions, heights points of liking, 1 to 9. */
import type { Shares } from '../../src/core/blend/region';
import { seeded } from '../core/seeded';

export type Random = () => number;
export type Height = (shares: Shares) => number;
export type Sort = 'usual' | 'loudness';

/** Surfaces of one sort over some parts, one for each seed from `from` on. */
export function hiddenSurfaces(asked: { count: number; parts: number; from: number; sort: Sort }): Height[] {
  const { count, parts, from, sort } = asked;
  const drawn = sort === 'usual' ? usual : loudness;
  return Array.from({ length: count }, (_, i) => drawn(parts, seeded(from + i)));
}

/**
 * A hidden surface: for one half a special cubic of Scheffé, parts about 5 ± 1.2 points alone, pairs lifting or spoiling each other by SD
 * 0.9 at half and half; for the other half a peak anywhere, of any width, on a tilted plane. Our choice.
 */
function usual(parts: number, random: Random): Height {
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

/**
 * A sort that nothing of the search was chosen by: each part is as loud as a power of its share, and liking falls with how far the
 * loudnesses, as parts of their sum, are from an ideal. Stevens' exponents of smells lie about 0.3 to 0.7; the rest is our choice.
 */
function loudness(parts: number, random: Random): Height {
  const strengths = Array.from({ length: parts }, () => Math.exp(0.7 * normal(random)));
  const exponents = strengths.map(() => 0.3 + 0.4 * random());
  const weights = strengths.map(() => -Math.log(1 - random()));
  const all = weights.reduce((sum, one) => sum + one, 0);
  const [top, falls] = [6.5 + 2 * random(), 4 + 6 * random()];
  return (shares) => {
    const loud = shares.map((share, i) => strengths[i]! * share ** exponents[i]!);
    const sum = loud.reduce((total, one) => total + one, 0);
    return within(top - falls * loud.reduce((apart, one, i) => apart + (one / sum - weights[i]! / all) ** 2, 0));
  };
}

/** A standard normal number. Source: Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
