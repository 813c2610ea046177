import type { Finding } from './finding';
import { Refusal } from '../text/refusal';

/** How far one check lets the dose of a formula go. */
export interface Ceiling {
  readonly finding: Finding;
  /** Times the present dose: 1 is exactly at the limit, below 1 the present dose is over, 0 it may not be added at all. */
  readonly times: number;
  /** mg of the whole formula per kg of drink at that ceiling. */
  readonly mgPerKg: number;
  /** The material that brings most of what binds. */
  readonly binding: string;
}

/**
 * The reverse answer: for each finding with a maximum, the highest dose of the same formula that still passes it,
 * lowest ceiling first. Arithmetic, exact because every amount is proportional to the dose beside a part that is fixed:
 * times = (max − fixed) / (amount − fixed), never below 0. Label duties and figures without a number do not bind.
 * `mgPerKg` is the present dose of the whole formula, mg per kg of drink, above 0.
 * @throws Refusal when the present dose is not above 0
 */
export function ceilings(findings: readonly Finding[], mgPerKg: number): Ceiling[] {
  if (!(mgPerKg > 0)) throw new Refusal('a highest dose can be found only for a formula that is dosed above zero');
  return findings
    .flatMap((finding): Ceiling[] => {
      const binding = finding.from.find((part) => !part.fixed);
      const follows = finding.amount.value - finding.fixed.value;
      if (finding.max === null || finding.state === 'label' || binding === undefined || !(follows > 0)) return [];
      const times = Math.max(0, (finding.max - finding.fixed.value) / follows);
      return [{ finding, times, mgPerKg: times * mgPerKg, binding: binding.material }];
    })
    .sort((one, two) => one.times - two.times);
}
