import { isOver } from '../../core/limits/finding';
import type { Ceiling } from '../../core/limits/highestDose';
import { formatPlain, formatTyped, withLocalSign } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import type { Judgement } from '../../workshop/drinkable/judging';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Card, CardAnswer, Offer, Step } from '../engine/task';
import { although, asksWhy, toldWhy } from '../shared/goingOn';
import { asked } from './plan/asked';
import { concentratePart } from './concentratePart';
import { drinkOf, refusalOfLine, sourceOf, spareFactor } from './plan/drinkAsked';
import { drinkPart } from './drinkPart';
import { acidPart } from './keeping/acidPart';
import { gasPart } from './keeping/gasPart';
import { keepPart } from './keeping/keepPart';
import { sweetPart } from './keeping/sweetPart';
import { labelPart } from './label/labelPart';
import { plannedToLabel } from './label/planned';
import { fields } from './plan/fields';
import { moreFields } from './plan/moreFields';
import { massOf } from './plan/goods';
import { isWeighedAsBefore } from './plan/weighedAsBefore';
import { ownLines } from './plan/ingredients';
import { ownPart } from './ownPart';
import { liquidRefusal } from './plan/spiritBottle';
import { ADD_BOTTLE, type Part } from './page';
import { basisOf, concentrateOf, planOf } from './plan/plan';
import type { Plan } from './plan/planParts';
import { judgeDrink, makingOf, plannedDrink, type Made, type Making } from './progress';
import { recipeOptions, recipeOrNull } from './plan/recipe';
import { intoSyrup } from './plan/stages';
import { rulesOffer, withRules } from './rules';
import { stageSlots } from './stageWords';
import { syrupPart } from './syrupPart';
import { weighingPart } from './weighingPart';

const WRITE: Offer = { words: 'Write a formula', start: { task: 'formula', typed: {} } };

/** Nothing is there to make a drink from. */
const nothingYet: Step = {
  key: 'recipe',
  say: 'A batch starts from a formula, or from a drink that you liked. You have neither yet.',
  offers: [WRITE],
  problem: 'A batch begins with a formula or with a drink you liked.',
};

/** The whole recipe on one page: drink, syrup, concentrate and weighing, each a sentence with what it comes to, and what the rules say. */
export function recipeStep(run: RunState, first: string | null, isShown: boolean): Step {
  if (recipeOptions(run).length === 0) return nothingYet;
  const { value: making, problem } = outcome(() => makingOf(run));
  const { value: plan } = outcome(() => planOf(run));
  const { value: drink } = outcome(() => (isShown && plan ? plannedDrink(plan) : null)); // it takes a while
  const { value: judgement } = outcome(() => (plan && drink ? judgeDrink(run, plan, drink) : null));
  const parts = partsOf(run, plan, making, drink);
  const why = asksWhy(run, judgement);
  const wrong = parts.flatMap(({ slots }) => Object.values(slots).flatMap((slot) => slot.wrong ?? []))[0];
  const stuck = wrong ?? refusalOf(run) ?? problem ?? why.problem;
  return {
    key: 'recipe',
    say: 'The recipe.',
    ask: parts.flatMap(({ ask }) => ask),
    rows: [asked(run).sugarBy, asked(run).scatter, although],
    card: cardOf(run, parts, { plan, judgement, isExact: making !== null && answer(run, fields.exactly) !== null }),
    told: toldWhy(run, judgement),
    offers: [...rulesOffer(judgement), { ...WRITE, place: 'more' }],
    types: {
      [fields.plannedFor.name]: recipeOrNull(run)?.id ?? '',
      ...(isWeighedAsBefore(run) ? {} : types(moreFields.byCapacity, 'yes')),
    },
    done: first ?? 'Weigh',
    ...(stuck ? { problem: stuck } : {}),
  };
}

/** The sections of the page; the refusal of the sums stands where it can be mended. */
function partsOf(run: RunState, plan: Plan | null, making: Making | null, drink: Made | null): Part[] {
  const failed = [drinkOf, basisOf, concentrateOf, planOf].map((part) => outcome(() => part(run)).problem);
  const [ofDrink, ofBasis, ofConcentrate, ofPlan] = failed;
  const ofDosage = ofDrink ? null : (ofBasis ?? ofConcentrate ?? null);
  const ofSyrup = ofDrink || ofDosage ? null : (ofPlan ?? null);
  const own = ownPart(run, ofSyrup);
  const isOwn = ownLines(run).length > 0;
  return [
    drinkPart(run),
    ...one(sweetPart(run)),
    ...one(own),
    syrupPart(run, plan, isOwn ? null : ofSyrup),
    acidPart(run),
    withStages(run, keepPart(run)),
    ...one(gasPart(run)),
    concentratePart(run, plan, ofDosage),
    weighingPart(run, recipeOrNull(run), making),
    ...(plan ? [labelPart(run, drink && plannedToLabel(run, plan, drink))] : []),
  ];
}

