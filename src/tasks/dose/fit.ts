import { refusalOfId } from '../../workshop/drinkable/grade';
import { shelf } from '../../records/shelf';
import { answer, handedOn, namesBegun } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer, Step } from '../engine/task';
import { drinkFields, fields } from './fields';
import { chosenVial, countOf, dropsOf, massTyped } from './glass';
import { isSeries, SERIES_COUNTER } from './series';

const GONE = 'Something that was dosed is no longer on the Shelf: smell only, it never goes into a drink.';

/** The doses that a vial was chosen for, those that were taken back too. */
function chosen(run: RunState): { readonly i: number; readonly vial: string }[] {
  const begun = namesBegun(run, 'vial').flatMap((key) => /^vial\.(\d+)$/.exec(key)?.[1] ?? []);
  return [1, ...begun.map(Number)].flatMap((i) => {
    const vial = answer(run, fields.vial(i)) ?? chosenVial(run, i);
    return vial ? [{ i, vial }] : [];
  });
}

/** Whether something of dose i is in a glass. */
export function isIn(run: RunState, i: number): boolean {
  const inSeries = Object.entries(run.drops).some(([key, n]) => n > 0 && key.startsWith(SERIES_COUNTER));
  return dropsOf(run, i) > 0 || massTyped(run, i) || (i === 1 && isSeries(run) && inSeries);
}

/** Why what is in a glass may not be drunk, though it could when it was dosed: in one sentence; null when it may. */
export function spoiltBy(run: RunState): string | null {
  const inside = chosen(run).filter(({ i }) => isIn(run, i));
  const causes = inside.map(({ vial }) => (shelf.records.value.has(vial) ? refusalOfId(vial) : GONE));
  return causes.find((why) => why !== null) ?? null;
}

/** Why a dose cannot be kept as a drink, in one sentence; null when it can. */
export function refusalOfRun(run: RunState): string | null {
  const taken = chosen(run).filter(({ i }) => i <= countOf(run));
  return spoiltBy(run) ?? taken.map(({ vial }) => refusalOfId(vial)).find((why) => why !== null) ?? null;
}

/** What a glass with something in it that may not be drunk is: poured away. A clean one begins a run of its own; this one stays as it is. */
export function spoiltStep(run: RunState, why: string): Step {
  const again: Offer = { words: 'Begin again with a clean glass', start: { task: 'dose', typed: drinkOf(run) } };
  return {
    key: 'spoilt',
    say: '‹Do not taste it›: pour it away.',
    more: [why, 'It was fit for drinks when it was dosed, and is not now.'],
    problem: why,
    offers: [again],
  };
}

/** The answers on the drink, without vials and drops. */
function drinkOf(run: RunState): Record<string, string> {
  return handedOn(run, Object.values(drinkFields));
}
