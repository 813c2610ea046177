import type { Batch } from '../../records/kind/batch';
import type { RunState } from '../engine/fold';
import { madeAgain } from './plan/before';
import type { RecipeLine } from './plan/recipe';
import { carrierBottleOf } from './plan/carrierBottle';
import { carrierOf, sourceOf } from './plan/drinkAsked';
import { formatDay } from '../../ui/format';

/** What differs from the batch that is made again, a sentence each: other lots, other shares. */
export function changedLots(run: RunState, lines: readonly RecipeLine[]): string[] {
  const then = madeAgain(run);
  if (!then) return [];
  const lots = lines.flatMap((line) => {
    const now = sourceOf(run, line);
    const before = then.weighed.find(({ id, source }) => id === line.material && source !== null);
    if (!before) return [`${line.name} was not in it on ${formatDay(then.madeOn)}.`];
    return now && now.id !== before.source ? [`${line.name}: ${before.lot} then, ‹${now.lot}› now.`] : [];
  });
  const gone = then.lines
    .filter(({ material }) => lines.every((line) => line.material !== material))
    .map(({ name }) => `${name} was in it on ${formatDay(then.madeOn)}, and is not now.`);
  const all = [...lots, ...changedCarrier(run, then), ...gone];
  return [
    `Again as on ${formatDay(then.madeOn)}: ${all.length === 0 ? 'the same lots.' : 'this is different.'}`,
    ...all,
  ];
}

function changedCarrier(run: RunState, then: Batch): string[] {
  const carrier = carrierOf(run);
  const before = then.weighed.find(({ id, source }) => id === carrier?.id && source !== null);
  const now = carrierBottleOf(run);
  if (!carrier || !before || now?.id === before.source) return [];
  return [`${carrier.name}: ${before.lot} then, ‹${now?.lot ?? 'not from the Shelf'}› now.`];
}
