import { nextLayering, type NextLayering } from '../../core/sensory/covering';
import { combinations, pairCoverage, type PairCoverage } from '../../core/sensory/pairCoverage';
import { list } from '../../records/shelf';
import { coverings } from '../../tables/coverings';
import { whyNotByItself } from '../../workshop/takenByItself';
import type { RunState } from '../engine/fold';
import type { Happening } from '../engine/log';
import { smellOf } from './families';
import { inFan, inHand, stripsOf } from './strips';
import { smelledSets } from './tries';

/** How many vials of the shelf a plan looks at: the newest ones. Our choice; the triangle cannot show more. */
const MOST_PLANNED = 40;
export const SIZES = [2, 3, 4, 5] as const;

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
  return inFan(run).length >= 3 && run.typed['next.pool'] !== 'shelf';
}

/** Strips in the next layering, 2 to 5. */
export function sizeOf(run: RunState): number {
  return Number(run.typed['next.size'] ?? 3);
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
  const coverage = pairCoverage(
    smells,
    smelledSets(run).map(({ vials }) => vials),
  );
  const plan = nextLayering(coverage, size, coverings);
  const vials = (plan.next ?? []).map((smell) => vialOf.get(smell)!);
  return { coverage, plan, vials, possible: combinations(smells.length, size) };
}

/** Pairs of the fan that have been smelled together, and all of them. */
export function pairsOfFan(run: RunState): { done: number; total: number } {
  const smells = [...new Set(inFan(run).map(({ vial }) => smellOf(vial.id)))];
  return pairCoverage(
    smells,
    smelledSets(run).map(({ vials }) => vials),
  );
}

/** What has to happen so that just these vials are in the hand: others go out, those taken out before come back. */
export function takeJust(run: RunState, vials: readonly string[]): Happening[] {
  const others = inHand(run).filter(({ vial }) => !vials.includes(vial.id));
  const strips = stripsOf(run);
  return [
    ...others.map(({ vial, dippedAt }) =>
      dippedAt === null
        ? { type: 'typed' as const, key: `pick.${vial.id}`, text: '' }
        : { type: 'mark' as const, key: `out.${vial.id}` },
    ),
    ...vials.flatMap((id): Happening[] => {
      const strip = strips.find(({ vial }) => vial.id === id);
      if (!strip) return [{ type: 'typed', key: `pick.${id}`, text: 'yes' }];
      return strip.takenOutAt === null ? [] : [{ type: 'unmark', key: `out.${id}` }];
    }),
  ];
}
