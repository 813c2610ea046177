/**
 * The made-up workshop "Saltmarsh Soda Works": an alcohol-free aperitif of pink grapefruit, rhubarb and cardamom. Suppliers, lots,
 * amounts and verdicts are invented; densities and numbers of the catalogue are not.
 */

const reading = (n: number, massG: string) => ({ [`drops.${n}`]: '20', [`mass.${n}`]: massG });
const weighed = (...masses: string[]) =>
  Object.assign({}, ...masses.map((massG, i) => reading(i + 1, massG))) as Record<string, string>;

/** The one dropper of the workshop, weighed with what it drops. Ids of the script, or of a solvent. */
export const droppers: Readonly<
  Record<string, { liquid: string; daysAgo: number; typed: Readonly<Record<string, string>> }>
> = {
  'P1 with ethanol': {
    liquid: 'ethanol-96',

    daysAgo: 55,
    typed: { ...weighed('0.311', '0.306', '0.309', '0.312', '0.307') },
  },
  'P1 with grapefruit': {
    liquid: 'material PGF',

    daysAgo: 55,
    typed: { ...weighed('0.424', '0.431', '0.427', '0.429', '0.425') },
  },
};

const SPIRIT = { solvent: 'spirit', measure: 'syringe', way: 'drops', basis: '% w/v', size: '10' };

/** Vials, from bottles or from vials, by their names in the script; the solvent by its name in the script, or its id. */
export const dilutions: readonly {
  from: string;
  name: string;
  daysAgo: number;
  hour: number;
  typed: Readonly<Record<string, string>>;
}[] = [
  { from: 'CARD', name: 'CARD', daysAgo: 54, hour: 9, typed: { ...SPIRIT, strength: '1' } },
  { from: 'RHU', name: 'RHU', daysAgo: 54, hour: 10, typed: { ...SPIRIT, strength: '5' } },
  { from: 'HEX3', name: 'HEX3', daysAgo: 53, hour: 9, typed: { ...SPIRIT, strength: '1' } },
  { from: 'HEX3', name: 'HEX01', daysAgo: 53, hour: 10, typed: { ...SPIRIT, strength: '0.1' } },
  {
    from: 'NOOT',
    name: 'NOOT',
    daysAgo: 53,
    hour: 11,
    typed: { ...SPIRIT, strength: '1', way: 'mass', readability: '0.001', 'material.g': '0.086' },
  },
  {
    from: 'ION',
    name: 'ION',
    daysAgo: 52,
    hour: 9,
    typed: { ...SPIRIT, solvent: 'isopropanol-99', strength: '1' },
  },
  { from: 'PGF', name: 'PGF', daysAgo: 19, hour: 9, typed: { ...SPIRIT, strength: '1' } },
];

export const layerings = [
  {
    name: 'first',
    codes: ['PGF', 'CARD'],
    daysAgo: 18,
    liking: '6',
    typed: { 'verdict.decision': 'try again', 'verdict.words': 'Bright, but it stops short.' },
    reading: { vials: '', minute: '5', words: 'citrus, spicy', intensity: '6', liking: '6' },
  },
  {
    name: 'second',
    codes: ['PGF', 'HEX3'],
    daysAgo: 18,
    liking: '4',
    typed: { 'verdict.decision': 'drop', 'verdict.words': 'Cut grass runs over the fruit.' },
    reading: { vials: '', minute: '5', words: 'green, grassy', intensity: '8', liking: '4' },
  },
  {
    name: 'liked',
    codes: ['PGF', 'RHU', 'CARD'],
    daysAgo: 10,
    liking: '8',
    typed: {
      'verdict.decision': 'keep',
      'verdict.words': 'Bright, then dry and spiced. This is it.',
      'draft.name': 'Low tide aperitif',
    },
    reading: { vials: '', minute: '15', words: 'pink, tart, dry, spiced', intensity: '7', liking: '8' },
  },
] as const;

/** Drinks dosed, by the vial’s name in the script. */
export const drinks: readonly {
  daysAgo: number;
  vial: string;
  drops: number;
  typed: Readonly<Record<string, string>>;
}[] = [
  {
    daysAgo: 8,
    vial: 'PGF',
    drops: 9,
    typed: {
      'base.name': 'rhubarb soda, plain',
      'base.brix': '7',
      'base.abv': '0',
      'base.ml': '100',
      aim: '12',
      verdict: 'Enough peel, no bitterness.',
      liking: '7',
    },
  },
  {
    daysAgo: 7,
    vial: 'CARD',
    drops: 4,
    typed: { 'base.ml': '100', aim: '5', verdict: 'A drop less would do.', liking: '6' },
  },
];

/** The formula counted into a vial. */
export const trial = { purpose: 'taste', most: '100', mix: '1', size: '10' };

/** The formula made into twenty litres. */
export const batch = {
  dose: '40',
  litres: '20',
  brix: '7',
  abv: '0',
  dosage: '1',
  make: 'clear',
  acidity: '2',
  carrier: 'ethanol-96',
  fine: '0.001',
  coarse: '1',
  name: 'Low tide aperitif, first 20 L',
};
