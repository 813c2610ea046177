import { list } from '../../records/shelf';
import { BESIDE_LIMIT, formatLike, formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { dropsText, offWords } from '../../workshop/dropWords';
import { refusalOfId } from '../../workshop/drinkable/grade';
import { answer, types } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { CardAnswer, SlotFacts, Step } from '../engine/task';
import { asked } from './asked';
import { isWeighed, usedBase } from './drink';
import { drinkFields, fields } from './fields';
import { isIn } from './fit';
import { chosenVial } from './glass';
import { drawPlanned } from './GlassRow';
import { chips } from '../engine/card';
import { drinkSlots } from './drinkSlots';
import { blankOf, factorOf, isBlind, rungsOf, type Rung } from './series';

const SAME = 'Two glasses would get the same number of drops: start higher or use a weaker vial.';

/** A series of glasses at once: what, how much, from which level up, and what that is in drops. */
export function seriesCard(run: RunState): Step {
  const { value: rungs, problem } = outcome(() => rungsOf(run));
  const same = rungs?.some((rung, k) => k > 0 && rung.drops === rungs[k - 1]!.drops);
  const vial = chosenVial(run, 1);
  const refusal = vial ? refusalOfId(vial) : null;
  const wrong = problem ?? (same ? SAME : undefined);
  const stuck = refusal ?? wrong;
  return {
    key: 'ladder',
    say: 'A series of glasses.',
    ask: askedOn(run),
    rows: rowsOf(run),
    card: {
      sentence: sentenceOf(run),
      slots: slotsOf(run, { wrong, refusal }),
      ...(rungs && !wrong ? { answer: answerOf(run, rungs), under: drawPlanned } : {}),
    },
    told: (rungs ?? []).map((rung, k) => [
      `Glass ${k + 1}`,
      `${dropsText(rung.drops)} for ${formatPlain(rung.target, 3)} mg/kg: ${reachedText(rung)}, ${offWords(rung.error)}`,
    ]),
    offers: isIn(run, 1) ? [] : [{ words: 'One glass', type: types(fields.mode, 'one') }],
    done: rungs && !isBlind(run) ? `Drop ${rungs[0]!.drops} into glass 1` : 'Draw the codes',
    ...(stuck === undefined ? {} : { problem: stuck }),
  };
}

/** What a glass comes to: '7.8 mg/kg'. */
export function reachedText({ mgPerKg, known }: Rung): string {
  return `${formatLike(mgPerKg, known, BESIDE_LIMIT)} mg/kg`;
}

function askedOn(run: RunState): Field[] {
  const { doses, series, base, volume, mass } = asked(run);
  return [
    doses[0]!.vial,
    series.glasses,
    isWeighed(run) ? mass : volume,
    ...(list('base').length > 0 ? [base] : []),
    ...(usedBase(run) ? [] : [drinkFields.name]),
    series.lowest,
    series.factor,
    ...(answer(run, series.factor) === 'own' ? [series.ownFactor] : []),
    series.dropper,
    series.blank,
    series.blind,
  ];
}

function rowsOf(run: RunState): Field[] {
  const { by, slack } = asked(run);
  const { brix, abv, density } = drinkFields;
  return [by, slack, ...(usedBase(run) ? [] : [brix, abv, density])];
}

function sentenceOf(run: RunState): string {
  const amount = isWeighed(run) ? '{base.g}' : '{base.ml}';
  const bases = [...(list('base').length > 0 ? ['{base}'] : []), ...(usedBase(run) ? [] : ['{base.name}'])];
  const own = answer(run, asked(run).series.factor) === 'own' ? ' {ownFactor}' : '';
  return `{vial} into {glasses} of ${amount} of ${bases.join(', ')}, from {lowest} up by {factor}${own}, with {dropper}, {blank}, {blind}`;
}

function slotsOf(run: RunState, { wrong, refusal }: { wrong: string | undefined; refusal: string | null }) {
  const count = answer(run, asked(run).series.glasses);
  const slots: Record<string, SlotFacts> = {
    vial: {
      missing: 'the vial',
      ...(refusal ? { wrong: refusal } : isIn(run, 1) ? { fixed: true } : {}),
    },
    glasses: {
      usual: chips(['3', '4', '5'], 'glasses'),
      by: 1,
      ...(count === null ? {} : { shows: `${count} glasses` }),
    },
    lowest: {
      missing: 'the weakest level',
      usual: chips(['1', '2', '5', '10', '20'], 'mg/kg'),
      ...(wrong && !refusal ? { wrong } : {}),
    },
    ownFactor: { missing: 'the factor', usual: chips(['1.25', '1.5', '4'], 'times') },
    ...drinkSlots(run),
  };
  return slots;
}

/** The drops of each glass, and what the blank gets. */
function answerOf(run: RunState, rungs: readonly Rung[]): CardAnswer {
  const blank = blankOf(run, rungs);
  const factor = formatPlain(factorOf(run) ?? 0);
  const solvent = `The blank: ${dropsText(blank?.drops ?? 0)} of ${blank?.solvent}, which could be tasted.`;
  return {
    big: `${rungs.map(({ drops }) => drops).join(', ')} drops`,
    lines: [
      `${reachedText(rungs[0]!)} to ${reachedText(rungs.at(-1)!)}, each ${factor} times the one before`,
      ...(blank ? [blank.solvent ? solvent : 'The blank: the drink alone.'] : []),
    ],
  };
}
