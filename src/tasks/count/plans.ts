import { tradeOff, type TradeOff, type TradePoint } from '../../core/plan/tradeOff';
import type { PlanAnswer, PlanInstance, PlanRefusal } from '../../core/plan/instance';
import { formatPlain } from '../../ui/format';
import { refusalWords } from '../../ui/sentence';
import { dropsText } from '../../workshop/dropWords';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { oncePerRun } from '../engine/oncePerRun';
import { fields } from './fields';
import { kneeOf, ownUncertainty } from './knee';
import { instanceOf } from './planInstance';
import type { Target } from './rounds';
import { stockOf } from './stock';

let last = { key: '', found: null as TradeOff | null };

/** The trade-off of what is asked; the last one is kept, since a screen asks for it at every touch. */
function tradeOffOf(instance: PlanInstance): TradeOff {
  const key = JSON.stringify(instance);
  if (last.key !== key || !last.found) last = { key, found: tradeOff(instance) };
  return last.found!;
}

/** The plans to choose from: all steps of the curve, those worth their drops, the one proposed, and the one chosen (else that). */
export interface Plans {
  readonly ok: true;
  readonly instance: PlanInstance;
  readonly all: readonly TradePoint[];
  readonly worth: readonly TradePoint[];
  readonly proposed: TradePoint;
  readonly chosen: TradePoint;
  /** How well the vials are known, a fraction (k = 2). */
  readonly own: number;
}

/** Why there are no plans, in the person's words. */
export interface NoPlan {
  readonly ok: false;
  /** The line at fault; null where it is the limits as a whole. */
  readonly componentId: string | null;
  readonly why: string;
  readonly remedy: string;
}

/** The plans of a run, or why there are none. */
export const plansOf = oncePerRun((run: RunState): Plans | NoPlan => {
  const instance = instanceOf(run);
  const found = tradeOffOf(instance);
  if (!found.ok) return inWords(found, instance);
  const worth = found.points.filter((point) => point.worth || point.recommended);
  const own = ownUncertainty(run, instance, worth.find(({ recommended }) => recommended)!.plan);
  const proposed = kneeOf(worth, own);
  const chosen = worth.find(({ drops }) => String(drops) === answer(run, fields.point)) ?? proposed;
  return { ok: true, instance, all: found.points, worth, proposed, chosen, own };
});

function inWords({ componentId, why, remedy }: PlanRefusal, { components }: PlanInstance): NoPlan {
  const nameOf = (id: string) => stockOf(id)?.tag ?? components.find((line) => line.id === id)?.name;
  return { ok: false, componentId, why: refusalWords(why, nameOf), remedy: refusalWords(remedy, nameOf) };
}

/** The drops of a plan in the order of counting: fewest first, since a slip there is best mended by lines still to come. */
export function targetsOf({ plan }: Pick<PlanAnswer, 'plan'>): Target[] {
  return Object.entries(plan)
    .map(([id, drops]) => ({ id, drops }))
    .sort((a, b) => a.drops - b.drops);
}

/** A fraction in %, with two digits unless more are asked for. */
export function percent(x: number, digits = 2): string {
  return `${formatPlain(x * 100, digits)} %`;
}

/** How near a plan comes, in words. */
export function nearness({ drops, objective }: Pick<PlanAnswer, 'drops' | 'objective'>): string {
  return `${dropsText(drops)}, at most ${percent(objective)} off`;
}

/** A signed deviation in %, '+3.1 %'. */
export function signedPercent(x: number): string {
  return `${x < 0 ? '−' : '+'}${formatPlain(Math.abs(x) * 100, 2)} %`;
}
