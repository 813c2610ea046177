import { attempt, Refused } from '../../workshop/attempt';
import { labelTagOf } from '../../workshop/thing/labelled';
import { answer, supposing } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { withinPart, type Part } from '../engine/part';
import { settled } from './asked';
import { fields } from './fields';
import { madeOf } from './made';
import { orderOf, type Order } from './making';
import { ofVial } from './source';
import { vialOf } from './vialMade';

/** A vial of a rack: the run as it sees it, and what is to be made; null where that is not known. */
export interface Racked {
  readonly name: string;
  readonly run: RunState;
  readonly order: Order | null;
}

/** True while several vials are made in one run. */
export function isRack(run: RunState): boolean {
  return partsOf(run).length > 0;
}

function partsOf(run: RunState): readonly Part[] {
  return answer(run, fields.rack) ?? [];
}

/** The vials of a rack, in order. One that is made from another of them has that one as its source. */
export function rackOf(run: RunState): Racked[] {
  const whole = settled(run);
  const racked: Racked[] = [];
  for (const part of partsOf(run)) {
    const mine = withinPart(whole, part);
    const from = racked.find(
      ({ name }) => fields.source.name in part.given && part.given[fields.source.name] === madeName(name),
    );
    const order = attempt(() => (from ? orderFrom(mine, from) : orderOf(mine)));
    racked.push({ name: part.name, run: mine, order: order instanceof Refused ? null : order });
  }
  return racked;
}

/** '1 vial', '3 vials'. */
export function vialsText(many: number): string {
  return many === 1 ? '1 vial' : `${many} vials`;
}

/** How a vial of the rack is named as the source of another one. */
export function madeName(name: string): string {
  return `rack.${name}`;
}

/** What is made from another vial of the rack: from that as it was made, or while it is not, as it is planned. */
function orderFrom(run: RunState, from: Racked): Order | null {
  if (!from.order) return null;
  const { order } = from;
  const isMade = (from.run.drops['source'] ?? 0) > 0 || answer(from.run, fields.materialG) !== null;
  const as = isMade ? from.run : asPlanned(from.run, order);
  const vial = vialOf(as, order, madeOf(as, order, `vial:${madeName(from.name)}`));
  return orderOf(run, { ...ofVial({ ...vial, id: madeName(from.name) }), tag: labelTagOf(vial) });
}

/** The run as it would be with everything put in as planned. */
export function asPlanned(run: RunState, { plan }: Order): RunState {
  return plan.drops
    ? { ...run, drops: { ...run.drops, source: plan.drops.drops } }
    : supposing(run, { [fields.materialG.name]: String(plan.amounts.source) });
}

/** Whether the material is in a vial of the rack: drops are counted, or it was weighed. The one in hand may get more. */
export function isReady({ run, order }: Pick<Racked, 'run' | 'order'>): boolean {
  if (!order) return false;
  return order.byDrops ? (run.drops['source'] ?? 0) > 0 : answer(run, fields.materialG) !== null;
}

/** Whether it is not made after all. */
export function isSkipped({ run }: Racked): boolean {
  return answer(run, fields.skip) === 'yes';
}
