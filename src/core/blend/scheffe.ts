/** Surfaces over blends, fitted by own least squares. Source: Scheffé, J. R. Stat. Soc. B 20 (1958) 344. */
import { cholesky } from '../number/cholesky';
import { fisherTail } from '../number/fisher';
import { Refusal } from '../text/refusal';
import { same, type Shares } from './region';

/** The surfaces, from the fewest terms to the most. */
export const MODELS = ['linear', 'quadratic', 'special cubic'] as const;
export type Model = (typeof MODELS)[number];

/** One blend judged: its shares, and how it was liked, on any scale that is the same throughout. */
export interface Judged {
  readonly shares: Shares;
  readonly liking: number;
}

/** What a surface misses beside what repeats of the same blends differ by: F, its degrees of freedom, and P(F) by chance. */
export interface LackOfFit {
  readonly f: number;
  readonly above: number;
  readonly below: number;
  readonly p: number;
}

/** A fitted surface. Coefficients and errors are on the scale of the liking. */
export interface Surface {
  readonly model: Model;
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Sum of squared residuals, and the degrees of freedom it has. */
  readonly rss: number;
  readonly freedom: number;
  /** √(rss/freedom). */
  readonly rmse: number;
  readonly r2: number;
  readonly adjustedR2: number;
  /** Mean squared error of foretelling each liking from all others. */
  readonly leftOutError: number;
  readonly lackOfFit: LackOfFit | null;
}

const SINGULAR = 1e-10; // our choice: of a determinant with unit columns

/**
 * The terms of a surface at a blend (fractions): the shares; their products by twos; by threes. Which parts each term is of
 * is `termParts`.
 * Source: Scheffé 1958.
 */
export function termsAt(shares: Shares, model: Model): number[] {
  return termParts(shares.length, model).map((parts) => parts.reduce((product, i) => product * shares[i]!, 1));
}

/** Of which parts each term is, by their places, whole numbers from 0, in the order of the coefficients. By definition. */
export function termParts(parts: number, model: Model): number[][] {
  const all = Array.from({ length: parts }, (_, i) => i);
  const order = MODELS.indexOf(model) + 1;
  const larger = (groups: number[][]) =>
    groups.flatMap((one) => all.filter((i) => i > one.at(-1)!).map((i) => [...one, i]));
  const groups = [all.map((i) => [i])];
  while (groups.length < order) groups.push(larger(groups.at(-1)!));
  return groups.flat();
}

/**
 * det XᵀX of a surface over some blends, how much they tell of its coefficients together; dimensionless, from 0.
 * Source: D-optimality, Atkinson & Donev 1992. Check: {3,2} lattice 1/4096, simplex centroid (1/1728)².
 */
export function information(blends: readonly Shares[], model: Model): number {
  return determinant(crossProducts(blends.map((shares) => termsAt(shares, model))));
}

/**
 * A surface by least squares, on the scale of the liking, with standard errors, R² about the mean, and the lack of fit where
 * some blends were repeated. Source: normal equations, Draper & Smith; Cornell, Experiments with Mixtures, 3rd ed. 2002.
 * Check: NIST/SEMATECH 5.5.4.2.
 * @throws Refusal when the blends do not carry the surface, or leave nothing to tell its error by
 */
export function fitted(judged: readonly Judged[], model: Model): Surface {
  const rows = judged.map(({ shares }) => termsAt(shares, model));
  const terms = termParts(judged[0]?.shares.length ?? 0, model).length;
  const freedom = judged.length - terms;
  if (freedom < 1 || !carries(rows))
    throw new Refusal('these {blends} likings do not carry a {model} surface', { blends: judged.length, model });
  const inverse = cholesky(crossProducts(rows)).inverse();
  const likings = judged.map(({ liking }) => liking);
  const coefficients = inverse.map((row) => dot(row, crossed(rows, likings)));
  const residuals = rows.map((row, i) => likings[i]! - dot(row, coefficients));
  const rss = dot(residuals, residuals);
  const mean = likings.reduce((sum, one) => sum + one, 0) / likings.length;
  const about = likings.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const leftOut = residuals.map(
    (residual, i) =>
      residual /
      (1 -
        dot(
          rows[i]!,
          inverse.map((row) => dot(row, rows[i]!)),
        )),
  );
  return {
    model,
    coefficients,
    standardErrors: inverse.map((row, i) => Math.sqrt((row[i]! * rss) / freedom)),
    rss,
    freedom,
    rmse: Math.sqrt(rss / freedom),
    r2: about > 0 ? 1 - rss / about : 0,
    adjustedR2: about > 0 ? 1 - rss / freedom / (about / (likings.length - 1)) : 0,
    leftOutError: dot(leftOut, leftOut) / likings.length,
    lackOfFit: lackOfFit(judged, rss, freedom),
  };
}

