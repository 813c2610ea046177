import { expanded, type Measured } from '../core/number/measured';
import { formatOnScale, formatPlain, measuredCells, measuredText, showsNothing, type DigitLimits } from './format';

/**
 * The step of the scale that a weighing was read on, g, from its own source: two readings of a step d have u = d/√6 (GUM F.2.2.1); where
 * it has none, from its whole ±.
 */
function stepOf(weighed: Measured): number {
  const own = weighed.sources.find(({ id }) => id.endsWith(':readability'));
  return Math.abs(own?.u ?? expanded(weighed) / 2) * Math.sqrt(6);
}

/** A weighing is read, not computed: it has all digits that its scale shows, and no more. */
function limitsOf(weighed: Measured): DigitLimits {
  return { most: 12, step: stepOf(weighed) };
}

/** '16643 ± 1 g': what a scale showed, no finer than the scale; 'nothing' of what was left out. */
export function weighedText(weighed: Measured, unit = 'g'): string {
  return weighed.value > 0 ? measuredText(weighed, unit, limitsOf(weighed)) : 'nothing';
}

/** The same for a table: value and ± as two cells. */
export function weighedCells(weighed: Measured): ReturnType<typeof measuredCells> {
  return weighed.value > 0 ? measuredCells(weighed, limitsOf(weighed)) : [0, ''];
}

/** What was planned for a weighing, g, as the scale that it was read on could show it. */
export function plannedText(grams: number, weighed: Measured): string {
  const step = stepOf(weighed);
  if (!(step > 0)) return formatPlain(grams);
  return showsNothing(grams, step) ? `< ${formatPlain(step, 1)}` : formatOnScale(grams, step);
}
