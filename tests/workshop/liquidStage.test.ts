import { beforeEach, describe, expect, test } from 'vitest';
import { drinkMakeOf } from '../../src/core/drink/drinkMake';
import { drinkDensity } from '../../src/core/drink/finishedDrink';
import { judgeStage, type Stage } from '../../src/core/liquid/stage';
import { massFraction, volumeFraction } from '../../src/core/number/units';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { solventsOnHand } from '../../src/workshop/onHand';
import { freeAcid, mediumOf, mediumOfDrink, solutesOf, solventIn, solventSolutes, stageLines } from '../../src/workshop/liquidStage'; // prettier-ignore

/** id, CAS, whether it is a natural, and whether it is solid. */
const MATERIALS = [
  ['sweet orange oil', '8008-57-9', 'natural', 'liquid'],
  ['lemon oil', '8008-56-8', 'natural', 'liquid'],
  ['peppermint oil', '8006-90-4', 'natural', 'liquid'],
  ['rhubarb extract', undefined, 'natural', 'liquid'],
  ['limonene', '5989-27-5', 'substance', 'liquid'],
  ['beta-pinene', '127-91-3', 'substance', 'liquid'],
  ['linalool', '78-70-6', 'substance', 'liquid'],
  ['linalyl acetate', '115-95-7', 'substance', 'liquid'],
  ['citral', '5392-40-5', 'substance', 'liquid'],
  ['ethyl acetate', '141-78-6', 'substance', 'liquid'],
  ['vanillin', '121-33-5', 'substance', 'solid'],
  ['ethyl maltol', '4940-11-8', 'substance', 'solid'],
  ['menthol', '2216-51-5', 'substance', 'solid'],
  ['quinine', '130-95-0', 'substance', 'solid'],
] as const;

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(
    MATERIALS.map(
      ([id, cas, sort, form]) =>
      newRecord('material', { id, name: id, code: id.slice(0, 4).toUpperCase(), sort, form, cautions: [], ...(cas ? { cas } : {}) }), // prettier-ignore
    ),
  );
});

type Amounts = Readonly<Record<string, number>>;

const solutes = (amounts: Amounts) => Object.entries(amounts).flatMap(([id, mgPerL]) => solutesOf(id, id, mgPerL));

/** In a drink of % ABV and °Brix. */
function inDrink(amounts: Amounts, abv = 0, brix = 0): Stage {
  const make = drinkMakeOf(massFraction(brix / 100), volumeFraction(abv / 100));
  return judgeStage(solutes(amounts), mediumOfDrink({ abv, brix: brix / 100, densityGPerMl: drinkDensity(make) }));
}

/** Percent by volume (g/100 mL) in a solvent of the table, that fills up. */
function inSolvent(amounts: Amounts, id: string): Stage {
  const solvent = solventsOnHand().find((one) => one.id === id)!;
  const grams = Object.values(amounts).reduce((sum, percent) => sum + percent * 10, 0); // g in a litre
  const solventG = (1000 - grams / 0.95) * solvent.density.gPerMl;
  const medium = mediumOf({
    ml: 1000,
    grams: grams + solventG,
    sugarG: 0,
    ...solventIn(id, solventG, solvent.density.gPerMl),
  });
  return judgeStage(
    solutes(Object.fromEntries(Object.entries(amounts).map(([one, percent]) => [one, percent * 10_000]))),
    medium,
  );
}

const [YES, NO, TRY] = ['dissolves', 'stays cloudy', 'try it'] as const;
const FICHAN = 'Fichan, Larroche and Gros 1999: terpene hydrocarbons 5–30 mg/L, oxygenated 300–3100';
const AQSOL = 'AqSolDB, measured in water';
const GIRONI = 'Gironi and others 1995: ethanol over 0.73 by mass mixes with limonene and water';
const RUBINO = 'Rubino 1984 with measured log Kow: the log-linear law';
const PRACTICE = 'common practice, no source';

