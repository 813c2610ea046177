import type { Finding } from '../../core/limits/finding';
import { STATES } from '../../core/limits/finding';
import type { RunState } from '../engine/fold';
import type { FinishedDrink, Judgement, Part } from '../../workshop/drinkable/judging';
import { judge } from './judgeRun';

interface Between {
  readonly parts: readonly Part[];
  /** The drink with the least alcohol that it may have. */
  readonly drink: FinishedDrink;
  /** The most, % ABV; the same where its alcohol is known. */
  readonly most: number;
}

/** What the rules say of a drink whose alcohol is not known: all that they say of it with the least and with the most, the worse of each. */
export function judgeBetween(run: RunState, { parts, drink, most }: Between): Judgement | null {
  const least = judge(run, parts, drink);
  const other = most > drink.abv ? judge(run, parts, { ...drink, abv: most }) : null;
  if (!least || !other) return least;
  return {
    ...least,
    findings: worse(least.findings, other.findings),
    ceilings: [...least.ceilings, ...other.ceilings].sort((a, b) => a.times - b.times),
    traits: [...new Set([...least.traits, ...other.traits])],
  };
}

/** Each finding once, in the worse of its two states. */
function worse(some: readonly Finding[], others: readonly Finding[]): Finding[] {
  const found = new Map<string, Finding>();
  for (const finding of [...some, ...others]) {
    const key = JSON.stringify([finding.check, finding.what, finding.max, finding.unit, finding.figure?.source]);
    const before = found.get(key);
    if (!before || STATES.indexOf(finding.state) < STATES.indexOf(before.state)) found.set(key, finding);
  }
  return [...found.values()].sort((a, b) => STATES.indexOf(a.state) - STATES.indexOf(b.state));
}
