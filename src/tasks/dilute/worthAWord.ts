import { strengthWords, twinsOf } from '../../workshop/thing/labelled';
import { today } from '../../workshop/today';
import { dropsText } from '../../workshop/dropWords';
import { ask } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { dilutionUseBy } from './dilutionUseBy';
import { fields } from './fields';
import { madeOf } from './made';
import { tooLittleOf, tooLittleSolvent, type Order } from './making';
import { asPlanned } from './rack';
import { solventBottleOf } from './source';
import { writtenOn } from './vialMade';

/** What was counted before the way back to this card: it is in the vial. */
export function inAlready(now: RunState): string[] {
  const drops = now.drops['source'] ?? 0;
  return drops > 0
    ? [`${dropsText(drops)} are counted for this vial already. For another one discard this run, behind ⋯.`]
    : [];
}

/** What speaks against the plan, and leaves it to the person: too little left, past its date. */
export function worthAWord(now: RunState, order: Order): string[] {
  const short = [tooLittleOf(order), tooLittleSolvent(order, solventBottleOf(now))];
  return [...short, isPast(now, order) && PAST].filter((line): line is string => !!line);
}

/** The code that is proposed where that of the material is on a vial of that strength and day already; it may be changed. */
export function codeAsked(now: RunState, order: Order): Field[] {
  const { label, madeOn, code } = writtenOnPlanned(now, order);
  if (code.own === null && code.free === order.source.code) return [];
  const refuse = (one: string) => (twinsOf(one, label, madeOn).length > 0 ? `${one}: ${TWIN}` : null);
  return [ask(fields.code, { preset: code.free, refuse })];
}

const TWIN = 'this code is on a vial of the same strength and day, and a code means one vial.';

/** Why the code of the vial gets a letter; null where it does not. */
export function twinWords(now: RunState, order: Order): string | null {
  const { label, code } = writtenOnPlanned(now, order);
  const strength = strengthWords(label);
  return code.free === order.source.code
    ? null
    : `${order.source.code} ${strength} was made today already, and a code means one vial: this one is ${code.own ?? code.free} ${strength}.`;
}

function writtenOnPlanned(now: RunState, order: Order) {
  const as = asPlanned(now, order);
  return writtenOn(as, order, madeOf(as, order));
}

const PAST = 'What it is made from is past its date: smell it against fresh first.';

function isPast(now: RunState, order: Order): boolean {
  return dilutionUseBy(now, order, today()).day < today();
}
