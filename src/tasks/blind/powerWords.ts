import { numberNeeded, power, triesNeeded, type DiscriminationTest } from '../../core/sensory/discrimination';
import { percent } from './words';

/** What a number of tries can show, before the first sip. */
export function powerWords(test: DiscriminationTest, tries: number, risk: number): string[] {
  const needed = numberNeeded({ test, tries, risk });
  const enough = triesNeeded({ test, risk }, 0.5, 0.8);
  if (test === 'preference') {
    if (needed === null) return [`‹${tries}› are too few: even if all answers agreed, nothing would be shown.`];
    const chance = percent(power({ test, tries, risk }, 0.75));
    return [
      `‹${needed} of ${tries}› for one of them show a preference.`,
      `One of three to one is noticed with ${chance}.`,
    ];
  }
  const more = enough
    ? ` ${enough.first} sets find it with ${percent(power({ test, tries: enough.first, risk }, 0.5))}: the fewest with 80 % or more.`
    : '';
  if (needed === null) return [`‹${tries}› are too few: even all right would show nothing.${more}`];
  const chance = percent(power({ test, tries, risk }, 0.5));
  return [
    `‹${needed} of ${tries}› right show a difference.`,
    `A difference that you can tell half of the time is found with a chance of ${chance}.${more}`,
    'It is the power for this nose: more of its tries add no other nose.',
  ];
}
