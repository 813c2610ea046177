import type { Measured } from '../../core/number/measured';
import type { Vial } from '../../records/kind/vial';
import { overCapacity } from '../../workshop/scales';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Offer } from '../engine/task';
import { fields, type DiluteStep } from './fields';
import { madeOf } from './made';
import type { Order } from './making';

/** Whether the vial is weighed whole once it is made; only a solvent that evaporates makes that worth a step. */
function isWanted(run: RunState, { solvent }: Order): boolean {
  return solvent.dryOff === 'minutes' && answer(run, fields.whole) === 'yes';
}

/** The way to weigh the vial whole at the end, or not to after all; none where its solvent stays. */
export function wholeOffers(run: RunState, order: Order): Offer[] {
  if (order.solvent.dryOff !== 'minutes') return [];
  const wanted = isWanted(run, order);
  return [
    {
      words: wanted ? 'Do not weigh the vial at the end' : 'Weigh the whole vial at the end',
      place: 'more',
      type: types(fields.whole, wanted ? 'no' : 'yes'),
    },
  ];
}

/** The whole vial on the scale, with its cap: what it has lost when it is weighed again evaporated, or was taken out. */
export function wholeSteps(run: RunState, order: Order): DiluteStep[] {
  if (!isWanted(run, order)) return [];
  const grams = answer(run, fields.wholeG);
  const liquidG = madeOf(run, order).mass.value;
  const isLess = grams !== null && grams <= liquidG;
  return [
    {
      key: 'whole',
      say: 'Close the vial. Weigh it whole, with its cap.',
      more: [
        'Zero the empty scale first. Weighed again, it shows what evaporated.',
        overCapacity(liquidG, order.readabilityG),
      ].filter(Boolean),
      ask: [fields.wholeG],
      ...(isLess ? { problem: 'That is less than the liquid in it: glass and cap are weighed too.' } : {}),
      offers: [{ words: 'Skip the weighing', type: types(fields.whole, 'no'), leave: true }],
    },
  ];
}

/** The first weighing of a vial, with all that was put in still there; nothing where it was not weighed whole. */
export function weighedWhole(run: RunState, order: Order, left: Measured): Pick<Vial, 'weighed'> {
  const wholeG = isWanted(run, order) ? answer(run, fields.wholeG) : null;
  return wholeG === null ? {} : { weighed: [{ at: run.done['whole'] ?? new Date().toISOString(), left, wholeG }] };
}