/**
 * The surface that foretells likings left out best, of those that the likings carry; null where they carry none. On the
 * scale of the liking. Our choice, by the left-out errors e/(1 − h) in closed form.
 */
export function bestCarried(judged: readonly Judged[]): Surface | null {
  let best: Surface | null = null;
  for (const model of MODELS) {
    const rows = judged.map(({ shares }) => termsAt(shares, model));
    if ((model === 'special cubic' && (judged[0]?.shares.length ?? 0) < 3) || !carries(rows)) continue;
    if (judged.length <= rows[0]!.length) continue;
    const surface = fitted(judged, model);
    if (best === null || surface.leftOutError < best.leftOutError) best = surface;
  }
  return best;
}

/** What a surface foretells at a blend (fractions), on the scale of the liking. By definition. */
export function heightAt({ coefficients, model }: Surface, shares: Shares): number {
  return dot(termsAt(shares, model), coefficients);
}

/** Whether the columns of a design are independent: likings, as many as rows, can tell every coefficient. */
function carries(rows: readonly (readonly number[])[]): boolean {
  const terms = rows[0]?.length ?? 0;
  if (terms === 0 || rows.length < terms) return false;
  const lengths = Array.from({ length: terms }, (_, c) => Math.hypot(...rows.map((row) => row[c]!)));
  if (lengths.some((length) => length === 0)) return false;
  return determinant(crossProducts(rows.map((row) => row.map((one, c) => one / lengths[c]!)))) > SINGULAR ** 2;
}

/**
 * Pure error: the squared deviations (squared points of liking) of likings of one blend from their mean, over all blends that were judged more than once, with their
 * degrees of freedom (a count; 0 where none was). Source: arithmetic.
 */
export function pureError(judged: readonly Judged[]): { readonly squares: number; readonly freedom: number } {
  const groups: Judged[][] = [];
  for (const one of judged) {
    const group = groups.find(([first]) => same(first!.shares, one.shares));
    if (group) group.push(one);
    else groups.push([one]);
  }
  const squares = groups.reduce((sum, group) => {
    const mean = group.reduce((total, { liking }) => total + liking, 0) / group.length;
    return sum + group.reduce((total, { liking }) => total + (liking - mean) ** 2, 0);
  }, 0);
  return { squares, freedom: judged.length - groups.length };
}

/** What the surface misses beyond pure error. */
function lackOfFit(judged: readonly Judged[], rss: number, freedom: number): LackOfFit | null {
  const { squares, freedom: below } = pureError(judged);
  const above = freedom - below;
  if (above < 1 || below < 1 || squares <= 0) return null;
  const f = Math.max(0, rss - squares) / above / (squares / below);
  return { f, above, below, p: fisherTail(f, above, below) };
}

function crossProducts(rows: readonly (readonly number[])[]): number[][] {
  return (rows[0] ?? []).map((_, c) =>
    crossed(
      rows,
      rows.map((row) => row[c]!),
    ),
  );
}

/** Xᵀ·y. */
function crossed(rows: readonly (readonly number[])[], y: readonly number[]): number[] {
  return (rows[0] ?? []).map((_, c) => rows.reduce((sum, row, i) => sum + row[c]! * y[i]!, 0));
}

/** By elimination with pivots. */
function determinant(matrix: readonly (readonly number[])[]): number {
  const a = matrix.map((row) => [...row]);
  let product = 1;
  for (let c = 0; c < a.length; c++) {
    let pivot = c;
    for (let r = c + 1; r < a.length; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[pivot]![c]!)) pivot = r;
    if (a[pivot]![c] === 0) return 0;
    if (pivot !== c) [a[pivot], a[c], product] = [a[c]!, a[pivot]!, -product];
    product *= a[c]![c]!;
    for (let r = c + 1; r < a.length; r++) {
      const times = a[r]![c]! / a[c]![c]!;
      for (let k = c; k < a.length; k++) a[r]![k]! -= times * a[c]![k]!;
    }
  }
  return product;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, i) => sum + one * b[i]!, 0);
}
