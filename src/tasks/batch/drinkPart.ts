import { list } from '../../records/shelf';
import { formatGiven, formatPlain, formatTyped, withLocalSign } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { answer, types } from '../engine/answers';
import { answerIn, type Field } from '../engine/fields';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { Offer, SlotFacts } from '../engine/task';
import { judgeFields } from '../shared/judgeRun';
import { asked, heldDose } from './plan/asked';
import { drinkBefore, sameBefore } from './plan/before';
import { NOT_FOOD } from './plan/carrierBottle';
import { NOT_FROM_SHELF } from './plan/usualBottle';
import { drinkOf, isByLitre, litresToMake, sugarField, type DrinkAsked } from './plan/drinkAsked';
import { fields } from './plan/fields';
import { ADD_BOTTLE, wrongIn, type Part } from './page';
import { gaugeIn } from './keeping/bottle';
import { sweetPart, sweetSlots } from './keeping/sweetPart';
import { keepAsked } from './plan/keepAsked';
import { recipeOf } from './plan/recipe';
import { asksSpiritFood, spiritBottleField, spiritBottleOf, spiritFoodField } from './plan/spiritBottle';

/** How much of what drink: its dose, sugar, alcohol, gas and market. */
export function drinkPart(run: RunState): Part {
  const now = asked(run);
  const { value: drink, problem } = outcome(() => drinkOf(run));
  const [sugar, isStrong] = [sugarField(run), (answer(run, now.abv) ?? 0) > 0];
  const sweet = `{${sugar.name}}`;
  const { ask: own, words: spirit } = isStrong ? spiritAsked(run) : { ask: [], words: '' };
  const sweets = sweetPart(run) ? [] : [keepAsked(run).sweets[0]!.which];
  return {
    ask: [now.litres, now.what, now.dose, sugar, now.abv, ...own, now.volumes, judgeFields.jurisdiction, ...sweets],
    slots: { ...slotsOf(run, problem), ...gasSlot(run), ...sweetSlots(run) },
    section: {
      title: 'Drink',
      sentence: `{litres} of {what} at {dose}: ${sweet}, {abv}${spirit}, {gas}, under {jurisdiction} rules`,
      lines: [...fromWords(run), ...(drink ? [...lossWords(run, drink), ...drinkWords(run, drink)] : [])],
      chips: sweets.map(({ name }) => name),
    },
  };
}

/** The bottle of the spirit; of one that is none of the Shelf its strength; and where no label tells it, whether it may be drunk. */
function spiritAsked(run: RunState): { ask: Field[]; words: string } {
  const [bottle, food] = [spiritBottleField(run), asksSpiritFood(run) ? spiritFoodField(run) : null];
  const isTyped = bottle === null || answer(run, bottle) === NOT_FROM_SHELF.value;
  const ask = [...(bottle ? [bottle] : []), ...(isTyped ? [asked(run).spirit] : []), ...(food ? [food] : [])];
  const from = bottle ? `from {${bottle.name}}` : '';
  return {
    ask,
    words: ` ${[from, isTyped ? `${from ? 'spirit' : 'from spirit'} of {spirit}` : '', food ? `{${food.name}}` : ''].filter(Boolean).join(', ')}`,
  };
}

function spiritSlots(run: RunState): Record<string, SlotFacts> {
  const [bottle, food] = [spiritBottleField(run), spiritFoodField(run)];
  const slots: Record<string, SlotFacts> = {
    spirit: { usual: chips(['40', '96'], '% ABV') },
    [food.name]: {
      missing: 'drinking alcohol?',
      asks: 'Say if it is drinking alcohol',
      ...wrongIn(answer(run, food) === 'no' ? NOT_FOOD : null),
    },
  };
  if (bottle) slots[bottle.name] = { missing: 'the spirit', ...wrongIn(spiritBottleOf(run)?.refusal, ADD_BOTTLE) };
  return slots;
}

function slotsOf(run: RunState, problem: string | null): Record<string, SlotFacts> {
  const now = asked(run);
  const abv = answer(run, now.abv);
  return {
    litres: { usual: chips(['1', '5', '20', '100'], 'L'), beside: [now.loss, now.vessel], ...vesselFacts(run) },
    what: { missing: 'the formula', ...wrongIn(outcome(() => recipeOf(run)).problem) },
    dose: { missing: 'the dose' },
    [sugarField(run).name]: { missing: 'the sugar', usual: sugarChips(run), offer: otherSugar(run) },
    abv: {
      missing: 'the alcohol',
      usual: drinkChips('abv', ['0', '0.5', '5', '20'], '% ABV'),
      ...(abv === 0 ? { shows: 'no alcohol' } : {}),
      ...wrongIn(problem),
    },
    ...spiritSlots(run),
  };
}

