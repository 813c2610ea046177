import type { Measured } from '../core/number/measured';
import { formatCount, formatKnown, formatMeasured } from './format';

/** What is left of something, for lists: '6.5 g', 'empty'. Units of `unit`; pieces are counted. */
export function leftText(left: Measured, unit: string): string {
  if (unit === 'pieces') return left.value < 0.5 ? 'empty' : `${formatCount(Math.round(left.value))} pieces`;
  return isNothing(formatMeasured(left).value) ? 'empty' : `${formatKnown(left)} ${unit}`;
}

/** The same in a phrase: '6.5 g left', 'empty'. */
export function leftPhrase(left: Measured, unit: string): string {
  const text = leftText(left, unit);
  return text === 'empty' ? text : `${text.replace(/ pieces$/, '')} left`;
}

/** True for '0', '0.00' and less than that, as they are shown. */
function isNothing(text: string): boolean {
  return text.startsWith('−') || /^[0.,]*$/.test(text);
}
