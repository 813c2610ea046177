import { attempt, Refused } from '../../workshop/attempt';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asPart } from '../engine/part';
import { newBottleSteps } from '../shared/newBottle';
import { settled } from './asked';
import { cardStep } from './card';
import { endSteps } from './ending';
import { fields, foodField, type DiluteStep } from './fields';
import { orderOf, type Order } from './making';
import { makingSteps } from './pouring';
import { isRack, isSkipped, rackOf, type Racked } from './rack';
import { drawRack } from './RackRow';
import { pickStep } from './set';
import { wholeSteps } from './whole';

/** The steps of a dilution, as far as what is known reaches. */
export function steps(run: RunState): DiluteStep[] {
  const fresh = answer(run, fields.source) === 'new' ? newBottleSteps(run) : [];
  if (isExact(run) && !isRack(run)) return exactSteps(run);
  const set = answer(run, fields.picking) === 'yes' ? [pickStep(run)] : [];
  return [...fresh, cardStep(run, (then) => handSteps(then)[0]?.key), ...set, ...handSteps(run)];
}

/** Where the hand is busy: one vial, or those of a rack one after the other. */
function handSteps(run: RunState): DiluteStep[] {
  if (isRack(run)) return rackSteps(run);
  const now = settled(run);
  const order = attempt(() => orderOf(now));
  return order && !(order instanceof Refused) ? allSteps(now, order) : [];
}

function allSteps(run: RunState, order: Order): DiluteStep[] {
  return [...makingSteps(run, order), ...endSteps(run, order), ...wholeSteps(run, order)];
}

function rackSteps(run: RunState): DiluteStep[] {
  const rack = rackOf(run);
  return rack.filter((one) => !isSkipped(one)).flatMap((one) => vialSteps(one, rack));
}

/** The steps of one vial of the rack, with all of them in sight, and the way to leave this one out. */
function vialSteps({ name, run, order }: Racked, rack: readonly Racked[]): DiluteStep[] {
  const skip = { words: 'Skip this vial', place: 'more', type: types(fields.skip, 'yes') } as const;
  const own: DiluteStep[] = order
    ? allSteps(run, order)
    : [
        {
          key: 'made',
          say: 'This one cannot be made so.',
          problem: 'Skip it, or go back and change its target.',
        },
      ];
  return own.map((step) => {
    const draws = step.pad || step.key === 'material' || step.key.startsWith('pour.');
    const whole = { ...step, offers: [...(step.offers ?? []), skip] } as DiluteStep;
    return { ...asPart(whole, name), ...(draws ? { draw: () => drawRack(rack, name) } : {}) } as DiluteStep;
  });
}

/** Whether a vial made before is made exactly again: nothing is planned, and nothing is asked but what is fit for drinks. */
function isExact(run: RunState): boolean {
  return answer(run, fields.exactSource) !== null && answer(run, fields.exactSolvent) !== null;
}

function exactSteps(run: RunState): DiluteStep[] {
  const hands = handSteps(run);
  const card = cardStep(run, () => hands[0]?.key);
  const food = foodField(settled(run));
  const gradeMissing = card.ask?.some(({ name }) => name === food.name) && answer(run, food) === null;
  return gradeMissing || hands.length === 0 ? [card, ...hands] : hands;
}
