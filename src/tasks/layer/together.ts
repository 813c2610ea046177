import { nextLayering, type NextLayering } from '../../core/sensory/covering';
import { combinations, pairCoverage, type PairCoverage } from '../../core/sensory/pairCoverage';
import { list } from '../../records/shelf';
import { coverings } from '../../tables/coverings';
import { whyNotByItself } from '../../workshop/takenByItself';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Happening } from '../engine/log';
import { fields } from './fields';
import { smellOf } from './families';
import { typed } from './notes';
import { inFan, inHand, stripsOf } from './strips';
import { setsUpTo, smelledSets } from './tries';

/** How many vials of the shelf a plan looks at: the newest ones. Our choice; the triangle cannot show more. */
const MOST_PLANNED = 40;

/** Vials by what they smell of: the newest vial stands for each. */
export interface Pool {
  readonly smells: readonly string[];
  readonly vialOf: ReadonlyMap<string, string>;
}

/** The vials a plan is made for: those of the fan, or those of the shelf that are neither empty nor past their date. Oldest first, so that a plan stays while it is followed. */
export function poolOf(run: RunState): Pool {
  const vials = usesFan(run)
    ? inFan(run).map(({ vial }) => vial.id)
    : list('vial')
        .filter((vial) => whyNotByItself(vial) === null)
        .slice(0, MOST_PLANNED)
        .map(({ id }) => id)
        .reverse();
  const vialOf = new Map(vials.map((id) => [smellOf(id), id])); // a later vial of the same smell takes its place
  return { smells: [...vialOf.keys()], vialOf };
}

/** Whether the plan is for the strips of the fan: the usual thing when three or more are dipped. */
export function usesFan(run: RunState): boolean {
  return inFan(run).length >= 3 && answer(run, fields.pool) !== 'shelf';
}

/** Strips in the next layering, 2 to 5; by twos unless it is said otherwise. */
export function sizeOf(run: RunState): number {
  return Number(answer(run, fields.size) ?? 2);
}

export interface Proposal {
  readonly coverage: PairCoverage;
  readonly plan: NextLayering;
  /** The vials to smell next, by id; empty when every pair has met. */
  readonly vials: readonly string[];
  /** How many different layerings of that size there are at all. */
  readonly possible: number;
}

/** What to smell next, and how far the pairs are; null with fewer than two vials. */
export function proposal(run: RunState): Proposal | null {
  const { smells, vialOf } = poolOf(run);
  if (smells.length < 2) return null;
  const size = Math.min(sizeOf(run), smells.length);
  const coverage = pairCoverage(smells, setsUpTo(smelledSets(run), size));
  const plan = nextLayering(coverage, size, coverings);
  const vials = (plan.next ?? []).map((smell) => vialOf.get(smell)!);
  return { coverage, plan, vials, possible: combinations(smells.length, size) };
}

/** The pairs of the fan that were smelled by themselves, all there are, and the vials of the first one that is left, by id. */
export function pairsOfFan(run: RunState): { done: number; total: number; next: readonly string[] } {
  const vialOf = new Map(inFan(run).map(({ vial }) => [smellOf(vial.id), vial.id]));
  const { done, total, left } = pairCoverage([...vialOf.keys()], setsUpTo(smelledSets(run), 2));
  return { done, total, next: (left[0] ?? []).map((smell) => vialOf.get(smell)!) };
}

/** What has to happen so that just these vials are in the hand: others go out, those taken out before come back. */
export function takeJust(run: RunState, vials: readonly string[]): Happening[] {
  const others = inHand(run).filter(({ vial }) => !vials.includes(vial.id));
  const strips = stripsOf(run);
  return [
    ...others.map(({ vial, dippedAt }) =>
      dippedAt === null ? typed(fields.pick(vial.id), '') : { type: 'mark' as const, key: `out.${vial.id}` },
    ),
    ...vials.flatMap((id): Happening[] => {
      const strip = strips.find(({ vial }) => vial.id === id);
      if (!strip) return [typed(fields.pick(id), 'yes')];
      return strip.takenOutAt === null ? [] : [{ type: 'unmark', key: `out.${id}` }];
    }),
  ];
}