describe('possible and impossible in a drink', () => {
  const cases: readonly (readonly [Amounts, number, number, Stage['verdict'], string])[] = [
    [{ 'sweet orange oil': 4 }, 0, 10, YES, FICHAN],
    [{ 'sweet orange oil': 20 }, 0, 10, TRY, FICHAN],
    [{ 'sweet orange oil': 40 }, 0, 10, NO, FICHAN],
    [{ 'sweet orange oil': 163 }, 0, 52, NO, FICHAN],
    [{ 'sweet orange oil': 25, 'lemon oil': 12, limonene: 3.3 }, 0, 7, NO, FICHAN],
    [{ 'sweet orange oil': 85 }, 40, 0, YES, RUBINO],
    [{ 'sweet orange oil': 85 }, 25, 0, TRY, RUBINO],
    [{ 'sweet orange oil': 85 }, 5, 0, TRY, RUBINO],
    [{ 'sweet orange oil': 300 }, 5, 0, NO, RUBINO],
    [{ 'sweet orange oil': 20_000 }, 40, 0, NO, RUBINO],
    [{ 'beta-pinene': 2 }, 0, 0, YES, FICHAN],
    [{ 'beta-pinene': 60 }, 0, 0, NO, FICHAN],
    [{ linalool: 10 }, 0, 10, YES, AQSOL],
    [{ linalool: 5000 }, 0, 10, NO, AQSOL],
    [{ 'linalyl acetate': 100 }, 0, 0, NO, AQSOL],
    [{ citral: 30 }, 0, 10, YES, AQSOL],
    [{ citral: 5000 }, 0, 0, NO, AQSOL],
    [{ 'ethyl acetate': 100 }, 0, 10, YES, AQSOL],
    [{ vanillin: 100 }, 0, 10, YES, AQSOL],
    [{ vanillin: 30_000 }, 0, 0, NO, AQSOL],
    [{ 'ethyl maltol': 100, vanillin: 100 }, 0, 10, YES, AQSOL],
    [{ menthol: 100 }, 0, 10, YES, AQSOL],
    [{ menthol: 1500 }, 0, 0, NO, AQSOL],
    [{ quinine: 83 }, 0, 9, YES, AQSOL], // as much as a tonic may have
    [{ quinine: 2000 }, 0, 9, NO, AQSOL],
    [{ 'peppermint oil': 50 }, 0, 10, TRY, FICHAN],
    [{ 'rhubarb extract': 50 }, 0, 10, TRY, 'nothing is known of it'],
  ];
  test.each(cases)('%j at %s % ABV and %s °Brix: %s (%s)', (amounts, abv, brix, verdict) => {
    expect(inDrink(amounts, abv, brix).verdict).toBe(verdict);
  });

  test('a carrier is asked of the drink too: 1 g/L of MCT oil floats, 1 g/L of triacetin dissolves (common practice)', () => {
    const medium = mediumOfDrink({ abv: 0, brix: 0.1, densityGPerMl: 1.038 });
    expect(judgeStage(solventSolutes('mct', 'MCT oil', 1000), medium).verdict).toBe(NO);
    expect(judgeStage(solventSolutes('triacetin', 'triacetin', 1000), medium).verdict).toBe(YES);
    expect(solventSolutes('propylene-glycol', 'propylene glycol', 1000)).toEqual([]);
  });

  test('250 mg/L of sorbic acid are nothing to a drink, and too much for its syrup; benzoic acid is held by both', () => {
    const syrup = mediumOfDrink({ abv: 0, brix: 0.55, densityGPerMl: 1.26 });
    expect(judgeStage(freeAcid('potassium-sorbate', 'sorbic acid', 1500), syrup).verdict).toBe(NO);
    expect(judgeStage(freeAcid('sodium-benzoate', 'benzoic acid', 900), syrup).verdict).toBe(YES);
  });
});

describe('possible and impossible in a solvent, % w/v', () => {
  const cases: readonly (readonly [Amounts, string, Stage['verdict'], string])[] = [
    [{ 'sweet orange oil': 10 }, 'ethanol-96', YES, GIRONI],
    [{ 'sweet orange oil': 30 }, 'ethanol-96', TRY, GIRONI],
    [{ 'sweet orange oil': 5 }, 'ethanol-40', NO, RUBINO],
    [{ 'sweet orange oil': 4 }, 'water', NO, FICHAN],
    [{ 'sweet orange oil': 10 }, 'mct', YES, PRACTICE],
    [{ 'sweet orange oil': 10 }, 'glycerol', NO, 'Li and Yalkowsky 1998, from memory'],
    [{ 'sweet orange oil': 2 }, 'propylene-glycol', TRY, 'Chung 2022: too wide to say'],
    [{ vanillin: 5 }, 'mct', TRY, 'what an oil holds of a solid is not known'],
    [{ vanillin: 2 }, 'ethanol-96', YES, RUBINO],
    [{ vanillin: 5 }, 'water', NO, AQSOL],
    [{ linalool: 1 }, 'ethanol-40', TRY, RUBINO],
    [{ citral: 10 }, 'ethanol-96', YES, GIRONI],
  ];
  test.each(cases)('%j in %s: %s (%s)', (amounts, solvent, verdict) => {
    expect(inSolvent(amounts, solvent).verdict).toBe(verdict);
  });
});

describe('what is known of a material', () => {
  test('what the person measured goes before the tables', () => {
    const [orange] = shelf.records.value.values();
    takeIn([{ ...orange!, water: { value: 100, source: 'as typed by hand' } } as never]);
    expect(inDrink({ 'sweet orange oil': 40 }).verdict).toBe(YES);
  });

  test('each is told in a sentence, with what the liquid holds of it', () => {
    expect(stageLines(inDrink({ 'sweet orange oil': 25, 'rhubarb extract': 4 }))).toEqual([
      'sweet orange oil: ‹25 mg/L› needed, the liquid holds 5 mg/L to 30 mg/L: ‹try it›.',
      'rhubarb extract: ‹4 mg/L› needed; what the liquid holds of it is not known: try it.',
    ]);
  });
});
