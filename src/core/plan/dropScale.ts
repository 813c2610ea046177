import type { Problem } from './dropTerms';

/**
 * Scale and error of a plan, from L and U, the smallest lo and largest hi of its lines (mg per part).
 *
 * At scale s the worst error is max(U/s − 1, 1 − L/s), least at s = (L+U)/2 clamped to the scale's range; at free scale it is
 * (U−L)/(U+L).
 *
 * Lemma 3 (window). A plan with smallest lo L has an error ≤ e iff U ≤ top(L, e) = (1+e) · min(scaleMax, L/(1−e)) and
 * L/(1−e) ≥ scaleMin: s must be at least U/(1+e), at most L/(1−e), and in its range. top increases in L and in e.
 */

/** How far above its target a plan's error may stand, relative to 1 + target: above rounding of doubles. */
export const REACH = 1e-12;

/** Best scale and error of a plan with this L and U (mg per part). Valid for U > 0. */
export function errorBetween(problem: Problem, low: number, high: number): { scale: number; error: number } {
  const scale = Math.min(problem.scaleMax, Math.max(problem.scaleMin, (low + high) / 2));
  return { scale, error: Math.max(high / scale - 1, 1 - low / scale) };
}

/** Largest U that a plan with this L may have at an error ≤ e; mg per part, e a share. Lemma 3. Below L when no scale fits. */
export function topOf(problem: Problem, low: number, e: number): number {
  if (e >= 1) return (1 + e) * problem.scaleMax;
  const scale = low / (1 - e);
  return scale * (1 + REACH) < problem.scaleMin ? 0 : (1 + e) * Math.min(problem.scaleMax, scale);
}
