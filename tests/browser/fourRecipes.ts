import type { AnyRecord } from '../../src/records/kind/kinds';
import { newRecord } from '../../src/records/shelf';

/** A drink to make: what is typed, and what the recipe itself says, by which the sheet is judged. */
export interface DrinkToMake {
  readonly name: string;
  readonly source: string;
  /** Slots of the recipe page, in the order in which they are filled. */
  readonly typed: Readonly<Record<string, string>>;
  readonly litres: number;
  /** g of each in a litre of the drink, by the recipe. */
  readonly perLitre: Readonly<Record<string, number>>;
  /** g of sugar in 100 g, with that of juice. */
  readonly brix: number;
  readonly abv: number;
  /** g in a mL at 20 °C by a table of its sugar, where nothing else counts. */
  readonly density?: number;
  readonly lots: readonly string[];
}

const inGlycol = { make: 'A solution', carrier: 'propylene glycol', fine: '0.001', coarse: '0.1' };

/**
 * A base of 64.5 % sugar, 1.95 % citric acid and 0.13 % sodium benzoate, 1000 g to 5500 g of carbonated water: a vendor's page, "Basic
 * soft drink recipe". That is 9.923 °Brix and 3.0 g/kg of acid; its benzoate, 177 mg/L as acid, is over the EU's 150, which is taken. Citral
 * and linalool at 9.2 and 2.0 mg/kg: common practice, no source. Density: CRC table of sucrose.
 */
export const soda: DrinkToMake = {
  name: 'Acid lemon soda',
  source: 'Basic soft drink recipe, a page of a vendor',
  typed: { what: 'Lemon soda', litres: '5', brix: '9.923', abv: '0', dose: '11.2', 'throw.n': '5.5', 'throw.by': 'Mass', acidity: '3.113', benzoate: '150', gas: '3', ...inGlycol }, // prettier-ignore
  litres: 5,
  perLitre: { 'sodium benzoate': 0.15 * (144.1 / 122.12), sugar: 0.09923 * 1037.8, 'citric acid, anhydrous': 0.003 * 1037.8 },
  brix: 9.923,
  abv: 0,
  density: 1.0378,
  lots: ['L-citral', 'L-linalool', 'L-propylene-glycol'],
}; // prettier-ignore

/**
 * An emulsion of 20 % orange oil, for which more than 12 % of gum arabic is needed: Randall, Phillips and Williams, Food Hydrocolloids
 * 2 (1988) 131 (read as cited). 11 °Brix, 2 g/L of acid and 1 g/L of the emulsion: common practice, no source. The oil is a little under
 * 20 %, the gum 0.65 of it. Density: CRC table.
 */
export const orange: DrinkToMake = {
  name: 'Cloudy orange',
  source: 'Randall, Phillips and Williams 1988',
  typed: { what: 'Orange cloud', litres: '20', brix: '11', abv: '0', dose: '190', 'throw.n': '5', 'throw.by': 'Volume', acidity: '2', benzoate: '150', gas: '0', make: 'An emulsion', dosage: '1', gum: '0.65', spare: '400', fine: '0.01', coarse: '1' }, // prettier-ignore
  litres: 20,
  perLitre: { sugar: 0.11 * 1042.3, 'citric acid, anhydrous': 2 },
  brix: 11,
  abv: 0,
  density: 1.0423,
  lots: ['L-orange'],
};

/**
 * Peppermint cordial, wholesale: 5 oz of oil, 3 pints of rectified and 36 gallons of proof spirit (57.06 % ABV), 2¾ cwt of sugar, to 100
 * imperial gallons: Cooley's Cyclopaedia of Practical Receipts, 6th edition. That is 20.9 % ABV, 307.3 g/L of sugar and 312 mg/L of oil. Here it
 * is 20 % ABV (1.091 g/mL, so 28.16 °Brix), and as much oil as the pulegone in it allows today.
 */
export const cordial: DrinkToMake = {
  name: 'Peppermint cordial',
  source: 'Cooley’s Cyclopaedia of Practical Receipts',
  typed: { what: 'Peppermint cordial', litres: '5', brix: '28.16', abv: '20', dose: '286', 'throw.n': '0', acidity: '0', benzoate: '0', dosage: '2', make: 'A solution', carrier: 'ethanol', spare: '0', fine: '0.001', coarse: '0.1' }, // prettier-ignore
  litres: 5,
  perLitre: { sugar: 307.3 },
  brix: 28.16,
  abv: 20,
  lots: ['L-mint', 'L-ethanol-96'],
};

