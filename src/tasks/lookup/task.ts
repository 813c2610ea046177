import { typedText } from '../../core/number/typed';
import { BESIDE_LIMIT, formatKnown, formatLike, formatMeasured, formatPlain, measuredText } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { dropsText, offWords } from '../../workshop/dropWords';
import { chips } from '../engine/card';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { good } from '../engine/readAmount';
import type { CardAnswer, SlotFacts, Step, Task } from '../engine/task';
import { AMOUNTS, asked, fields, type Amount } from './fields';
import { dropFor, sumOf, type Sum } from './sum';

const SENTENCE =
  '{drops} of {strength} in {liquid} from {dropper}, {mgPerDrop} each, into {drink} of drink at {density}, give {ppm}';

function card(run: RunState): Step {
  const { value: sum, problem } = outcome(() => sumOf(run));
  const { strength, drink, dropper } = asked(run);
  const { drops, liquid, mgPerDrop, density, ppm } = fields;
  return {
    key: 'sum',
    say: 'Every amount but one: the other follows.',
    ask: [drops, strength, liquid, dropper, mgPerDrop, drink, density, ppm].map((field): Field =>
      field.name === find(run) ? { ...field, read: () => good(null) } : field,
    ),
    rows: [fields.basis, fields.by],
    card: {
      sentence: SENTENCE,
      slots: slotsOf(run, sum, problem),
      ...(sum ? { answer: answerOf(run, sum) } : {}),
    },
    ...(sum ? { results: [sum.result, ...(sum.perLitre ? [sum.perLitre] : [])] } : {}),
    done: 'Close',
  };
}

function find(run: RunState): Amount {
  return answer(run, fields.find) ?? 'ppm';
}

/** The amount that is found is dashed; another is found by a touch in its sheet, or by typing the one that was found. */
function slotsOf(run: RunState, sum: Sum | null, problem: string | null): Record<string, SlotFacts> {
  const found = find(run);
  const count = answer(run, fields.drops);
  const own: Record<Amount, SlotFacts> = {
    drops: { by: 1, ...(count === null ? {} : { shows: dropsText(count) }) },
    strength: { beside: [fields.basis], usual: chips(['0.1', '1', '2', '5'], answer(run, fields.basis) ?? '') },
    mgPerDrop: answer(run, fields.mgPerDrop) === null ? { shows: dropText(run) } : {},
    drink: { beside: [fields.by], usual: chips(['30', '100', '250', '1000'], answer(run, fields.by) ?? '') },
    ppm: { missing: 'the level', usual: chips(['1', '5', '10', '20', '50'], 'mg/kg') },
  };
  const all = AMOUNTS.map((name): [Amount, SlotFacts] => {
    if (name !== found) {
      const type = { find: name, ...(sum ? { [found]: foundText(sum) } : {}) };
      return [name, { ...own[name], offer: { words: 'Find this from the others', type } }];
    }
    const shows = sum ? shownText(sum) : '?';
    return [name, { ...own[name], sought: true, shows, along: { find: name === 'ppm' ? 'drops' : 'ppm' } }];
  });
  const blamed = found === 'ppm' ? 'strength' : 'ppm';
  const slots: Record<string, SlotFacts> = Object.fromEntries(all);
  return problem === null ? slots : { ...slots, [blamed]: { ...slots[blamed], wrong: problem } };
}

function dropText(run: RunState): string {
  const drop = dropFor(run, 0.01);
  return `${formatKnown(drop.mgPerDrop)} mg`;
}

/** What was found, as it would be typed. */
function foundText({ drops, result }: Sum): string {
  return drops ? String(drops.drops) : typedText(Number(result.amount.value.toPrecision(3)));
}

function shownText({ drops, result }: Sum): string {
  return drops ? dropsText(drops.drops) : `${formatKnown(result.amount, BESIDE_LIMIT)} ${result.unit}`;
}

function answerOf(run: RunState, { drops, result, perLitre }: Sum): CardAnswer {
  const drop = dropFor(run, 0.01);
  if (drops) {
    const reached = formatLike(drops.mgPerKg, drop.mgPerDrop, BESIDE_LIMIT);
    return { big: dropsText(drops.drops), lines: [`${reached} mg/kg, ${offWords(drops.error)}`], how: 0 };
  }
  const { value, uncertainty } = formatMeasured(result.amount, BESIDE_LIMIT);
  const volume = perLitre && `${measuredText(perLitre.amount, 'mg/L', BESIDE_LIMIT)} by volume`;
  return {
    big: `${value} ${result.unit}`,
    lines: [
      [uncertainty && `± ${uncertainty}`, perLitre && 'ppm by mass', volume].filter(Boolean).join(' · '),
      ...(drop.calibrated ? [] : [`A typical drop, not weighed: ${formatPlain(drop.mgPerDrop.value, 2)} mg.`]),
    ],
    how: 0,
  };
}

/** Drops, strength, drink and level: any one of them from the others, on one screen; nothing of it is kept. */
export const lookup: Task = {
  id: 'lookup',
  recorded: false,
  title: () => 'Look up ppm',
  steps: (run) => [card(run)],
  keep: () => [],
};
