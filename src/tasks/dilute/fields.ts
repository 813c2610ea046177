import { list, shelf } from '../../records/shelf';
import type { Option } from '../../ui/controls/field';
import { amount, choice, code, day, optionalAmount, words } from '../engine/fields';
import type { UseBy } from '../../workshop/useBy';
import { dropperOptions, solventBottleOptions, solventOptions, today, vialOptions } from '../../workshop/onHand';

/** Bottles first, then vials that can be thinned further, then a new bottle. */
function sources(): Option[] {
  const bottles = list('bottle').map((bottle) => {
    const material = list('material').find(({ id }) => id === bottle.material);
    const more = [bottle.supplier, bottle.lot && `lot ${bottle.lot}`, bottle.grade].filter(Boolean).join(', ');
    return { value: bottle.id, words: `${material?.code ?? ''} · ${material?.name ?? 'unknown'}`, more };
  });
  return [
    ...bottles,
    { value: 'new', words: 'A new bottle', more: 'that is not on the Shelf yet', always: true },
    ...vialOptions(),
  ];
}

const bases = ['% w/v', '% w/w', '% v/v', 'mg/kg', 'mg/L'];
const sizes = [5, 10, 15, 20, 30]; // mL
const yes = 'yes';

/** How a solvent's volume is measured, with half the width of what it may be off, as a share of the volume. */
export const measures = [
  { value: 'scale', words: 'On a scale', more: 'the surest: type the grams', tolerance: 0, source: '' },
  {
    value: 'cylinder',
    words: 'Graduated cylinder, 10 mL',
    more: '± 0.08 mL',
    tolerance: 0.008,
    source: 'ASTM class A, 10 mL: ± 0.08 mL',
  },
  {
    value: 'syringe',
    words: 'Syringe or graduated pipette',
    more: 'about ± 3 %',
    tolerance: 0.03,
    source: 'typical, not confirmed',
  },
  {
    value: 'shoulder',
    words: 'Up to the shoulder of the vial',
    more: 'about ± 8 %',
    tolerance: 0.08,
    source: 'our guess: vials have no tolerance',
  },
] as const;

/** The questions of a dilution. */
export const fields = {
  source: () => choice({ name: 'bottle', title: 'From', options: sources() }),
  strength: (basis: string) =>
    amount({
      name: 'strength',
      title: 'Strength',
      unit: basis,
      above: 0,
      max: basis.startsWith('%') ? 100 : 1e6,
      preset: '1',
    }),
  basis: () =>
    choice({
      name: 'basis',
      title: 'Counted as',
      preset: shelf.settings.value.basis,
      options: bases.map((value) => ({ value, words: value, more: meaning[value] ?? '' })),
    }),
  size: choice({
    name: 'size',
    title: 'Vial',
    options: [
      ...sizes.map((ml) => ({ value: String(ml), words: `${ml} mL` })),
      { value: 'own', words: 'Another size' },
    ],
  }),
  ownSize: amount({ name: 'ownSize', title: 'Size of the vial', unit: 'mL', above: 0, max: 1000 }),
  solvent: () =>
    choice({
      name: 'solvent',
      title: 'Solvent',
      options: [...solventBottleOptions(), ...solventOptions(), { value: 'new', words: 'Another solvent' }],
    }),
  food: choice({
    name: 'food',
    title: 'This bottle of solvent',
    options: [
      { value: yes, words: 'Food grade, nothing added', more: 'the label says so' },
      { value: 'no', words: 'Denatured, or not known', more: 'the vial becomes smell only' },
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
    options: measures.map(({ value, words, more }) => ({ value, words, more })),
  }),
  way: (solid: boolean) =>
    choice({
      name: 'way',
      title: 'Material measured',
      options: [
        ...(solid ? [] : [{ value: 'drops', words: 'By drops' }]),
        { value: 'mass', words: 'On a scale', more: solid ? 'a solid is weighed, never counted in drops' : '' },
      ],
    }),
  within: amount({ name: 'within', title: 'Known to within ±', unit: '%', above: 0, max: 100, preset: '10' }),
  dropper: () => choice({ name: 'dropper', title: 'Dropper', options: dropperOptions() }),
  readability: amount({
    name: 'readability',
    title: 'Smallest step of the scale',
    unit: 'g',
    above: 0,
    max: 1,
    preset: '0.01',
  }),
  solventMl: (pour: string) =>
    amount({ name: `${pour}.ml`, title: 'Solvent really put in', unit: 'mL', above: 0, max: 2000 }),
  solventG: (pour: string) => amount({ name: `${pour}.g`, title: 'The scale shows', unit: 'g', above: 0, max: 2000 }),
  materialG: amount({ name: 'material.g', title: 'The scale shows', unit: 'g', above: 0, max: 1000 }),
  code: (preset: string) => code({ name: 'vial.code', title: 'Code of the vial', preset }),
  madeOn: () => day({ name: 'vial.made', title: 'Made on', today: today(), past: true, preset: today() }),
  useBy: (keeps: UseBy) =>
    day({ name: 'vial.useBy', title: 'Use by', today: today(), preset: keeps.day, help: `${keeps.words}.` }),
};

const meaning: Record<string, string> = {
  '% w/v': 'g in 100 mL of dilution',
  '% w/w': 'g in 100 g',
  '% v/v': 'mL in 100 mL',
  'mg/kg': 'ppm by mass',
  'mg/L': 'mg in a litre',
};
