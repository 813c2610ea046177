import { formatPlain, formatTyped, showsNothing } from '../../ui/format';
import { sourcesOf } from '../../workshop/sources';
import { tagOf } from '../../workshop/thing/labelled';
import { answer, ask } from '../engine/answers';
import { answerIn, type Field } from '../engine/fields';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import { asked } from './plan/asked';
import { isWeighedIn, refusalOfLine, sourceOf } from './plan/drinkAsked';
import { fields } from './plan/fields';
import { ownLines } from './plan/ingredients';
import { ADD_BOTTLE, wrongIn, type Part } from './page';
import { leastOf, stepOf, type Pour } from './vessel/pour';
import type { Making } from './progress';
import type { Recipe, RecipeLine } from './plan/recipe';
import { isWeighedAsBefore } from './plan/weighedAsBefore';
import { changedLots } from './repeated';

/** From which bottles and vials it is weighed, and on which scales. What is for the nose only is shown, and refused. */
export function weighingPart(run: RunState, recipe: Recipe | null, making: Making | null): Part {
  const { fine, coarse, tolerance } = asked(run);
  const lots = linesOf(run, recipe).map((line) => [line, lotField(run, line)] as const);
  const from = lots.length > 0 ? `From ${lots.map(([, { name }]) => `{${name}}`).join(', ')}, on` : 'On';
  return {
    ask: [...lots.map(([, field]) => field), fine, coarse, tolerance],
    slots: {
      ...Object.fromEntries(lots.map(([line, { name }]) => [name, lotSlot(run, line)])),
      ...scaleSlots(run, making),
    },
    section: {
      title: 'Weighing',
      sentence: `${from} scales of {fine} and {coarse}, each weighing to within {tolerance}`,
      lines: [...(recipe ? changedLots(run, linesOf(run, recipe)) : []), ...scaleWords(run, making)],
    },
  };
}

/** Lines of the formula, and ingredients of one's own. */
function linesOf(run: RunState, recipe: Recipe | null): RecipeLine[] {
  return [...(recipe?.lines ?? []), ...ownLines(run)];
}

function lotField(run: RunState, line: RecipeLine): Field<string> {
  const { material, name } = line;
  const options = sourcesOf(material).map(({ id, words, more }) => ({ value: id, label: words, hint: more }));
  return ask(fields.lot(material, name), { options, preset: sourceOf(run, line)?.id ?? '' });
}

/** The bottle or vial of a line by what is written on it; fixed once something of it is in the vessel. */
function lotSlot(run: RunState, line: RecipeLine): SlotFacts {
  const source = sourceOf(run, line);
  const from = source?.vial ?? source?.bottle;
  return {
    missing: line.name,
    ...(from ? { shows: tagOf(from) } : {}),
    ...(isWeighedIn(run, line.material) ? { fixed: true } : {}),
    ...wrongIn(refusalOfLine(run, line), ADD_BOTTLE),
  };
}

function scaleSlots(run: RunState, making: Making | null): Record<string, SlotFacts> {
  const { scatter } = asked(run);
  const read = answerIn(run, scatter);
  const nothing = making ? tooFine(run, making) : [];
  const few = making && nothing.length === 0 ? tooLittle(run, making) : {};
  const lost = `The scale would show nothing of ${nothing.join(', ')}: make more, take a finer scale, or dilute it on the Bench first.`;
  return {
    fine: {
      usual: chips(['0.1', '0.01', '0.001', '0.0001'], 'g'),
      beside: [scatter],
      ...wrongIn(read.ok ? (nothing.length > 0 ? lost : null) : read.why),
      ...(read.ok ? few : {}),
    },
    coarse: { usual: chips(['0.1', '1', '5', '10'], 'g') },
    tolerance: { usual: chips(['0.5', '1', '2'], '%') },
  };
}

const WIDEST = 5; // %, the tolerance that is offered at most: our choice

/** What no scale here can weigh, diluted or not, and the ways out: a larger drink, a wider tolerance. A run that is past this goes on. */
function tooLittle(run: RunState, { plan, vessel, syrup }: Making): SlotFacts {
  const lost = [...vessel.pours, ...syrup.pours].filter(({ tooSmall, again }) => tooSmall && !again);
  if (lost.length === 0 || isWeighedAsBefore(run)) return {};
  const times = Math.max(...lost.map(({ scale, target }) => leastOf(run, scale)! / target));
  const litres = roundedUp((answer(run, asked(run).litres) ?? plan.drink.litres) * times);
  const percent = roundedUp((answer(run, asked(run).tolerance) ?? 1) * times);
  const finer = `a scale of ${formatPlain(10 ** Math.floor(Math.log10(stepOf(run, 'fine') / times)))} g`;
  return {
    wrong: `Too little for the scale, diluted or not: ${namesOf(lost)}. Make ${formatPlain(litres)} L or more, take ${finer}, or a dilution from the Bench.`,
    mend:
      percent <= WIDEST
        ? { words: `Weigh to within ${formatPlain(percent)} %`, type: { tolerance: formatTyped(percent, 3) } }
        : { words: `Make ${formatPlain(litres)} L`, type: { litres: formatTyped(litres, 3) } },
  };
}

/** Up to the next number of two digits. */
function roundedUp(value: number): number {
  const digit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil((value / digit) * (1 - 1e-9)) * digit).toPrecision(2));
}

/** What can be weighed on the scales, what is diluted first, and what is too little all the same. */
function scaleWords(run: RunState, making: Making | null): string[] {
  const least = leastOf(run);
  const pours = making ? [...making.vessel.pours, ...making.syrup.pours] : [];
  const small = new Map(pours.flatMap(({ stock, again }) => (stock && !again ? [[stock.key, stock] as const] : [])));
  const stocks = [...small.values()].map(({ from, share }) => `${from.name} to ${formatPlain(share.value * 100, 3)} %`);
  const lost = pours.filter(({ tooSmall }) => tooSmall);
  const isNeat = lost.some(({ into, goods }) => into === 'concentrate' && goods.source && !goods.beside);
  return [
    ...(least === null ? [] : [`The fine scale weighs ‹${formatPlain(least, 3)} g› and more.`]),
    ...(stocks.length > 0 ? [`Diluted first, because there is less of it: ${stocks.join(', ')}.`] : []),
    ...(lost.length > 0 && (isWeighedAsBefore(run) || (making && tooFine(run, making).length > 0)) // else it is said at the scale
      ? [`Too little for this scale, diluted or not: ${namesOf(lost)}. Make more, or take a finer scale.`]
      : []),
    ...(isNeat ? ['A material can be diluted on the Bench first; its vial is then among the bottles to take.'] : []),
  ];
}

const namesOf = (pours: readonly Pour[]) => pours.map(({ goods }) => goods.name).join(', ');

/** What is planned, and a scale of such a readability would show nothing of. */
function tooFine(run: RunState, { vessel, syrup }: Making): string[] {
  const isNothing = (grams: number, scale: Pour['scale']) => showsNothing(grams, stepOf(run, scale));
  const lost = [...vessel.pours, ...syrup.pours].filter(
    ({ again, target, scale, stock }) =>
      !again && (isNothing(target, scale) || (stock && [stock.neatG, stock.carrierG].some((g) => isNothing(g, scale)))),
  );
  return lost.map(({ goods }) => goods.name);
}
