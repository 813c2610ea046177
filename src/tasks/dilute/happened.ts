import type { Done } from '../../records/kind/record';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields } from './fields';
import type { Order } from './making';

const OFF = 0.02; // our choice: a weighing within 2 % is as planned

/** The drops or the mass that were asked for, where others went in, and what was done about it. */
export function happenedTo(run: RunState, order: Order): Pick<Done, 'plan' | 'slips'> {
  const { id, tag: what } = order.source;
  const rescued = answer(run, fields.overshoot) === 'rescue';
  const way = rescued ? 'Rescued with more solvent' : 'Left as it is';
  if (order.byDrops) {
    const [planned, counted] = [order.plan.drops!.drops, run.drops['source'] ?? 0];
    const plan = { lines: [{ id, code: what, drops: planned }], error: Math.abs(order.plan.drops!.error) };
    return counted === planned ? { plan } : { plan, slips: [{ id, what, planned, counted, unit: 'drops', way }] };
  }
  const [planned, counted] = [order.plan.amounts.source, answer(run, fields.materialG) ?? 0];
  const isOff = Math.abs(counted - planned) > Math.max(OFF * planned, order.readabilityG);
  return isOff ? { slips: [{ id, what, planned, counted, unit: 'g', way }] } : {};
}
