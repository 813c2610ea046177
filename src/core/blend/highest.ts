import { reachable, type Bounds, type Shares } from './region';

const FIRST = 0.1; // share moved at first, our choice
const LAST = 1e-8; // share: far below any drop

/**
 * The blend (fractions) at which a surface is highest, up from the highest of some starts that keep the bounds: a share is
 * moved from one part to another as long as that leads up, with ever smaller shares. Exact to 1e-7 in the shares, on a
 * surface with one peak near the starts.
 * Source: pattern search in the edge directions of the region, Lewis & Torczon, SIAM J. Optim. 9 (1999) 1082.
 * @throws Refusal for bounds that no blend keeps
 */
export function highestFrom(starts: readonly Shares[], height: (shares: Shares) => number, given: Bounds): Shares {
  const bounds = reachable(given);
  let at = starts.reduce((best, one) => (height(one) > height(best) ? one : best));
  let top = height(at);
  for (let move = FIRST; move > LAST;) {
    const up = moved(at, move, bounds).find((one) => height(one) > top);
    if (up) [at, top] = [up, height(up)];
    else move /= 2;
  }
  return at;
}

/** All blends with a share moved from one part to another. */
function moved(at: Shares, move: number, bounds: Bounds): Shares[] {
  return at.flatMap((_, from) =>
    at.flatMap((_, to) => {
      const can = Math.min(move, at[from]! - bounds[from]!.least, bounds[to]!.most - at[to]!);
      return from === to || can <= 0
        ? []
        : [at.map((share, i) => share + (i === to ? can : 0) - (i === from ? can : 0))];
    }),
  );
}