const STIRRED = 0.9; // of a vessel, so that it can be stirred: our choice

/** A drink that its vessel does not hold, and how much it does; a loss that is no loss. */
function vesselFacts(run: RunState): SlotFacts {
  const [loss, vessel] = [answerIn(run, asked(run).loss), answerIn(run, asked(run).vessel)];
  if (!loss.ok) return { wrong: loss.why };
  if (!vessel.ok) return { wrong: vessel.why };
  const made = litresToMake(run);
  if (vessel.value === null || made === null || made <= STIRRED * vessel.value * (1 + 1e-9)) return {};
  const most = formatTyped(Math.floor(1e3 * STIRRED * vessel.value * (1 - loss.value / 100)) / 1e3, 6);
  return {
    wrong: `${formatPlain(made, 4)} L do not fit a vessel of ${formatPlain(vessel.value)} L with room to stir: make several batches.`,
    mend: { words: `Make ${withLocalSign(most)} L`, type: { litres: most } },
  };
}

/** What is made where some of it is lost. */
function lossWords(run: RunState, { litres }: DrinkAsked): string[] {
  const bottled = answer(run, asked(run).litres);
  if (bottled === null || bottled === litres) return [];
  return [`‹${formatPlain(litres, 4)} L› are made, so that ‹${formatPlain(bottled, 4)} L› are left for the bottles.`];
}

function sugarChips(run: RunState) {
  return isByLitre(run) ? chips(['0', '50', '100'], 'g/L') : drinkChips('brix', ['0', '7', '10'], '°Brix');
}

/** Usual values, and those of the last drinks, which say whose they are. */
function drinkChips(of: 'brix' | 'abv', values: readonly string[], unit: string) {
  const known = list('base')
    .slice(0, 3)
    .map((base) => ({ value: formatTyped(base[of]), label: `${formatGiven(base[of])} ${unit}, ${base.name}` }));
  const all = [...known, ...chips(values, unit)];
  return all.filter(({ value }, i) => all.findIndex((one) => one.value === value) === i);
}

function otherSugar(run: RunState): Offer {
  return isByLitre(run)
    ? { words: 'Enter it in g per 100 g (°Brix)', type: types(fields.sugarBy, 'mass') }
    : { words: 'Enter it in g per litre', type: types(fields.sugarBy, 'litre') };
}

/** Still, or how many volumes, with the temperature at which it is gassed. */
function gasSlot(run: RunState): Record<string, SlotFacts> {
  const { volumes, gasAt } = asked(run);
  const at = answerIn(run, gasAt);
  const said = answer(run, volumes);
  return {
    gas: {
      usual: chips(['0', '2.5', '3', '4'], 'volumes'),
      beside: [gasAt],
      ...(said === 0 ? { shows: 'no gas' } : {}),
      ...wrongIn(at.ok ? outcome(() => ({ bar: gaugeIn(run, said ?? 0, at.value) })).problem : at.why),
    },
  };
}

/** Where dose, sugar and alcohol come from. */
function fromWords(run: RunState): string[] {
  const before = drinkBefore(run);
  if (!before?.name) return [];
  const held = heldDose(run);
  if (held !== null)
    return [
      `Sugar and alcohol as in ${before.name}; the dose so that what stayed in the formula keeps its mg/kg: ${formatPlain(sameBefore(run)!.mgPerKg, 3)} mg/kg of the whole then.`,
    ];
  const what = before === sameBefore(run) ? 'Dose, sugar and alcohol' : 'Sugar and alcohol';
  return [`${what} as in ${before.name}.`];
}

/** What it weighs, and the sugar the other way round. */
function drinkWords(run: RunState, { litres, make, densityGPerMl }: DrinkAsked): string[] {
  const weighs = `It weighs ‹${formatPlain(litres * densityGPerMl, 4)} kg›, at ‹${formatPlain(densityGPerMl, 4)} g/mL›`;
  if (make.brix === 0) return [`${weighs}.`];
  const other = isByLitre(run)
    ? `${formatPlain(make.brix * 100, 4)} °Brix`
    : `${formatPlain(make.brix * densityGPerMl * 1000, 4)} g/L`; // mL per L
  return [`${weighs}; that is ‹${other}› of sugar.`];
}