/** A preservative whose free acid crystallises says so in its own slot. */
function withStages(run: RunState, part: Part): Part {
  const wrong = stageSlots(run);
  const own = Object.entries(part.slots).map(([name, facts]) => [name, { ...facts, ...wrong[name] }] as const);
  return { ...part, slots: Object.fromEntries(own) };
}

function one(part: Part | null): Part[] {
  return part ? [part] : [];
}

/** Why the batch cannot be made from what is on the Shelf, in one sentence; undefined where it can. */
export function refusalOf(run: RunState): string | undefined {
  const lines = [...(recipeOrNull(run)?.lines ?? []), ...ownLines(run)];
  const refusals = lines.map((line) => refusalOfLine(run, line));
  return refusals.find((one) => one !== null) ?? liquidRefusal(run) ?? undefined;
}

interface Sight {
  readonly plan: Plan | null;
  readonly judgement: Judgement | null;
  /** Made exactly as one before: only what may be another bottle is asked. */
  readonly isExact: boolean;
}

function cardOf(run: RunState, parts: readonly Part[], { plan, judgement, isExact }: Sight): Card {
  const sections = parts.map(({ section }) => section);
  const slots = Object.assign({}, ...parts.map((part) => part.slots)) as NonNullable<Card['slots']>;
  const fixed = parts
    .flatMap(({ ask }) => ask)
    .filter(({ name }) => isExact && !/^lot\.|food/.test(name))
    .map(({ name }) => [name, { ...slots[name], fixed: true as const }]);
  return {
    sentence: sections.map(({ title, sentence }) => `${title}: ${sentence}.`).join(' '),
    sections,
    slots: { ...slots, ...Object.fromEntries(fixed) },
    ...(plan ? { answer: answerOf(run, plan, judgement) } : {}),
    ...adviceOf(run, plan, judgement),
  };
}

/** What the recipe comes to, and what the rules say of it. */
function answerOf(run: RunState, plan: Plan, judgement: Judgement | null): CardAnswer {
  const { concentrate, batch, water, drink } = plan;
  const kg = (grams: number) => `${formatPlain(grams / 1000, 3)} kg`;
  const g = (grams: number) => `${formatPlain(grams, 3)} g`;
  const [needed, spare] = [massOf(concentrate), spareFactor(run)];
  const dose = `${formatPlain(drink.mgPerKg, 3)} mg/kg`;
  const thrown = intoSyrup(run)
    ? `concentrate in ${kg(batch.syrup.mass)} of syrup, to ${kg(water)} of water: ${dose}`
    : `concentrate into the drink: ${kg(batch.syrup.mass - needed)} of syrup, ${kg(water)} of water: ${dose}`;
  const line = water > 0 ? thrown : `concentrate in ${kg(batch.drink.mass)}: ${dose}`;
  const lines = spare > 1 ? [line, `${g(needed)} of it is for this batch.`] : [line];
  return withRules({ big: g(needed * spare), lines }, judgement);
}

/** A bottle that is missing; else a dose that passes, where this one is over. */
function adviceOf(run: RunState, plan: Plan | null, judgement: Judgement | null): Pick<Card, 'advice'> {
  const lines = [...(recipeOrNull(run)?.lines ?? []), ...ownLines(run)];
  const open = lines.find((line) => sourceOf(run, line) === null);
  if (open) return { advice: { words: refusalOfLine(run, open)!, offer: ADD_BOTTLE } };
  const [ceiling] = judgement?.ceilings ?? [];
  const lower = plan && ceiling && lowerOffer(ceiling, plan.drink.mgPerKg);
  return lower ? { advice: lower } : {};
}

/** Our choice: twice what a weighing may be off by, so that the drink as weighed still passes. */
const IN_HAND = 0.02;

/** The reverse answer as an offer, where the dose is over: a little under it, and rounded down. */
function lowerOffer({ times, binding, finding }: Ceiling, mgPerKg: number): Card['advice'] | null {
  const most = times * mgPerKg * (1 - IN_HAND);
  if (!isOver(finding) || !(most > 0)) return null;
  const digits = 10 ** (Math.floor(Math.log10(most)) - 2); // three digits
  const dose = formatTyped(Math.floor(most / digits) * digits, 3);
  return {
    words: `At ${formatPlain(mgPerKg, 3)} mg/kg it is over the limit, through ${binding}.`,
    offer: { words: `Take ${withLocalSign(dose)} mg/kg: ${binding} then passes`, type: { dose } },
  };
}
