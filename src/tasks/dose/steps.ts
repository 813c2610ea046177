import { find, list } from '../../records/shelf';
import { BESIDE_LIMIT, formatKnown, formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { dropsText, offWords } from '../../workshop/dropWords';
import { refusalOf } from '../../workshop/drinkable/grade';
import type { RunState } from '../engine/fold';
import type { Offer, Step } from '../engine/task';
import { abvLines } from './abvTerms';
import { describedBase, isNewBase, isWeighed, lastVolume, usualSlack } from './drink';
import { isIn } from './fit';
import { drawDrops } from './DropButtons';
import { fields, named } from './fields';
import { dropperOf, dropsOf, glassOf, planOf, reachedBy, targetOf, type Glass } from './glass';
import { isLadder } from './ladder';
import { glassResults, reachedResults } from './results';
import { tagOf } from '../../workshop/thing/labelled';

const FEW = 3; // our choice: below that one drop more or less is half of it and more
const LADDER: Offer = { words: 'A ladder of glasses', type: { mode: 'ladder' }, leave: true };
const ONE: Offer = { words: 'One glass only', type: { mode: 'one' } };
const FAR = 0.1; // our choice: a target missed by more than 10 % is worth another vial

/** Which vial, and why one is refused. */
export function vialStep(run: RunState, i: number): Step {
  const key = named('vial', i);
  if (list('vial').length === 0)
    return {
      key,
      say: 'There is no vial on the Shelf yet.',
      more: ['A neat material never goes into a glass: dilute it first.'],
      offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }],
      problem: 'A drink is dosed from a vial: dilute a material first.',
    };
  const chosen = find('vial', run.typed[key]);
  const refusal = chosen && refusalOf(chosen);
  return {
    key,
    say: i === 1 ? 'Which vial goes into the drink?' : 'Which vial next?',
    ask: isIn(run, i) ? [] : [fields.vial(i)], // what has fallen from it is not another vial's
    ...(isIn(run, i) ? { more: ['Some of it is in the glass. Take its drops back to choose another vial.'] } : {}),
    ...(refusal ? { problem: refusal } : {}),
  };
}

/** The drink before the dose: chosen or described, and how much of it. */
export function drinkSteps(run: RunState): Step[] {
  const { problem } = outcome(() => describedBase(run));
  const fresh: Step = {
    key: 'new-base',
    say: 'What is the drink?',
    more: ['As it is before the dose.'],
    ask: [fields.name, fields.brix, fields.abv, fields.density],
    ...(problem ? { problem } : {}),
  };
  const weigh = { words: 'I weigh it', type: { 'base.by': 'mass' } };
  const pour = { words: 'I measure its volume', type: { 'base.by': 'volume' } };
  const amount: Step = {
    key: 'amount',
    say: 'How much of it is in the glass?',
    ask: [isWeighed(run) ? fields.mass : fields.volume(lastVolume(run)), fields.slack(usualSlack(run))],
    offers: [isWeighed(run) ? pour : weigh],
  };
  const choose: Step = { key: 'base', say: 'Which drink?', ask: [fields.base()] };
  return [...(list('base').length > 0 ? [choose] : []), ...(isNewBase(run) ? [fresh] : []), amount];
}

/** mg/kg that planned drops come to: as far as drop and vial are known. */
function plannedText(run: RunState, i: number, plan: { drops: number; mgPerKg: number }): string {
  const glass = glassOf(run, i, plan.drops);
  const vial = glass?.dosings.at(-1)?.vial;
  return vial ? formatKnown(reachedBy(vial, glass.dose).mgPerKg, BESIDE_LIMIT) : formatPlain(plan.mgPerKg, 2);
}

/** What is wanted, in whole drops; from here one glass, or a ladder of them. */
export function aimStep(run: RunState, i: number): Step {
  const { value: plan, problem } = outcome(() => planOf(run, i));
  return {
    key: named('aim', i),
    say: 'How much do you want in it?',
    more: plan
      ? [
          `‹${dropsText(plan.drops)}›: ‹${plannedText(run, i, plan)} mg/kg›, ${offWords(plan.error)}.`,
          ...(plan.drops < FEW || Math.abs(plan.error) > FAR ? ['A weaker vial would come nearer.'] : []),
        ]
      : [],
    ask: [fields.aim(i)],
    offers: i === 1 ? [isLadder(run) ? ONE : LADDER] : [],
    ...(isLadder(run) ? { done: 'On to the ladder' } : {}),
    ...(problem ? { problem } : {}),
  };
}

/** What is in the drink so far: said while dosing. */
function into(run: RunState, glass: Glass, i: number): string {
  const { vial } = glass.dosings.at(-1)!;
  const amount = isWeighed(run)
    ? `${formatPlain(glass.base.drink.mass.value)} g`
    : `${formatPlain(glass.base.facts.volumeMl)} mL`;
  return `${dropperOf(run, i) === 'scale' ? 'Weigh' : 'Drop'} ‹${tagOf(vial)}› into ‹${amount}› of ${glass.base.facts.name}.`;
}

/** The drops, with the number live. */
export function doseStep(run: RunState, i: number): Step {
  const key = named('drops', i);
  const { value: glass, problem } = outcome(() => glassOf(run, i));
  if (!glass) return { key, say: 'Drop.', problem: problem ?? 'The drink is not known yet: go back one step.' };
  const byScale = dropperOf(run, i) === 'scale';
  const none = !byScale && dropsOf(run, i) === 0;
  return {
    key,
    say: into(run, glass, i),
    results: reachedResults(glass),
    ...(byScale
      ? { ask: [fields.weighed(i), fields.readability] }
      : {
          draw: drawDrops(i),
          counting: { counter: key, target: outcome(() => targetOf(run, i)).value?.drops ?? null },
        }),
    done: 'Stir and taste',
    ...(none ? { problem: 'No drop has fallen yet.' } : {}),
  };
}

/** What is in the glass, and whether another vial follows. */
export function glassStep(run: RunState, i: number): Step {
  const { value: glass } = outcome(() => glassOf(run, i));
  const more = run.typed[`more.${i}`] === 'yes';
  return {
    key: `glass.${i}`,
    say: 'This is in the glass.',
    more: glass ? abvLines(glass) : [],
    results: glass ? glassResults(glass) : [],
    cautions: ['Taste a sip of the finished drink, never a drop from a vial.'],
    done: more ? 'To the next vial' : 'What the rules say',
    offers: [
      more
        ? { words: 'No other vial', type: { [`more.${i}`]: 'no' } }
        : { words: 'Add another vial', type: { [`more.${i}`]: 'yes' }, leave: true },
    ],
  };
}
