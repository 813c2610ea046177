import { formatPlain, formatTyped } from '../../ui/format';
import { mostAsked, stageLines } from '../../workshop/liquidStage';
import { solventsOnHand } from '../../workshop/onHand';
import { answer, supposing, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { SlotFacts } from '../engine/task';
import type { Stage } from '../../core/liquid/stage';
import { asked } from './plan/asked';
import { inDrinkOf } from './plan/dissolving';
import { carrierOf, isWeighedIn } from './plan/drinkAsked';
import { fields } from './plan/fields';
import { intoSyrup, rankOf, stagesOf, type StageAt, type StageName } from './plan/stages';
import { recipeOrNull } from './plan/recipe';

const HEAD: Readonly<Record<StageName, Readonly<Record<Stage['verdict'], string>>>> = {
  concentrate: {
    dissolves: 'The carrier should hold all of it.',
    'try it': 'Whether the carrier holds it must be tried.',
    'stays cloudy': 'The carrier does not hold it.',
  },
  syrup: {
    dissolves: 'It should stay dissolved in the syrup.',
    'try it': 'It may stay dissolved in the syrup: try it.',
    'stays cloudy': 'It will not stay dissolved in the syrup.',
  },
  drink: {
    dissolves: 'It should stay dissolved in the drink.',
    'try it': 'It may stay dissolved in the drink: no one can tell without trying.',
    'stays cloudy': 'It will not stay dissolved in the drink.',
  },
};

/** What every stage holds, the worst first. */
export function stageWords(run: RunState): string[] {
  const known = stagesOf(run);
  const only = known.length > 0 ? known : drinkAlone(run);
  const shown = only.filter(({ stage }) => stage.lines.length > 0);
  if (shown.length === 0) return [];
  const worst = [...shown].sort((one, two) => rankOf(two.stage.verdict) - rankOf(one.stage.verdict));
  return [
    ...worst.flatMap(({ name, stage }) => [HEAD[name][stage.verdict], ...stageLines(stage)]),
    'Good to an order of magnitude, all oils of a liquid together: mix a little first, and leave it for a day.',
  ];
}

function drinkAlone(run: RunState): StageAt[] {
  const stage = inDrinkOf(run);
  return stage ? [{ name: 'drink', stage }] : [];
}

/** What is wrong with the slots that decide what stays dissolved, each with the way out; nothing once something is weighed. */
export function stageSlots(run: RunState): Readonly<Record<string, SlotFacts>> {
  const isBegun = recipeOrNull(run)?.lines.some(({ material }) => isWeighedIn(run, material)) ?? false;
  if (isBegun) return {};
  const cloudy = stagesOf(run).filter(({ stage }) => stage.verdict === 'stays cloudy');
  for (const at of cloudy.filter(({ name }) => name !== 'concentrate')) {
    const acid = at.stage.lines.find(({ name, verdict }) => name in SALTS && verdict === 'stays cloudy');
    if (acid) return { [SALTS[acid.name]!]: acidSlot(run, at, acid.name) };
  }
  const first = cloudy.find(({ name }) => name === 'drink') ?? cloudy[0];
  return first ? { concentrate: carrierSlot, syrup: syrupSlot, drink: drinkSlot }[first.name](run, first.stage) : {};
}

/** The field in which each free acid is asked for. */
const SALTS: Readonly<Record<string, string>> = { 'sorbic acid': 'sorbate', 'benzoic acid': 'benzoate' };

function stageIf(run: RunState, name: StageName, typed: Readonly<Record<string, string>>): Stage | undefined {
  return stagesOf(supposing(run, typed)).find((one) => one.name === name)?.stage;
}

/** Another carrier that surely holds it, and the dosage at which this one does. */
function carrierSlot(run: RunState, stage: Stage): Record<string, SlotFacts> {
  const { dosage } = asked(run);
  const better = carrierThat(run, (typed) => stageIf(run, 'concentrate', typed)?.verdict === 'dissolves');
  const gramsPerL = (answer(run, dosage) ?? 0) * stage.fullness.high;
  const weaker = gramsPerL <= 10 ? `, or dose ${formatTyped(gramsPerL, 2)} g/L` : '';
  const name = carrierOf(run)?.name ?? 'the carrier';
  const wrong = `${name} does not hold ${mostAsked(stage)} at this strength: take another carrier${weaker}.`;
  return { carrier: { missing: 'the carrier', wrong, ...better } };
}

/** The first carrier for drinks with which all is well, as what mends the slot. */
function carrierThat(run: RunState, isWell: (typed: Record<string, string>) => boolean): Pick<SlotFacts, 'mend'> {
  const { carrier } = asked(run);
  const usable = solventsOnHand().filter(({ foodPossible }) => foodPossible);
  const better = usable.find(({ id }) => isWell(types(carrier, id)));
  return better ? { mend: { words: `Take ${better.name}`, type: types(carrier, better.id) } } : {};
}

function syrupSlot(run: RunState, stage: Stage): Record<string, SlotFacts> {
  const into = types(fields.into, 'drink');
  const isIn = intoSyrup(run);
  return {
    into: {
      wrong: `The syrup does not hold ${mostAsked(stage)}, which is in it before the water: it would float on it as a ring.`,
      ...(isIn ? { mend: { words: 'Into the drink instead', type: into } } : {}),
    },
  };
}

const MOST_ABV = 60; // % vol, beyond which there is no drink

/** An emulsion; or the alcohol, or the dose, at which it stays dissolved. Where it is the carrier that does not, another one. */
function drinkSlot(run: RunState, stage: Stage): Record<string, SlotFacts> {
  const carrier = carrierOf(run)?.name;
  if (carrier !== undefined && mostAsked(stage) === carrier) {
    const isWell = (typed: Record<string, string>) =>
      stagesOf(supposing(run, typed)).every((one) => one.stage.verdict !== 'stays cloudy');
    const wrong = `The drink does not hold ${carrier}: it would float on it. Take another carrier.`;
    return { carrier: { missing: 'the carrier', wrong, ...carrierThat(run, isWell) } };
  }
  const abv = abvThatHolds(run);
  const mgPerKg = (answer(run, asked(run).dose) ?? 0) / stage.fullness.high;
  const ways = [
    'make an emulsion',
    ...(abv === null ? [] : [`at least ${abv} % ABV`]),
    ...(mgPerKg > 0.1 ? [`at most ${formatPlain(mgPerKg, 2)} mg/kg`] : []),
  ];
  return {
    make: {
      wrong: `The drink does not hold ${mostAsked(stage)}: ${ways.join(', or ')}.`,
      mend: { words: 'Make an emulsion', type: types(fields.make, 'emulsion') },
    },
  };
}

/** The least alcohol, in whole % ABV, at which the drink surely holds the formula; null where none does. */
export function abvThatHolds(run: RunState): number | null {
  const holds = (abv: number) => inDrinkOf(run, abv)?.verdict === 'dissolves';
  if (!holds(MOST_ABV)) return null;
  let [low, high] = [0, MOST_ABV];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** A smaller throw keeps the free acid under what the syrup holds. */
function acidSlot(run: RunState, { name, stage }: StageAt, acid: string): SlotFacts {
  const { parts } = asked(run);
  const now = answer(run, parts) ?? 0;
  const isHeld = (n: number) =>
    stageIf(run, name, { [parts.name]: String(n) })?.lines.find((line) => line.name === acid)?.verdict !==
    'stays cloudy';
  const smaller = Array.from({ length: Math.ceil(now) }, (_, i) => Math.ceil(now) - 1 - i).find(
    (n) => n === 0 || isHeld(n),
  );
  const line = stageLines({ ...stage, lines: stage.lines.filter((one) => one.name === acid) })[0]!;
  return {
    wrong: `In the ${name} its free acid crystallises. ${line.replace(/[‹›]/g, '')}`,
    ...(smaller === undefined || name !== 'syrup'
      ? {}
      : {
          mend: {
            words: smaller === 0 ? 'No syrup' : `1 part to ${smaller} of water`,
            type: { [parts.name]: String(smaller) },
          },
        }),
  };
}
