import { beforeEach, describe, expect, test } from 'vitest';
import { describe as described } from '../../../src/app/describe/describe';
import { overNotices, standingWord } from '../../../src/app/describe/overFacts';
import { recordTable } from '../../../src/app/record/paper';
import { exact } from '../../../src/core/number/measured';
import type { Tasting } from '../../../src/records/kind/drink';
import { usualSettings } from '../../../src/records/kind/settings';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { overLines, overNow } from '../../../src/workshop/drinkable/overNow';
import { partsOfTasting } from '../../../src/workshop/drinkable/partsOfDrink';
import { vialRecord } from '../../browser/benchRecords';

const material = (id: string, cas: string, facts: object = {}) =>
  newRecord('material', {
    id,
    name: id,
    code: 'XX',
    cas,
    sort: 'natural',
    form: 'liquid',
    cautions: [],
    ...facts,
  } as never);

const vial = {
  ...vialRecord({ code: 'NUT', name: 'nutmeg oil', solvent: 'propylene-glycol' }),
  contents: [{ material: 'nutmeg oil', name: 'nutmeg oil', strength: exact(0.1) }],
};

/** 100 mL of water with that many grams of a 10 % vial in it. */
function drink(grams: number, facts: Partial<Tasting> = {}): Tasting {
  const mgPerKg = exact((0.1 * grams * 1e6) / (100 + grams));
  return newRecord('tasting', {
    base: { name: 'water', volumeMl: 100, brix: 0, abv: 0, densityGPerMl: 1 },
    doses: [{ vial: vial.id, code: 'NUT', drops: 9, massG: exact(grams) }],
    reached: [{ material: 'nutmeg oil', name: 'nutmeg oil', mgPerKg }],
    verdict: 'fine',
    liking: 7,
    uses: [],
    ...facts,
  } as never);
}

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('nutmeg oil', '8008-45-5'), vial]);
});

