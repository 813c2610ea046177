import type { Basis } from '../../core/liquid/strength';
import { solvents } from '../../tables/solvents';
import type { Option } from '../../ui/controls/field';
import { dropperFor } from '../../workshop/dropMass';
import { dropperOptions } from '../../workshop/onHand';
import { answer, ask } from '../engine/answers';
import { amount, choice, optionalAmount, pick, whole, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { oncePerRun } from '../engine/oncePerRun';

const BASES: readonly Basis[] = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];

/** Liquids that may go into a drink. */
export const liquids = solvents.filter((row) => row.foodGradePossible);

/** The amounts of the sum; any one of them is worked out from the others. */
export const AMOUNTS = ['drops', 'strength', 'mgPerDrop', 'drink', 'ppm'] as const;
export type Amount = (typeof AMOUNTS)[number];

const asOptions = <V extends string>(values: readonly V[]): Option<V>[] =>
  values.map((value) => ({ value, label: value }));

/** The questions of the sum; all of them are slots of one sentence. */
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
    title: 'Diluted with',
    options: liquids.map(({ id, name }) => ({ value: id, label: name })),
    preset: 'ethanol-96',
  }),
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  mgPerDrop: optionalAmount({
    name: 'mgPerDrop',
    title: 'One drop',
    unit: 'mg',
    above: 0,
    max: 1000,
    help: 'Empty: as known of the dropper.',
  }),
  drops: whole({ name: 'drops', title: 'Drops', unit: 'drops', min: 0, max: 100_000, preset: '4' }),
  drink: (unit: string) => amount({ name: 'drink', title: 'Drink', unit, above: 0, max: 1_000_000, preset: '100' }),
  by: choice({ name: 'by', title: 'Amount in', options: asOptions(['mL', 'g']), preset: 'mL' }),
  density: amount({
    name: 'density',
    title: 'Density of the drink',
    unit: 'g/mL',
    min: 0.7,
    max: 1.5,
    preset: '1.00',
    help: '11 °Brix 1.04, 40 % ABV 0.95',
  }),
  ppm: optionalAmount({ name: 'ppm', title: 'In the drink', unit: 'mg/kg', above: 0, max: 1_000_000 }),
  /** Which amount is worked out from the others. */
  find: choice({ name: 'find', title: 'Find', options: asOptions(AMOUNTS), preset: 'ppm' }),
};

/** The questions as the card asks them now: units as chosen, and the dropper whose drops are known. */
export const asked = oncePerRun((run: RunState) => {
  const liquid = liquidOf(run);
  const usual = dropperFor({ id: liquid.id, liquid: liquid.liquid, strength: 0.01 });
  return {
    strength: fields.strength(answer(run, fields.basis) ?? '% w/v'),
    drink: fields.drink(answer(run, fields.by) ?? 'mL'),
    dropper: ask(fields.dropper, { options: dropperOptions(), preset: usual }) as Field<string>,
  };
});

/** The solvent that the material is in. */
export function liquidOf(run: RunState) {
  return liquids.find(({ id }) => id === answer(run, fields.liquid)) ?? liquids[0]!;
}
