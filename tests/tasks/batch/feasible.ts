import fc from 'fast-check';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { leastOf, loadsOf, stepOf, type Pour } from '../../../src/tasks/batch/vessel/pour';
import { makingOf, type Making } from '../../../src/tasks/batch/progress';
import type { RunState } from '../../../src/tasks/engine/fold';
import { capacityOf } from '../../../src/workshop/scales';
import { batchShelf, clearPlan } from './batchShelf';

/** A bench and what is to be made on it: shares of the formula, what each scale carries, and what is typed. */
export interface Wanted {
  readonly shares: readonly number[];
  readonly carries: readonly [fine: number | undefined, coarse: number | undefined];
  readonly typed: Readonly<Record<string, string>>;
}

const text = (arbitrary: fc.Arbitrary<number>) => arbitrary.map(String);
/** Evenly over the powers of ten between two amounts. */
const decades = (low: number, high: number) =>
  fc.integer({ min: 0, max: 1000 }).map((i) => String(Number((low * (high / low) ** (i / 1000)).toPrecision(3))));
const oneOf = (...values: readonly (string | number)[]) => fc.constantFrom(...values.map(String));

/** Drinks from a glass to a tank, weak to strong, on pocket scales and better. */
export const wanted: fc.Arbitrary<Wanted> = fc.record({
  shares: fc
    .array(fc.double({ min: -3, max: 0, noNaN: true }), { minLength: 4, maxLength: 4 })
    .map((all) => all.map((power) => 10 ** (power / 100))),
  carries: fc.tuple(fc.constantFrom(undefined, 20, 50, 200, 500), fc.constantFrom(undefined, 2000, 5000, 30_000)),
  typed: fc.record({
    litres: decades(0.25, 200),
    dose: decades(5, 1000),
    brix: oneOf(0, 4, 8, 11),
    abv: oneOf(0, 0, 5, 20),
    spirit: oneOf(40, 96),
    'spirit.food': fc.constant('yes'),
    'throw.n': oneOf(0, 0, 3, 5),
    'throw.by': oneOf('volume', 'mass'),
    acid: oneOf('citric-acid', 'malic-acid', 'none'),
    acidity: oneOf(0.5, 2, 4),
    benzoate: oneOf(0, 0, 120),
    sorbate: oneOf(0, 0, 200),
    dosage: decades(1, 30),
    spare: oneOf(0, 0, 50, 300),
    carrier: oneOf('propylene-glycol', 'ethanol-96'),
    fine: oneOf(0.01, 0.001, 0.001, 0.0001),
    coarse: oneOf(0.1, 1, 5),
    tolerance: text(fc.constantFrom(0.5, 1, 2, 5)),
    loss: oneOf(0, 0, 3),
    vessel: oneOf('', '', '', '', 25, 250),
    'own.1': oneOf('none', 'lemon'),
    'own.1.g': decades(0.05, 100),
    'own.1.into': oneOf('syrup', 'drink'),
    'own.2': oneOf('none', 'gentian'),
    'own.2.g': decades(0.02, 20),
  }),
});

/** Puts the bench on the Shelf; the run that asks for it. */
export function runWith({ shares, carries, typed }: Wanted): RunState {
  const ingredient = (id: string, preparation: string, holds: object) => [
    newRecord('material', {
      id,
      name: `${id} ${preparation}`,
      code: id.toUpperCase(),
      sort: 'natural',
      form: 'liquid',
      cautions: [],
      preparation,
    } as never),
    newRecord('bottle', {
      id: `b-${id}`,
      material: id,
      supplier: 'Saltmarsh Supplies',
      lot: id,
      grade: 'fit for drinks',
      amountG: 1e6,
      holds,
    } as never),
  ];
  shelf.records.value = new Map();
  takeIn(batchShelf());
  const formula = shelf.records.value.get('f1') as never as { lines: { share: number }[] };
  takeIn([
    { ...formula, lines: formula.lines.map((line, i) => ({ ...line, share: shares[i]! })) } as never,
    ...ingredient('lemon', 'juice', { brix: 8, acid: 0.06 }),
    ...ingredient('gentian', 'tincture', { abv: 0.6 }),
    ...[typed['fine'], typed['coarse']].flatMap((step, i) =>
      carries[i] === undefined
        ? []
        : [
            newRecord('scale', {
              id: `scale-${i}`,
              name: `Scale ${i}`,
              readabilityG: Number(step),
              capacityG: carries[i],
            } as never),
          ],
    ),
  ]);
  const lots = ['nutmeg', 'linalool', 'maltol', 'vanillin'].map((id) => [`lot.${id}`, `b-${id}`]);
  const run = {
    ...clearPlan,
    ...Object.fromEntries(lots),
    'lot.lemon': 'b-lemon',
    'lot.gentian': 'b-gentian',
    ...typed,
  };
  return { typed: { ...run, although: 'a test' }, presets: {}, done: {}, at: '', told: false } as never;
}

