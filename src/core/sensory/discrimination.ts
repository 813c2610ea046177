/**
 * Can they tell? Triangle (ISO 4120), duo-trio (ISO 10399), paired comparison (ISO 5495) and 3-AFC (ISO 13301), all by
 * the exact binomial. What comes out is true of this nose and these samples on this day, not of people at large.
 */
import { atLeast, atMost, clopperPearson, MOST_TRIES } from '../number/binomial';
import { Refusal } from '../text/refusal';

/** `paired`: one answer is the right one (which is stronger). `preference`: no answer is right (which is liked), two-sided. */
export type DiscriminationTest = 'triangle' | 'duo-trio' | 'paired' | 'preference' | '3-AFC';

/** The test, the number of tries, and the risk of calling a difference that is not there (usually 0.05). */
export interface TestPlan {
  readonly test: DiscriminationTest;
  readonly tries: number;
  readonly risk: number;
}

/** The result in numbers, for a plain sentence. All shares and chances are 0 to 1. */
export interface TestResult {
  /** Chance of this many right answers, or more, by guessing alone. */
  readonly p: number;
  /** Smallest number right that would show a difference; null when even all right would not. */
  readonly needed: number | null;
  /** A difference is shown at the risk chosen. */
  readonly shown: boolean;
  /** Fewer right than guessing gives on average: no conclusion, look for a mix-up of the samples. */
  readonly belowChance: boolean;
  /** Share of tries in which the difference was truly told (pd), with its exact 95 % limits. */
  readonly share: { readonly value: number; readonly low: number; readonly high: number };
}

const CHANCE: Record<DiscriminationTest, number> = {
  triangle: 1 / 3,
  'duo-trio': 1 / 2,
  paired: 1 / 2,
  preference: 1 / 2,
  '3-AFC': 1 / 3,
};
const CONFIDENCE = 0.95;

/**
 * Smallest count of right answers (for a preference: of the more frequent answer) that shows a difference; null when
 * none does. Source: exact binomial, the rule of ISO 4120, 10399 and 5495, annex A.
 * @throws Refusal for impossible tries or risk
 */
export function numberNeeded({ test, tries, risk }: TestPlan): number | null {
  demandShare(risk, 'a risk');
  const sides = test === 'preference' ? 2 : 1;
  let needed: number | null = null;
  for (let x = tries; x > tries * CHANCE[test] && sides * atLeast(x, tries, CHANCE[test]) <= risk; x--) needed = x;
  return needed;
}

/**
 * Result of a test from its right answers (for a preference: the answers for the first sample).
 * @throws Refusal for impossible counts or risk
 */
export function testResult(plan: TestPlan, right: number): TestResult {
  const { test, tries } = plan;
  const twoSided = test === 'preference';
  const limits = clopperPearson(right, tries, CONFIDENCE);
  const counted = twoSided ? Math.max(right, tries - right) : right;
  const p = Math.min(1, (twoSided ? 2 : 1) * atLeast(counted, tries, CHANCE[test]));
  const needed = numberNeeded(plan);
  return {
    p,
    needed,
    shown: needed !== null && counted >= needed,
    belowChance: !twoSided && right < tries * CHANCE[test],
    share: {
      value: tries === 0 ? 0 : shareFromRight(test, right / tries),
      low: shareFromRight(test, limits.low),
      high: shareFromRight(test, limits.high),
    },
  };
}

/**
 * Chance (0 to 1) that the test will show a difference which is said in a `share` (0 to 1) of the tries, the others
 * being guessed.
 * @throws Refusal for impossible tries, risk or share
 */
export function power(plan: TestPlan, share: number): number {
  const needed = numberNeeded(plan);
  if (needed === null) return 0;
  const right = rightFromShare(plan.test, share);
  const wrongSide = plan.test === 'preference' ? atMost(plan.tries - needed, plan.tries, right) : 0;
  return atLeast(needed, plan.tries, right) + wrongSide;
}

/**
 * Tries needed to notice a difference told in a `share` of them with a chance of `wanted`: `first` is the smallest such
 * number, `stable` the one from which every larger number will do (power goes up in a saw-tooth). Null: more than 1000.
 * @throws Refusal for an impossible risk, share or chance
 */
export function triesNeeded(
  { test, risk }: Pick<TestPlan, 'test' | 'risk'>,
  share: number,
  wanted: number,
): { first: number; stable: number } | null {
  demandShare(wanted, 'a chance');
  const enough = (tries: number): boolean => power({ test, tries, risk }, share) >= wanted;
  let first = 1;
  while (!enough(first)) if (++first > MOST_TRIES / 2) return null;
  let stable = Math.min(MOST_TRIES, first + 60 + Math.ceil(first / 4)); // past the last tooth
  while (stable > first && enough(stable - 1)) stable--;
  return { first, stable };
}

/** pd = (pc − pg)/(1 − pg), not below 0. For a preference, the share of answers for the first sample as it is. */
function shareFromRight(test: DiscriminationTest, right: number): number {
  if (test === 'preference') return right;
  return Math.max(0, (right - CHANCE[test]) / (1 - CHANCE[test]));
}

function rightFromShare(test: DiscriminationTest, share: number): number {
  if (!(share >= 0 && share <= 1)) throw new Refusal('a share lies between 0 and 1, not {share}', { share });
  return CHANCE[test] + (1 - CHANCE[test]) * share;
}

function demandShare(x: number, what: string): void {
  if (!(x > 0 && x < 1)) throw new Refusal('{what} lies between 0 and 1, not {x}', { what, x });
}
