import { formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { judgeFields } from '../shared/judgeRun';
import { asked } from './plan/asked';
import { asksCarrierFood, carrierBottleField, carrierBottleOf, carrierFoodField, NOT_FOOD } from './plan/carrierBottle';
import { carrierOf, isWeighedIn } from './plan/drinkAsked';
import { agentField, agentsLeftOut, creaming, isEmulsion, makeField, oilField } from './plan/emulsion';
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
      dosage: { usual: chips(['0.5', '1', '1.5', '2'], 'g/L'), ...wrongIn(problem) },
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

/** Oils, weighting agent, gum and droplets. */
function emulsionOf(run: RunState, plan: Plan | null): Part {
  const { gum, droplet, citrus } = asked(run);
  const { value: basis } = outcome(() => basisOf(run));
  const oil: readonly Field[] = basis ? [oilField(run, basis)] : [];
  const isUs = answer(run, judgeFields.jurisdiction) === 'US';
  const of = oil.length > 0 ? 'of oils of {oil} ' : '';
  const water = waterBottleField(run);
  return {
    ask: [...oil, agentField(run), gum, droplet, ...(water ? [water] : []), ...(isUs ? [citrus] : [])],
    slots: {
      gum: { usual: chips(['1', '1.5', '2'], 'g/g') },
      droplet: { usual: chips(['0.5', '1', '2'], 'µm') },
      ...(water ? { [water.name]: { missing: 'its water', ...wrongIn(waterBottleOf(run)?.refusal, ADD_BOTTLE) } } : {}),
    },
    section: {
      title: '',
      sentence: `${of}with {agent}, {gum} of gum arabic, droplets under {droplet}${water ? `, water {${water.name}}` : ''}${isUs ? `, {${citrus.name}}` : ''}`,
      lines: plan ? ringWords(run, plan) : [],
    },
  };
}

function ringWords(run: RunState, plan: Plan): string[] {
  const { emulsion, drink } = plan;
  const rise = outcome(() => creaming(run, plan)).value;
  if (!emulsion || !rise) return [];
  const ring = Number.isFinite(rise.days) ? `a ring after about ‹${formatPlain(rise.days, 2)} days›` : 'no ring';
  return [
    `The oil phase has ‹${formatPlain(emulsion.oilPhase, 4)} g/mL›, the drink ‹${formatPlain(drink.densityGPerMl, 4)}›: ${emulsion.matched ? 'matched' : 'not matched'}.`,
    ...(emulsion.agent > 0 ? [`Weighting agent in the drink: ‹${formatPlain(emulsion.agentMgPerL, 3)} mg/L›.`] : []),
    `Such droplets ${rise.mmPerDay < 0 ? 'sink' : 'rise'} ‹${formatPlain(Math.abs(rise.mmPerDay), 2)} mm a day› (Stokes): ${ring}, an estimate.`,
    'Below 1 mm a day is called stable, yet that is 180 mm in half a year.',
  ];
}
