import type { Batch } from '../../../records/kind/batch';
import { find, list } from '../../../records/shelf';
import { madeAs, madeBefore, type MadeBefore } from '../../../workshop/madeBefore';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import type { Answers } from '../../engine/lastTime';
import { oncePerRun } from '../../engine/oncePerRun';
import { fields } from './fields';
import { recipeOrNull } from './recipe';

/** A run that was begun when each question had a step of its own: what was in them was what is usual, never as last time. */
function isOfSteps(run: RunState): boolean {
  return 'what' in run.done;
}

/** The batch that is made again; undefined where it is none. */
export function madeAgain(run: RunState): Batch | undefined {
  return find('batch', answer(run, fields.again));
}

/** The last drink of any version of the formula that is made, or the one that is made again; null where there is none. */
export const sameBefore = oncePerRun((run: RunState): MadeBefore | null => {
  const again = madeAgain(run);
  if (again) return madeAs(again);
  const root = find('formula', recipeOrNull(run)?.id)?.root;
  return root === undefined ? null : madeBefore(root);
});

/** Answers of batches of before, the closest first. */
interface TimesBefore {
  /** Of the last batch of this formula, of any version. */
  readonly same: readonly Answers[];
  /** With those of the last batch of any. */
  readonly all: readonly Answers[];
  /** Ids of what they were weighed from. */
  readonly bottles: readonly string[];
}

/** What was answered before; nothing where all of it is known from elsewhere. */
export const timesBefore = oncePerRun((run: RunState): TimesBefore => {
  if (isOfSteps(run) || answer(run, fields.exactly) !== null) return { same: [], all: [], bottles: [] };
  const [id, batches] = [recipeOrNull(run)?.id, list('batch')];
  const same = batches.filter(({ formula }) => id !== undefined && rootOf(formula.id) === rootOf(id)).slice(0, 1);
  const told = (some: readonly Batch[]) => some.map((batch) => batch.asked);
  const both = [...same, ...batches.slice(0, 1)];
  const bottles = both.flatMap(({ weighed }) => weighed.flatMap(({ source }) => source ?? []));
  return { same: told(same), all: told(both), bottles };
});

function rootOf(id: string): string {
  return find('formula', id)?.root ?? id;
}

/**
 * The drink that sugar and alcohol are taken from: the one chosen, the one tasted, or the last one of this formula;
 * null where none of these is known. °Brix and % ABV.
 */
export function drinkBefore(run: RunState): (Partial<MadeBefore> & Pick<MadeBefore, 'name' | 'brix' | 'abv'>) | null {
  const drink = find('base', answer(run, fields.base)) ?? find('tasting', recipeOrNull(run)?.id)?.base;
  if (drink) return drink;
  const same = sameBefore(run);
  if (same) return same;
  const isOpen = answer(run, fields.brix) === null || answer(run, fields.abv) === null;
  const isOlder = 'drink' in run.done && isOpen; // the first version took the last drink of all, and recorded nothing
  return isOlder ? (list('base')[0] ?? { name: '', brix: 10, abv: 0 }) : null;
}