describe('a drink that was dosed', () => {
  test('is over the limit of safrole with 50 mg/kg of nutmeg oil, and says so on its page and in its table', () => {
    const over = drink(0.05); // at 2.8 % of safrole 1.4 of 1 mg/kg
    expect(overLines(over)).toEqual(['over the EU limit of safrole: 1.4 mg/kg of 1 mg/kg']);
    expect(overNotices(over)).toEqual([expect.stringMatching(/^Over the EU/)]);
    expect(recordTable(over)).toContain('not fit for drinks,Over the EU limit of safrole');
    expect(overLines(drink(0.03))).toEqual([]);
  });

  test('that is smell only besides says that first: it is not even tasted', () => {
    takeIn([{ ...vial, smellOnly: { at: '2026-11-30T09:00:00.000Z', why: 'wrong bottle' } } as never]);
    const table = recordTable(drink(0.05));
    expect(table).toContain('grade,smell only');
    expect(table).toContain('not fit for drinks,Over the EU limit of safrole');
    expect([standingWord('smell only', true), standingWord(undefined, true), standingWord('x', false)]).toEqual([
      'smell only',
      'over a limit',
      'x',
    ]);
  });

  test('is over by an oil that is known by its Latin name alone', () => {
    takeIn([material('nutmeg oil', '', { botanical: 'Myristica fragrans' })]);
    expect(overLines(drink(0.05))).toEqual(['over the EU limit of safrole: 1.4 mg/kg of 1 mg/kg']);
  });

  test('by the rules of today’s market: in the US nutmeg oil has no such limit, and propylene glycol another', () => {
    takeIn([{ ...usualSettings, jurisdiction: 'US' } as never]);
    expect(overLines(drink(0.05))).toEqual([]);
  });

  test('what it was made from and what its reason was stands in its facts', () => {
    expect(described(drink(0.05, { although: 'a sip' })).facts).toContainEqual(['Continued over a limit', 'a sip']);
  });

  test('what came along in the vial is judged too: half a gram of it brings 4.5 g/kg of propylene glycol', () => {
    const { parts, drink: finished } = partsOfTasting(drink(0.5));
    const glycol = parts.find(({ id }) => id === 'propylene-glycol')!;
    expect(glycol.mgPerKg.value).toBeCloseTo((0.9 * 0.5 * 1e6) / 100.5, 6);
    expect(finished.abv).toBe(0);
    expect(overLines(drink(0.5)).join()).toContain('propane-1,2-diol (E 1520)');
  });

  test('a vial that was erased since leaves what was reached', () => {
    const lonely = drink(0.05);
    shelf.records.value = new Map([...shelf.records.value].filter(([id]) => id !== vial.id));
    expect(partsOfTasting(lonely).parts.map(({ id }) => id)).toEqual(['nutmeg oil']);
    expect(overLines(lonely)).toEqual(['over the EU limit of safrole: 1.4 mg/kg of 1 mg/kg']);
  });

  test('strength as it was reached decides: above 1.2 % vol the limit of drinks without alcohol is not asked', () => {
    expect(overLines(drink(0.05, { abv: exact(1.3) }))).toEqual([]);
    expect(overLines(drink(0.05, { abv: exact(1.2) }))).toHaveLength(1);
  });

  test('what may not be added at all is said with its rule', () => {
    const calamus = material('calamus', '8015-79-0', { botanical: 'Acorus calamus' });
    takeIn([calamus]);
    const reached = [{ material: 'calamus', name: 'calamus', mgPerKg: exact(1) }];
    expect(overLines(drink(0.05, { reached }))).toEqual([
      expect.stringMatching(/^not allowed in the EU: calamus \(not to be used for flavourings/),
    ]);
  });

  test('an intake is said as what it is, no limit of the law', () => {
    takeIn([material('isoeugenol', '97-54-1', { sort: 'substance' })]);
    const reached = [{ material: 'isoeugenol', name: 'isoeugenol', mgPerKg: exact(20) }]; // 0.1 of 0.075 mg/kg bw
    expect(overLines(drink(0.05, { reached }))).toEqual([
      'over the daily intake of isoeugenol: 0.1 mg/kg bw/day of 0.075 mg/kg bw/day',
    ]);
  });
});

describe('a drink with a solvent of which no one has said the alcohol', () => {
  const own = {
    name: 'house spirit',
    density: { gPerMl: 1, atC: 20, source: '' },
    food: true,
    dryOff: 'unknown' as const,
  };
  const THUJONE = /^over the EU limit of thujone/; // 10 mg/kg, in alcoholic drinks only: above 1.2 % vol
  /** 100 mL of syrup of 1.2 g/mL with 10 % of sage oil in that solvent, so that the solvent alone could make so many % vol. */
  const sage = (most: number, abv?: number) => {
    const share = (most * 0.789) / 100 / 1.2;
    const grams = (120 * share) / (0.9 - share);
    takeIn([
      material('sage oil', '', { botanical: 'Salvia officinalis' }),
      newRecord('solvent', { id: 'own', ...own, ...(abv === undefined ? {} : { abv }) } as never),
      {
        ...vial,
        id: 'v-sage',
        contents: [{ ...vial.contents[0]!, material: 'sage oil' }],
        solvent: { id: 'own', ...own },
      } as never,
    ]);
    return drink(grams, {
      base: { name: 'syrup', volumeMl: 100 - grams / vial.densityGPerMl, brix: 0, abv: 0, densityGPerMl: 1.2 },
      doses: [{ vial: 'v-sage', code: 'SAGE', drops: null, massG: exact(grams) }],
      reached: [{ material: 'sage oil', name: 'sage oil', mgPerKg: exact(1000) }],
      uses: [{ id: 'v-sage', massG: grams }],
    } as never);
  };

  test('is held to the limits of alcoholic drinks too, from where nothing but ethanol would make it one', () => {
    expect(overLines(sage(1.4))).toContainEqual(expect.stringMatching(THUJONE));
    expect(overLines(sage(1)).filter((line) => THUJONE.test(line))).toEqual([]);
  });

  test('and is not where the solvent was said to hold none', () => {
    expect(overLines(sage(1.4, 0)).filter((line) => THUJONE.test(line))).toEqual([]);
  });
});

test('it is found anew when the Shelf changes: a certificate of the bottle clears the drink', () => {
  const bottle = newRecord('bottle', {
    id: 'b',
    material: 'nutmeg oil',
    supplier: '',
    lot: 'L',
    grade: 'fit for drinks',
  } as never);
  takeIn([bottle, { ...vial, uses: [{ id: 'b', massG: 0.1 }] } as never]);
  const over = drink(0.05);
  expect(overNow(over)).toHaveLength(1);
  expect(overNow(over)).toBe(overNow(over)); // as long as nothing changes
  takeIn([{ ...bottle, constituents: [{ cas: '94-59-7', name: 'safrole', share: 0.001 }] } as never]);
  expect(overNow(over)).toEqual([]);
});

test('other records are over nothing', () => {
  expect(overNow(vial)).toEqual([]);
  expect(overNow(material('nutmeg oil', '8008-45-5'))).toEqual([]);
});
