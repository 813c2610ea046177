import { formatPlain, formatTyped } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { answer } from '../engine/answers';
import { answerIn, type Field } from '../engine/fields';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { Offer, SlotFacts } from '../engine/task';
import { judgeFields } from '../shared/judgeRun';
import { asked } from './plan/asked';
import { asksCarrierFood, carrierBottleField, carrierBottleOf, carrierFoodField, NOT_FOOD } from './plan/carrierBottle';
import { carrierOf, drinkOf, isWeighedIn } from './plan/drinkAsked';
import { emulsionWords } from './emulsionWords';
import { agentField, agentsLeftOut, dosageThatWorks, isEmulsion, makeField, oilField } from './plan/emulsion';
import { emulsifierField, emulsifierOf, isOfOneVessel, ratioField } from './plan/phases';
import { waterBottleField, waterBottleOf } from './plan/waterBottle';
import { ADD_BOTTLE, wrongIn, type Part } from './page';
import { intoField } from './plan/stages';
import { stageSlots, stageWords } from './stageWords';
import { basisOf } from './plan/plan';
import type { Plan } from './plan/planParts';

/** How strong the concentrate is, and in what: a carrier, or the water of an emulsion. */
export function concentratePart(run: RunState, plan: Plan | null, problem: string | null): Part {
  const { dosage, spare } = asked(run);
  const own = isEmulsion(run) ? emulsionOf(run, plan) : solutionOf(run);
  const isThrown = (answer(run, asked(run).parts) ?? 0) > 0;
  const { make, carrier, into } = stageSlots(run);
  return {
    ask: [dosage, makeField(run), ...own.ask, ...(isThrown ? [intoField(run)] : []), spare],
    slots: {
      dosage: { usual: chips(['0.5', '1', '1.5', '2'], 'g/L'), ...wrongIn(problem, moreDosage(run)) },
      spare: {
        usual: chips(['0', '10', '25', '100'], '%'),
        shows: answer(run, spare) === 0 ? 'none to spare' : `${formatPlain(answer(run, spare) ?? 0)} % to spare`,
      },
      ...own.slots,
      ...(make ? { make } : {}),
      ...(carrier ? { carrier } : {}),
      ...(into ? { into } : {}),
    },
    section: {
      title: isEmulsion(run) ? 'Emulsion' : 'Concentrate',
      sentence: `{dosage} of drink, {make} ${own.section.sentence}, ${isThrown ? '{into}, ' : ''}{spare}`,
      lines: [...strengthWords(run), ...own.section.lines],
      folded: [...stageWords(run), ...(isEmulsion(run) ? agentsLeftOut(run) : [])],
    },
  };
}

/** The dosage that an emulsion of so much oil takes, as what mends it. */
function moreDosage(run: RunState): Offer | undefined {
  const { value: basis } = outcome(() => basisOf(run));
  const works = basis && isEmulsion(run) ? dosageThatWorks(run, basis) : null;
  return works === null
    ? undefined
    : { words: `Dose ${formatPlain(works, 2)} g/L`, type: { dosage: formatTyped(works, 2) } };
}

function strengthWords(run: RunState): string[] {
  const { value: basis } = outcome(() => basisOf(run));
  const share = basis && (basis.drink.mgPerKg * basis.drink.densityGPerMl) / (basis.gramsPerL * 1000);
  return share === null ? [] : [`‹${formatPlain(share * 100, 3)} % w/w› of it is formula.`];
}

/** The carrier, its bottle, and where no label tells it whether that is food grade. */
function solutionOf(run: RunState): Part {
  const { carrier } = asked(run);
  const chosen = carrierOf(run);
  const bottle = chosen && carrierBottleField(run);
  const food = chosen && asksCarrierFood(run) ? carrierFoodField(run) : null;
  const from = bottle ? ` from {${bottle.name}}` : '';
  const slots: Record<string, SlotFacts> = { carrier: { missing: 'the carrier' } };
  if (bottle)
    slots[bottle.name] = {
      missing: 'its bottle',
      ...(isWeighedIn(run, chosen.id) ? { fixed: true } : {}),
      ...wrongIn(carrierBottleOf(run)?.refusal, ADD_BOTTLE),
    };
  if (food)
    slots[food.name] = {
      missing: 'food grade?',
      asks: 'Say if the carrier is food grade',
      ...wrongIn(answer(run, food) === 'no' ? NOT_FOOD : null),
    };
  return {
    ask: [carrier, ...(bottle ? [bottle] : []), ...(food ? [food] : [])],
    slots,
    section: { title: '', sentence: `in {carrier}${from}${food ? `, {${food.name}}` : ''}`, lines: [] },
  };
}

/** Oils, weighting agent, emulsifier and droplets. */
function emulsionOf(run: RunState, plan: Plan | null): Part {
  const { droplet, citrus } = asked(run);
  const { value: basis } = outcome(() => basisOf(run));
  const oil: readonly Field[] = basis ? [oilField(run, basis)] : [];
  const isUs = answer(run, judgeFields.jurisdiction) === 'US';
  const of = oil.length > 0 ? 'of oils of {oil} ' : '';
  const ratio = ratioField(run);
  const own = emulsifierOf(run).ratio;
  const water = waterBottleField(run);
  return {
    ask: [
      ...oil,
      agentField(run),
      ratio,
      emulsifierField(run),
      droplet,
      ...(water ? [water] : []),
      ...(isUs ? [citrus] : []),
    ],
    slots: {
      [ratio.name]: { usual: chips([own.low, own.usual, own.high].map(String), 'g/g'), ...ratioWrong(run, ratio) },
      emulsifier: wrongIn(tooStrong(run), { words: 'Make a solution', type: { make: 'clear' } }),
      droplet: { usual: chips(['0.5', '1', '2'], 'µm') },
      ...(water ? { [water.name]: { missing: 'its water', ...wrongIn(waterBottleOf(run)?.refusal, ADD_BOTTLE) } } : {}),
    },
    section: {
      title: '',
      sentence: `${of}with {agent}, {${ratio.name}} of {emulsifier}, droplets under {droplet}${water ? `, water {${water.name}}` : ''}${isUs ? `, {${citrus.name}}` : ''}`,
      lines: plan ? emulsionWords(run, plan) : [],
    },
  };
}

function ratioWrong(run: RunState, ratio: Field<number>): SlotFacts {
  const read = answerIn(run, ratio);
  return read.ok ? {} : wrongIn(read.why);
}

/** Why an emulsion breaks in a drink of that much alcohol; null where it does not. A run of an older version is not asked. */
function tooStrong(run: RunState): string | null {
  const { abv, name } = emulsifierOf(run);
  const { value: drink } = outcome(() => drinkOf(run));
  if (!drink || drink.abv <= abv || isOfOneVessel(run)) return null;
  return `Over ${abv} % ABV ${name} comes out and the emulsion breaks: make a solution, which alcohol helps.`;
}