/** Everything that goes on a scale for a pour: the parts of its dilution, then what is drawn. */
export function weighings({ target, scale, stock }: Pour): { grams: number; scale: Pour['scale'] }[] {
  const mixed = stock ? [stock.neatG, stock.carrierG].map((grams) => ({ grams, scale: 'fine' as const })) : [];
  return [...mixed, { grams: target, scale }];
}

/** What is wrong with what a plan that was not refused asks for: nothing, if all of it can be weighed and every mass closes. */
export function faultsOf(run: RunState): string[] {
  const making = makingOf(run)!;
  const pours = [...making.vessel.pours, ...making.syrup.pours];
  return [
    ...pours.flatMap((pour) => scaleFaults(run, pour)),
    ...balanceFaults(run, making),
    ...vesselFaults(run, making),
  ];
}

function scaleFaults(run: RunState, pour: Pour): string[] {
  const { stock, target } = pour;
  const name = pour.goods.name;
  const slack = 1 - 1e-9;
  return [
    ...weighings(pour).flatMap(({ grams, scale }) => {
      const loads = loadsOf(run, grams, scale);
      return [
        ...(grams / loads < leastOf(run, scale)! * slack
          ? [`${name}: ${grams} g in ${loads} is less than ${leastOf(run, scale)} g`]
          : []),
        ...(grams / loads > capacityOf(stepOf(run, scale)) / slack
          ? [`${name}: ${grams} g is over what the scale carries`]
          : []),
      ];
    }),
    ...(stock && target > (0.9 * (stock.neatG + stock.carrierG)) / slack ? [`${name}: more is drawn than can be`] : []),
  ];
}

function balanceFaults(run: RunState, making: Making): string[] {
  const plan = planOf(run)!;
  const sum = (all: readonly number[]) => all.reduce((grams, one) => grams + one, 0);
  const closes = (what: string, one: number, other: number) =>
    Math.abs(one - other) > 1e-9 * Math.max(one, other) ? [`${what}: ${one} g and ${other} g`] : [];
  const { syrup, vessel, neededG } = making;
  const planned = sum(plan.concentrate.map(({ mass }) => mass));
  const spare = sum(vessel.pours.map(({ target }) => target));
  return [
    ...closes('the drink', sum(syrup.pours.map(({ target }) => target)), plan.batch.drink.mass),
    ...closes('the concentrate', spare, planned * (1 + Number(run.typed['spare']) / 100)),
    ...closes('what of it the drink needs', neededG, planned),
    ...closes(
      'the drink as planned',
      sum([...plan.syrup, ...plan.late, ...plan.concentrate].map(({ mass }) => mass)) + plan.water,
      plan.batch.drink.mass,
    ),
    ...syrup.pours.flatMap(({ target, goods }) => (target >= 0 ? [] : [`${goods.name}: ${target} g`])),
  ];
}

function vesselFaults(run: RunState, { plan }: Making): string[] {
  const litres = Number(run.typed['vessel']);
  return litres > 0 && plan.drink.litres > 0.9 * litres * (1 + 1e-9) ? [`${plan.drink.litres} L in ${litres} L`] : [];
}
