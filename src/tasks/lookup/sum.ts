import { doseOf, drinkOfVolume, dropsForPpm, type Drink } from '../../core/drink/dose';
import { massOfDrops } from '../../core/drop/drop';
import { exact, measured, propagate, type Measured } from '../../core/number/measured';
import { densityOf, showStrength, toMassFraction, type Basis } from '../../core/liquid/strength';
import { gram, massFraction } from '../../core/number/units';
import { measuredText } from '../../ui/format';
import type { How, Result } from '../../ui/controls/result';
import { solvents } from '../../tables/solvents';
import type { Option } from '../../ui/controls/field';
import { amount, choice, optionalAmount, textOf, valueOf, whole } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { dropOf, type DropOnHand } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { dropperOptions } from '../../workshop/onHand';

/** Density of the material where it is not known, g/mL: most aroma materials are 0.85 to 1.15. Our choice, from memory. */
const SOLUTE = measured(1, 0.15 / Math.sqrt(3), {
  id: 'material:density',
  words: 'density of the material: not known',
});

const BASES: readonly Basis[] = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];

/** Liquids that may go into a drink. */
const liquids = solvents.filter((row) => row.foodGradePossible);

const asOptions = (values: readonly string[]): Option[] => values.map((value) => ({ value, label: value }));

/** The questions of the sum; all of them stand on one screen. */
export const fields = {
  strength: (unit: string) =>
    amount({
      name: 'strength',
      title: 'Strength',
      unit,
      above: 0,
      max: unit.startsWith('%') ? 100 : 1_000_000,
      preset: '1',
    }),
  basis: choice({ name: 'basis', title: 'Counted as', options: asOptions(BASES), preset: '% w/v' }),
  liquid: choice({
    name: 'liquid',
    title: 'Thinned with',
    options: liquids.map(({ id, name }) => ({ value: id, label: name })),
    preset: 'ethanol-96',
  }),
  dropper: () => choice({ name: 'dropper', title: 'Dropper', options: dropperOptions(), preset: 'typical' }),
  mgPerDrop: optionalAmount({ name: 'mgPerDrop', title: 'One drop', unit: 'mg', above: 0, max: 1000 }),
  drops: whole({ name: 'drops', title: 'Drops', unit: 'drops', min: 0, max: 100_000, preset: '4' }),
  drink: (unit: string) => amount({ name: 'drink', title: 'Drink', unit, above: 0, max: 1_000_000, preset: '100' }),
  by: choice({ name: 'by', title: 'in', options: asOptions(['mL', 'g']), preset: 'mL' }),
  density: amount({ name: 'density', title: 'Its density', unit: 'g/mL', min: 0.7, max: 1.5, preset: '1.00' }),
  ppm: optionalAmount({ name: 'ppm', title: 'Wanted', unit: 'mg/kg', above: 0, max: 1_000_000 }),
};

/** The sum worked out. `wanted` is null without a target. */
export interface Sum {
  readonly results: readonly Result[];
  readonly wanted: ReturnType<typeof dropsForPpm> | null;
  /** What one drop is taken to weigh, and from where. */
  readonly drop: DropOnHand;
}

/** What one drop weighs: as typed, else from the dropper. */
export function dropFor(run: RunState, strength: number): DropOnHand {
  const { id, liquid } = liquidOf(run);
  const known = dropOf(textOf(run, fields.dropper()), { id, liquid, strength });
  const typed = valueOf(run, fields.mgPerDrop);
  return typed === null ? known : { ...known, mgPerDrop: exact(typed), calibrated: true, source: 'typed, as if exact' };
}

/** mg/kg, mg/L and drops for what is typed; null while something is missing. @throws Refusal when it cannot be */
export function sumOf(run: RunState): Sum | null {
  const drops = valueOf(run, fields.drops);
  const drink = drinkOf(run);
  const strength = strengthOf(run);
  if (drops === null || !drink || !strength) return null;
  const drop = dropFor(run, strength.value);
  const counting = { id: 'drops', words: `drop by drop: scatter of ${dropsText(drops)}` };
  const mass = massOfDrops({ drops, mgPerDrop: drop.mgPerDrop, perDropSpread: drop.spread, ...counting });
  const contents = [{ material: 'it', strength }];
  const dose = doseOf([{ mass, contents, density: densityOf(liquidDensity(run)) }], drink);
  const ppm = valueOf(run, fields.ppm);
  const wanted =
    ppm === null
      ? null
      : dropsForPpm({
          ppm,
          strength: massFraction(strength.value),
          mgPerDrop: drop.mgPerDrop.value,
          drink: gram(drink.mass.value),
        });
  return { results: resultsOf(run, { drop, drink, dose }), wanted, drop };
}

function resultsOf(
  run: RunState,
  { drop, drink, dose }: { drop: DropOnHand; drink: Drink; dose: ReturnType<typeof doseOf> },
): Result[] {
  const typed = `${textOf(run, fields.strength(''))} ${textOf(run, fields.basis)}`;
  const inputs: How['inputs'] = [
    { words: 'Strength', text: `${typed} in ${liquidOf(run).name}`, source: 'typed, taken as exact' },
    { words: 'One drop', text: measuredText(drop.mgPerDrop, 'mg'), source: drop.source },
    { words: 'Drops', text: textOf(run, fields.drops), source: 'typed' },
    { words: 'Drink', text: measuredText(drink.mass, 'g'), source: 'typed, taken as exact' },
  ];
  const words = ['Drops times their mass times the strength by mass, over the mass of the drink with the drops in it.'];
  const perLitre = 'Over its volume instead: mg/kg times the density of the drink.';
  return [
    { label: 'In the drink', amount: dose.mgPerKg, unit: 'mg/kg', how: { words, inputs } },
    { label: 'the same', amount: dose.mgPerL, unit: 'mg/L', how: { words: [...words, perLitre], inputs } },
  ];
}

function liquidOf(run: RunState) {
  return liquids.find(({ id }) => id === textOf(run, fields.liquid)) ?? liquids[0]!;
}

function liquidDensity(run: RunState): Measured {
  const { value, halfWidth } = liquidOf(run).density;
  return measured(value, halfWidth / Math.sqrt(3), { id: 'liquid:density', words: 'density of the solvent' });
}

/** The strength by mass, g/g, with what the unknown density of the material may do to it; dw/w is −dc/c to first order. */
function strengthOf(run: RunState): Measured | null {
  const value = valueOf(run, fields.strength(textOf(run, fields.basis)));
  if (value === null) return null;
  const basis = textOf(run, fields.basis) as Basis;
  const liquid = { soluteDensity: SOLUTE, solventDensity: liquidDensity(run) };
  const w = toMassFraction({ value, basis }, liquid);
  const shown = showStrength(exact(w), basis, liquid);
  return propagate(w, [[shown, -w / shown.value]]);
}

function drinkOf(run: RunState): Drink | null {
  const size = valueOf(run, fields.drink(textOf(run, fields.by)));
  const gPerMl = valueOf(run, fields.density);
  if (size === null || gPerMl === null) return null;
  const density = exact(gPerMl);
  return textOf(run, fields.by) === 'g' ? { mass: exact(size), density } : drinkOfVolume(exact(size), density);
}
