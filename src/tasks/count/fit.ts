import type { Grade } from '../../records/kind/quantity';
import { shelf } from '../../records/shelf';
import { isGraded } from '../../workshop/drinkable/gradeCause';
import { refusalOf } from '../../workshop/drinkable/grade';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer } from '../engine/task';
import { fields, wayOf, type CountStep } from './fields';
import { isExact } from './picked';
import { countedDrops, countedIds, type Round } from './rounds';
import { stockOf } from './stock';

/** Whether what is planned is to go into a drink. Drops that were typed by hand go where their grade lets them. */
export function isForDrinks(run: RunState): boolean {
  return wayOf(run) !== 'hand' && answer(run, fields.purpose) !== 'smell';
}

/** A vial or bottle that may not go into a drink, and why. */
interface Barred {
  readonly id: string;
  readonly why: string;
}

const GONE = 'Something that was counted is no longer on the Shelf: smell only, it never goes into a drink.';

/** What may not go into a drink among these vials and bottles; of what is gone nothing is known. */
function barredOf(ids: readonly string[]): Barred[] {
  return ids.flatMap((id) => {
    const record = shelf.records.value.get(id);
    const why = record && isGraded(record) ? refusalOf(record) : GONE;
    return why === null ? [] : [{ id, why }];
  });
}

/** The grade of what was counted. */
export function gradeOf(run: RunState): Grade {
  return barredOf(countedIds(run)).length > 0 ? 'smell only' : 'fit for drinks';
}

/** Why what was counted is smell only, a sentence for each cause. */
export function whySmellOnly(run: RunState): string[] {
  return [...new Set(barredOf(countedIds(run)).map(({ why }) => why))];
}

/** Why a count for a drink cannot go on or be kept, in one sentence; null when it can. Asked at every step, since the Shelf changes meanwhile. */
export function stopOf(run: RunState, rounds: readonly Round[]): Barred | null {
  if (!isForDrinks(run)) return null;
  return barredOf([...new Set([...countedIds(run), ...rounds.map(({ id }) => id)])])[0] ?? null;
}

/** A step of such a count, stopped: nothing more is counted until it is said how to go on. Nothing is lost. */
export function stopped(run: RunState, { id, why }: Barred, step: CountStep): CountStep {
  const { key, draw, told } = step;
  const fresh = countedDrops(run, id) === 0 && !isExact(run);
  const offers: Offer<'card'>[] = [
    ...(fresh ? [{ words: 'Plan it without', go: 'card' as const }] : []),
    { words: 'Continue, to smell only', type: types(fields.purpose, 'smell') },
  ];
  return {
    key,
    say: `Stop: ‹${stockOf(id)?.tag ?? 'one of them'}› is smell only now.`,
    more: [why],
    problem: why,
    offers,
    ...(draw ? { draw } : {}),
    ...(told ? { told } : {}),
  };
}
