import { drinkMakeOf } from '../../../core/drink/drinkMake';
import { drinkDensity } from '../../../core/drink/finishedDrink';
import { sucroseViscosity } from '../../../core/liquid/sucroseViscosity';
import { massFraction, volumeFraction } from '../../../core/number/units';
import { sweeteners } from '../../../tables/keeping/sweeteners';
import { formatFixed, formatPlain } from '../../../ui/format';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { drinkOf } from '../plan/drinkAsked';
import { keepAsked } from '../plan/keepAsked';
import type { KeepPart } from './part';

/** Sweeteners beside or in place of sugar: how sweet that is, what it lacks, and what goes wrong; null where there are none. */
export function sweetPart(run: RunState): KeepPart | null {
  const { sweets } = keepAsked(run);
  const used = sweets.filter(({ which }) => (answer(run, which) ?? '') !== '');
  if (used.length === 0) return null;
  const words = used.map(({ which, mg }) => `{${mg.name}} of {${which.name}}`).join(', ');
  const open = sweets.slice(0, used.length + 1);
  return {
    ask: open.flatMap(({ which, mg }) => (used.some((one) => one.which === which) ? [mg, which] : [which])),
    slots: sweetSlots(run),
    section: {
      title: 'Sweet without sugar',
      sentence: words,
      chips: open.map(({ which }) => which.name),
      lines: sweetWords(run),
      folded: [...SENSE, ...new Set(chosen(run).map(({ row }) => `${row.source}.`))],
    },
  };
}

/** The slots of sweeteners, which another section asks for while there are none. */
export function sweetSlots(run: RunState): KeepPart['slots'] {
  return Object.fromEntries(
    keepAsked(run).sweets.flatMap(({ which, mg }, i) => [
      [which.name, { missing: i === 0 ? 'sweetener' : 'second sweetener', optional: true }],
      [mg.name, { missing: 'how much of it' }],
    ]),
  );
}

/** Chosen sweeteners with their mg/L. */
function chosen(run: RunState) {
  return keepAsked(run).sweets.flatMap(({ which, mg }) => {
    const row = sweeteners.find(({ id }) => id === answer(run, which));
    const amount = answer(run, mg);
    return row && amount !== null ? [{ row, mgPerL: amount }] : [];
  });
}

function sweetWords(run: RunState): string[] {
  const used = chosen(run);
  if (used.length === 0) return [];
  const asSugar = (end: 0 | 1) => used.reduce((sum, { row, mgPerL }) => sum + (mgPerL * row.times[end]) / 1000, 0); // mg per g
  const [low, high] = [asSugar(0), asSugar(1)];
  return [
    `About as sweet as ‹${formatPlain(low, 3)} to ${formatPlain(high, 3)} g/L› of sugar.`,
    ...bodyWords(run, (low + high) / 2),
    ...used.map(({ row }) => `${row.name}: ${row.note}.`),
    'The limits per litre are under Rules, below.',
  ];
}

/** What a drink of as much sugar would have in body. */
function bodyWords(run: RunState, sugarPerL: number): string[] {
  const drink = outcome(() => drinkOf(run)).value;
  const value = drink && outcome(() => {
    const brix = drink.make.brix * 100 + sugarPerL / 10;
    const make = drinkMakeOf(massFraction(brix / 100), volumeFraction(drink.abv / 100));
    const thick = (of: number) => sucroseViscosity(massFraction(of / 100));
    return { density: drinkDensity(make), thicker: thick(brix) / thick(drink.make.brix * 100) };
  }).value; // prettier-ignore
  if (!drink || !value) return [];
  return [
    `That much sugar would make it ‹${formatFixed(value.density, 3)} g/mL› instead of ${formatFixed(drink.densityGPerMl, 3)} and ‹${formatFixed(value.thicker, 2)} times› as viscous: without it there is less body, and oil droplets rise faster.`,
  ];
}

const SENSE = [
  'How sweet something is depends on the drink.',
  'A sweetener counts for less as the drink gets sweeter, acid and cold change it, and two together are often sweeter than their sum: the range is that of published tables, and a tasting decides.',
];
