import { mayCrystallise } from '../../core/drink/batchPlan';
import { carbonDioxidePerLitre, gaugeForVolumes } from '../../core/liquid/carbonation';
import { celsius } from '../../core/number/units';
import { list } from '../../records/shelf';
import { formatPlain, formatTyped } from '../../ui/format';
import { textOf, valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { sourcesOf } from '../../workshop/sources';
import type { Step } from '../engine/task';
import { changedLots } from './repeated';
import { traitsOf } from './answers';
import { NOT_FOOD } from './carrierBottle';
import { isEmulsion } from './emulsion';
import { fields } from './fields';
import { planOf } from './plan';
import type { Plan } from './planParts';
import { outcome } from '../../workshop/attempt';
import { recipeOf, recipeOptions } from './recipe';
import {
  drinkBefore,
  drinkOf,
  isByLitre,
  isWeighedIn,
  refusalOfLine,
  sameBefore,
  sourceOf,
  sugarField,
  usualDrink,
  recipeOrNull,
  type DrinkAsked,
} from './drinkAsked';

/** What is made. */
export function whatStep(run: RunState): Step {
  const write = [{ words: 'Write a formula', start: { task: 'formula', typed: {} } }];
  if (recipeOptions(run).length === 0)
    return {
      key: 'what',
      say: 'There is no formula yet, and no drink that was tasted.',
      offers: write,
      problem: 'A batch begins with a formula or with a drink you liked.',
    };
  const { problem } = outcome(() => recipeOf(run));
  return {
    key: 'what',
    say: 'What do you make?',
    ask: [fields.what(run)],
    offers: write,
    ...(problem ? { problem } : {}),
  };
}

/** From which bottle or vial each material comes. What is for the nose only is shown, and refused. */
export function lotsStep(run: RunState): Step {
  const recipe = recipeOrNull(run)!;
  const problem = recipe.lines.map((line) => refusalOfLine(run, line)).find((one) => one !== null);
  return {
    key: 'lots',
    say: 'Which bottles do you take?',
    more: changedLots(run, recipe),
    ask: recipe.lines
      .filter(({ material }) => !isWeighedIn(run, material)) // its bottle is in the vessel
      .map((line) => {
        const { material, name } = line;
        const options = sourcesOf(material).map(({ id, words, more }) => ({ value: id, label: words, hint: more }));
        return fields.lot(material, name, options, sourceOf(run, line)?.id ?? '');
      }),
    ...(problem ? { problem, offers: [{ words: 'Add a bottle', start: { task: 'bottle', typed: {} } }] } : {}),
  };
}

/** How much drink, how strong, how sweet. */
export function drinkSteps(run: RunState): Step[] {
  const usual = usualDrink(run);
  const { value: drink, problem } = outcome(() => drinkOf(run));
  const before = drinkBefore(run);
  const from = before?.name;
  const what = before && before === sameBefore(run) ? 'Dose, sugar and alcohol' : 'Sugar and alcohol';
  const first: Step = {
    key: 'drink',
    say: 'What drink, and how much?',
    more: [
      ...(from ? [`${what} as in ${from}; change what you like.`] : []),
      ...(drink && drink.make.brix > 0 ? [sugarWords(run, drink)] : []),
    ],
    ask: [fields.litres, fields.dose(usual.dose), sugarField(run), fields.abv(usual.abv)],
    offers: [
      isByLitre(run)
        ? { words: 'Sugar in g per 100 g (°Brix)', type: { 'sugar.by': 'mass' } }
        : { words: 'Sugar in g per litre', type: { 'sugar.by': 'litre' } },
      ...list('base')
        .slice(0, 3)
        .filter(({ id, name }) => id !== run.typed['base'] && name !== from)
        .map((base) => ({
          words: `As ${base.name}`,
          type: { base: base.id, brix: formatTyped(base.brix), abv: formatTyped(base.abv), 'sugar.by': 'mass' },
        })),
    ],
    ...(problem ? { problem } : {}),
  };
  if (!drink || drink.abv === 0) return [first];
  const barred = run.typed['spirit.food'] === 'no' ? { problem: NOT_FOOD } : {};
  return [
    first,
    { key: 'spirit', say: 'Which spirit brings the alcohol?', ask: [fields.spirit, fields.spiritFood], ...barred },
  ];
}

/** The sugar the other way round. */
function sugarWords(run: RunState, { make, densityGPerMl }: DrinkAsked): string {
  const other = isByLitre(run)
    ? `${formatPlain(make.brix * 100, 4)} °Brix`
    : `${formatPlain(make.brix * densityGPerMl * 1000, 4)} g/L`; // mL per L
  return `That is ‹${other}› of sugar.`;
}

/** How the syrup is thrown, its acid and what keeps it. */
export function syrupSteps(run: RunState): Step[] {
  const { value: plan, problem } = outcome(() => planOf(run));
  const acid = textOf(run, fields.acid) !== 'none';
  return [
    {
      key: 'syrup',
      say: 'Is there a syrup?',
      more: syrupWords(plan),
      ask: [fields.parts, fields.by],
      ...(problem ? { problem } : {}),
    },
    {
      key: 'acid',
      say: 'Acid, and what keeps it?',
      more: ['A preservative is typed as its acid, as limits are stated; the salt is weighed. The limits come later.'],
      ask: [fields.acid, ...(acid ? [fields.acidity] : []), fields.benzoate, fields.sorbate],
      ...(problem ? { problem } : {}),
    },
  ];
}

function syrupWords(plan: Plan | null): string[] {
  if (!plan) return ['A litre of syrup makes several litres of drink.'];
  const { syrup } = plan.batch;
  return [
    `The syrup has ‹${formatPlain(syrup.brix * 100, 3)} °Brix› and weighs ‹${formatPlain(syrup.mass, 4)} g›.`,
    ...(mayCrystallise(syrup.brix, celsius(20)) ? ['At 20 °C it holds more sugar than stays dissolved.'] : []),
  ];
}

/** Carbonation, if any; typing it also says of the drink what the rules ask. */
export function gasStep(run: RunState): Step {
  const volumes = valueOf(run, fields.volumes) ?? 0;
  const at = valueOf(run, fields.gasAt);
  const bar = volumes > 0 && at !== null ? outcome(() => ({ bar: gaugeForVolumes(volumes, celsius(at)) })) : null;
  return {
    key: 'gas',
    say: 'Is it carbonated?',
    more: bar?.value
      ? [
          `‹${formatPlain(bar.value.bar, 3)} bar› on the gauge at ${formatPlain(at!)} °C holds it: ‹${formatPlain(carbonDioxidePerLitre(volumes), 3)} g/L›.`,
          'Computed for water; sugar and alcohol hold a little less.',
        ]
      : [],
    ask: [fields.volumes, ...(volumes > 0 ? [fields.gasAt] : [])],
    types: traitsOf(run, isEmulsion(run)),
    ...(bar?.problem ? { problem: bar.problem } : {}),
  };
}

/** A vessel with something in it that may not be drunk. A clean one begins a run of its own; this one stays as it is. */
export function spoiltStep(run: RunState, why: string): Step {
  const kept = Object.entries(run.typed).filter(
    ([key]) => !/^(mass|over|lot|left)\.|^(exactly|again|begun)$|food/.test(key),
  );
  return {
    key: 'spoilt',
    say: '‹Do not go on with it›: put what is in the vessel away.',
    more: [why, 'It was fit for drinks when it was weighed, and is not now.'],
    problem: why,
    offers: [{ words: 'Begin again with other bottles', start: { task: 'batch', typed: Object.fromEntries(kept) } }],
  };
}

/** The steps that are shown while one of them refuses to go on; where the run stands beyond them, that one alone. */
export function upTo(run: RunState, shown: readonly Step[], refusing: Step): readonly Step[] {
  return run.at === '' || shown.some(({ key }) => key === run.at) ? shown : [refusing];
}
