import type { Basis } from '../../core/liquid/strength';
import { list } from '../../records/shelf';
import type { Option } from '../../ui/controls/field';
import { vialOptions } from '../../workshop/onHand';
import { gradeWord } from '../../workshop/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import { amount, choice, code, day, given, optionalAmount, pick, words } from '../engine/fields';
import type { Step } from '../engine/task';
import type { NewBottleStep } from '../shared/newBottle';
import { calledOf, labelTagOf } from '../../workshop/labelled';

/** What can be diluted: bottles first, then a new one, then vials. */
export function sourceOptions(): Option[] {
  const bottles = list('bottle').map((bottle) => {
    const lot = bottle.lot && `lot ${bottle.lot}`;
    const more = [bottle.supplier, lot, gradeWord(bottle), whyNotByItself(bottle)].filter(Boolean).join(', ');
    return { value: bottle.id, label: `${labelTagOf(bottle)} · ${calledOf(bottle).name}`, hint: more };
  });
  return [
    ...bottles,
    { value: 'new', label: 'A new bottle', hint: 'that is not on the Shelf yet', always: true },
    ...vialOptions(),
  ];
}

const bases: readonly Basis[] = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];
const meaning: Record<Basis, string> = {
  '% w/v': 'g in 100 mL of dilution',
  '% w/w': 'g in 100 g',
  '% v/v': 'mL in 100 mL',
  'mg/kg': 'ppm by mass',
  'mg/L': 'mg in a litre',
};

const sizes = [5, 10, 15, 20, 30]; // mL

/** How a solvent's volume is measured, with half the width of what it may be off, as a share of the volume. */
export const measures = [
  { value: 'scale', label: 'On a scale', hint: 'the surest: type the grams', tolerance: 0, source: '' },
  {
    value: 'cylinder',
    label: 'Graduated cylinder, 10 mL',
    hint: '± 0.08 mL',
    tolerance: 0.008,
    source: 'ASTM class A, 10 mL: ± 0.08 mL',
  },
  {
    value: 'syringe',
    label: 'Syringe or graduated pipette',
    hint: 'about ± 3 %',
    tolerance: 0.03,
    source: 'typical, not confirmed',
  },
  {
    value: 'shoulder',
    label: 'Up to the shoulder of the vial',
    hint: 'about ± 8 %',
    tolerance: 0.08,
    source: 'our guess: vials have no tolerance',
  },
] as const;

/** Solvent goes in once, and once more after an overshoot. */
export type Pour = 'solvent' | 'rescue';

/** One step of a dilution. */
export type DiluteStep = Step<
  | NewBottleStep
  | 'bottle'
  | 'strength'
  | 'size'
  | 'own-size'
  | 'solvent'
  | 'own-solvent'
  | 'food'
  | 'measure'
  | 'way'
  | 'dropper'
  | 'scale'
  | 'plan'
  | `pour.${Pour}`
  | 'drops'
  | 'material'
  | 'made'
  | 'rescued'
  | 'label'
  | 'set'
  | 'set-plan'
>;

const readability = amount({
  name: 'readability',
  title: 'Smallest step of the scale',
  unit: 'g',
  above: 0,
  max: 1,
  preset: '0.01',
});

/** The questions of a dilution. */
export const fields = {
  source: pick({ name: 'bottle', title: 'From' }),
  strength: (basis: string) =>
    amount({
      name: 'strength',
      title: 'Strength',
      unit: basis,
      above: 0,
      max: basis.startsWith('%') ? 100 : 1e6,
      preset: '1',
    }),
  basis: choice({
    name: 'basis',
    title: 'Counted as',
    preset: '% w/v',
    options: bases.map((value) => ({ value, label: value, hint: meaning[value] })),
  }),
  size: choice({
    name: 'size',
    title: 'Vial',
    options: [
      ...sizes.map((ml) => ({ value: String(ml), label: `${ml} mL` })),
      { value: 'own', label: 'Another size' },
    ],
  }),
  ownSize: amount({ name: 'ownSize', title: 'Size of the vial', unit: 'mL', above: 0, max: 1000 }),
  solvent: pick({ name: 'solvent', title: 'Solvent' }),
  food: choice({
    name: 'food',
    title: 'This bottle of solvent',
    options: [
      { value: 'yes', label: 'Food grade, nothing added', hint: 'the label says so' },
      { value: 'no', label: 'Denatured, or not known', hint: 'the vial becomes smell only' },
    ],
  }),
  solventName: words({ name: 'solvent.name', title: 'Name of the solvent', max: 60 }),
  solventDensity: amount({ name: 'solvent.density', title: 'Density at 20 °C', unit: 'g/mL', min: 0.5, max: 2 }),
  solventFlash: optionalAmount({
    name: 'solvent.flash',
    title: 'Flash point',
    unit: '°C',
    min: -60,
    max: 400,
    help: 'May stay empty.',
  }),
  measure: choice({
    name: 'measure',
    title: 'Solvent measured',
    options: measures.map(({ value, label, hint }) => ({ value, label, hint })),
  }),
  way: choice({
    name: 'way',
    title: 'Material measured',
    options: [
      { value: 'drops', label: 'By drops' },
      { value: 'mass', label: 'On a scale', hint: '' },
    ],
  }),
  within: amount({ name: 'within', title: 'Known to within ±', unit: '%', above: 0, max: 100, preset: '10' }),
  dropper: pick({ name: 'dropper', title: 'Dropper' }),
  readability,
  /** Another solvent amount than asked for was put in. */
  otherAmount: (pour: Pour) => given(`${pour}.own`, ['yes']),
  solventMl: (pour: Pour) =>
    amount({ name: `${pour}.ml`, title: 'Solvent really put in', unit: 'mL', above: 0, max: 2000 }),
  solventG: (pour: Pour) =>
    amount({ name: `${pour}.g`, title: 'The scale shows', unit: 'g', above: 0, max: 2000, scale: readability }),
  materialG: amount({
    name: 'material.g',
    title: 'The scale shows',
    unit: 'g',
    above: 0,
    max: 1000,
    scale: readability,
  }),
  /** Solvent is taken that makes the planned drops exact. */
  exact: given('exact', ['yes']),
  /** A vial made before is made exactly again: drops or g of the material, and g of the solvent. */
  exactSource: amount({ name: 'again.source', title: 'Material as then', unit: 'drops or g', above: 0, max: 1000 }),
  exactSolvent: amount({ name: 'again.solvent', title: 'Solvent as then', unit: 'g', above: 0, max: 2000 }),
  /** What is done with a dilution that came out too strong. */
  overshoot: given('overshoot', ['keep', 'rescue']),
  code: code({ name: 'vial.code', title: 'Code of the vial' }),
  madeOn: day({ name: 'vial.made', title: 'Made on', past: true }),
  useBy: day({ name: 'vial.useBy', title: 'Use by' }),
  /** Several bottles are diluted alike, and which. */
  set: given('set', ['yes']),
  inSet: (bottle: string) => given(`set.${bottle}`, ['yes']),
};

/** What vials made one after another have in common beside their strength. */
export const setUp = [
  fields.size,
  fields.ownSize,
  fields.solvent,
  fields.food,
  fields.measure,
  fields.way,
  fields.dropper,
  fields.readability,
];

/** What a repeat begins with. */
export const repeats = [
  ...[fields.source, fields.strength('% w/v'), fields.basis, ...setUp, fields.within, fields.exact].map(
    ({ name }) => name,
  ),
  fields.set.name,
  fields.inSet('').name,
];