/**
 * 61 mg/L of quinine, the mean of tonic waters in a survey of the Bavarian food authority (as cited), as the hydrochloride dihydrate: 74.6 mg/L.
 * Grapefruit juice of 10 °Brix and 12 g/kg of acid, 60 g/L; 9 °Brix, 3 g/L of acid, 8 mg/kg of oil: common practice, no source. Density: CRC table.
 */
export const bitter: DrinkToMake = {
  name: 'Bitter without alcohol',
  source: 'Quinine in drinks, Bavarian State Office for Health and Food Safety',
  typed: { what: 'Grapefruit bitter', litres: '5', brix: '9', abv: '0', dose: '80.1', 'throw.n': '3', 'throw.by': 'Volume', 'own.1': 'grapefruit juice', 'own.1.g': '60', acidity: '3', benzoate: '0', sorbate: '250', dosage: '1', ...inGlycol }, // prettier-ignore
  litres: 5,
  perLitre: {
    sugar: 0.09 * 1034 - 60 * (0.1 - 0.8 * 0.012), // a refractometer reads 1 % of citric acid as 0.8 °Brix
    'grapefruit juice': 60,
    'citric acid, anhydrous': 3 - 0.72,
    'potassium sorbate': 0.25 * (150.22 / 112.13),
  },
  brix: 9,
  abv: 0,
  density: 1.034,
  lots: ['L-quinine', 'L-peel', 'L-grapefruit', 'L-propylene-glycol'],
};

/** A material of a recipe and its bottle, fit for drinks. */
function ingredient(id: string, name: string, facts: object, bottled: object = {}): AnyRecord[] {
  return [
    newRecord('material', {
      id,
      name,
      code: id.slice(0, 4).toUpperCase(),
      sort: 'natural',
      form: 'liquid',
      cautions: [],
      ...facts,
    } as never),
    newRecord('bottle', {
      id: `b-${id}`,
      material: id,
      supplier: 'Saltmarsh Supplies',
      lot: `L-${id}`,
      grade: 'fit for drinks',
      amountG: 2000,
      ...bottled,
    } as never),
  ];
}

function liquid(solvent: string, name: string): AnyRecord {
  return newRecord('supply', {
    id: `s-${solvent}`,
    name,
    sort: 'solvent',
    solvent,
    grade: 'fit for drinks',
    unit: 'g',
    amount: 20_000,
    supplier: 'Saltmarsh Supplies',
    lot: `L-${solvent}`,
  });
}

function formula(id: string, name: string, parts: Readonly<Record<string, readonly [name: string, share: number]>>) {
  const lines = Object.entries(parts).map(([material, [called, share]]) => ({ material, name: called, share }));
  return newRecord('formula', { id, name, root: id, version: 1, notes: '', from: [], lines });
}

function weighing(gPerMl: number) {
  return { density: { gPerMl, atC: 20, source: 'made up for the test' } };
}

const substance = { sort: 'substance', purity: 1 };

/** Everything that the four drinks are made of. */
export const fourShelf: readonly AnyRecord[] = [
  ...ingredient('citral', 'citral', { cas: '5392-40-5', ...substance, ...weighing(0.889) }),
  ...ingredient('linalool', 'linalool', { cas: '78-70-6', ...substance, ...weighing(0.862) }),
  ...ingredient('orange', 'sweet orange oil', { cas: '8008-57-9', family: 'citrus oil', ...weighing(0.845) }),
  ...ingredient('mint', 'peppermint oil', { cas: '8006-90-4', ...weighing(0.905) }),
  ...ingredient('peel', 'bitter orange oil', { cas: '68916-04-1', family: 'citrus oil', ...weighing(0.847) }),
  ...ingredient('quinine', 'quinine hydrochloride dihydrate', { cas: '6119-47-7', form: 'solid', ...substance }),
  ...ingredient(
    'grapefruit',
    'grapefruit juice',
    { preparation: 'juice' },
    { holds: { brix: 10, acid: 0.012 }, allergens: [], amountG: 5000 },
  ),
  liquid('propylene-glycol', 'propylene glycol'),
  liquid('ethanol-96', 'ethanol 96 %'),
  formula('lemon', 'Lemon soda', { citral: ['citral', 9.2], linalool: ['linalool', 2] }),
  formula('cloud', 'Orange cloud', { orange: ['sweet orange oil', 1] }),
  formula('cordial', 'Peppermint cordial', { mint: ['peppermint oil', 1] }),
  formula('bitter', 'Grapefruit bitter', {
    quinine: ['quinine hydrochloride dihydrate', 72.1],
    peel: ['bitter orange oil', 8],
  }),
];
