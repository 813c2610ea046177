import { nextDilution, type NewDrop, type NextDilution } from '../../core/plan/nextDilution';
import type { PlanInstance } from '../../core/plan/instance';
import { find } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { solventsOnHand } from '../../workshop/onHand';
import type { Offer } from '../engine/task';
import { sourceFor } from './planInstance';
import { dropperOf } from './fields';
import { nearness, percent, type Plans } from './plans';
import { stockOf } from './stock';
import { formatTyped, withLocalSign } from '../../ui/format';

let last = { key: '', found: null as NextDilution | null };

/** What to make next, in words, and the way to Dilute. */
export interface Advice {
  readonly words: string;
  readonly offer?: Offer;
}

/** The one dilution that would bring a plan of no more drops nearest, in the solvent that the shelf has most of. */
export function adviceOf(run: RunState, { instance: asked, chosen }: Pick<Plans, 'instance' | 'chosen'>): Advice {
  const instance = { ...asked, limits: { ...asked.limits, maxDrops: chosen.drops } };
  const drop = newDrop(run, instance);
  const key = JSON.stringify([instance, drop]);
  if (last.key !== key) last = { key, found: nextDilution(instance, drop) };
  const next = last.found;
  if (!next) return { words: `No single new dilution would come nearer in ${dropsText(chosen.drops)}.` };
  const name = instance.components.find(({ id }) => id === next.componentId)!.name!;
  const strength = formatTyped(next.strength * 100, 2);
  const now = next.before === null ? 'not possible now' : `${percent(next.before)} now, at best`;
  const offer = diluteOffer(run, next.componentId, strength);
  return {
    words: `${name} at ‹${withLocalSign(strength)} %› would help most: ${nearness(next.after)}; ${now}.`,
    offer,
  };
}

/** The way to Dilute for a material, with a strength in % w/w where one is advised. */
export function diluteOffer(run: RunState, material: string, strength?: string): Offer {
  const source = sourceFor(run, material);
  const name = find('material', material)?.name ?? 'it';
  const typed = {
    ...(source === undefined ? {} : { bottle: source }),
    ...(strength === undefined ? {} : { strength, basis: '% w/w' }),
  };
  return {
    words: `Dilute ${name}${strength ? ` to ${withLocalSign(strength)} %` : ''}`,
    start: { task: 'dilute', typed },
  };
}

/** A drop of what most vials on the list are diluted in; ethanol while there is none. */
function newDrop(run: RunState, { components }: PlanInstance): NewDrop {
  const solvents = components.flatMap(({ stocks }) => stocks.flatMap(({ id }) => stockOf(id)?.solvent?.id ?? []));
  const often = (id: string) => solvents.filter((other) => other === id).length;
  const id = [...solvents].sort((a, b) => often(b) - often(a))[0] ?? 'ethanol-96';
  const solvent = solventsOnHand().find((one) => one.id === id);
  const { mgPerDrop, spread } = dropOf(dropperOf(run), { id, liquid: solvent?.liquid ?? null, strength: 0 });
  return { mgPerDrop: mgPerDrop.value, rsd: spread, solvent: id };
}
