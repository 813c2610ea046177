import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cramerFinder } from '../../../src/core/limits/cramer';
import { worstConstituents, type DrinkMaterial } from '../../../src/core/limits/exposure';
import { isConfirmed, type Trait } from '../../../src/core/limits/figure';
import { worstState, type Finding } from '../../../src/core/limits/finding';
import { ceilings } from '../../../src/core/limits/highestDose';
import { checkDrink } from '../../../src/core/limits/limits';
import { exact, measured } from '../../../src/core/number/measured';
import { gramPerMl, massFraction } from '../../../src/core/number/units';
import { intakes } from '../../../src/tables/adi';
import { constituents } from '../../../src/tables/constituents';
import { bansEu, limitsEu } from '../../../src/tables/limitsEu';
import { bansUs, limitsUs } from '../../../src/tables/limitsUs';
import {
  concerns,
  cramerClasses,
  cramerFromMemory,
  cramerMemory,
  cramerSource,
} from '../../../src/tables/concernThresholds';

const rules = {
  bans: [...bansEu, ...bansUs],
  limits: [...limitsEu, ...limitsUs],
  intakes,
  concerns,
  cramer: cramerFinder([
    { classes: cramerClasses, figure: cramerSource },
    { classes: cramerFromMemory, figure: cramerMemory },
  ]),
};

function pure(name: string, cas: string, mgPerKg: number, extra: Partial<DrinkMaterial> = {}): DrinkMaterial {
  return { id: name, name, cas: [cas], mgPerKg: exact(mgPerKg), constituents: [], natural: false, ...extra };
}
function oil(name: string, cas: string, mgPerKg: number, certificate: [string, string, number][] = []): DrinkMaterial {
  const counted = worstConstituents({
    published: constituents.filter((row) => row.oil.includes(cas)),
    certificate: certificate.map(([id, constituent, share]) => ({
      cas: id,
      name: constituent,
      share: massFraction(share),
      from: 'lot',
    })),
  });
  return { id: name, name, cas: [cas], mgPerKg: exact(mgPerKg), constituents: counted, natural: true };
}
function judge(
  materials: readonly DrinkMaterial[],
  how: {
    alcoholic?: boolean;
    abv?: number;
    traits?: Trait[];
    jurisdiction?: 'EU' | 'US';
    kg?: number;
    density?: number;
  } = {},
): Finding[] {
  const { alcoholic = false, abv = 0, traits = [], jurisdiction = 'EU', kg = 0.3, density = 1 } = how;
  return checkDrink({
    materials,
    drink: { alcoholic, abv, density: gramPerMl(density), traits },
    drinker: { drinkKgPerDay: kg, bodyKg: 60 },
    jurisdiction,
    rules,
  });
}
const about = (findings: readonly Finding[], what: string) => findings.find((finding) => finding.what.startsWith(what));
const nutmeg = (mgPerKg: number) => oil('nutmeg oil', '8008-45-5', mgPerKg);

describe('may it be added at all', () => {
  test('safrole as such is refused in the EU (Annex III A) and in the US (21 CFR 189.180), in any amount', () => {
    for (const jurisdiction of ['EU', 'US'] as const) {
      const [first] = judge([pure('safrole', '94-59-7', 0.001)], { jurisdiction });
      expect(first).toMatchObject({ check: 'added', state: 'prohibited', max: 0 });
    }
  });

  test('nutmeg oil that brings safrole is not refused as such: its safrole is counted against the limit', () => {
    const findings = judge([nutmeg(10)]);
    expect(findings.some(({ state }) => state === 'prohibited')).toBe(false);
    expect(about(findings, 'safrole')!.check).toBe('limit');
  });

  test('calamus oil and synthetic pulegone are refused in the US (21 CFR 189.110, 172.515)', () => {
    expect(judge([oil('calamus oil', '8015-79-0', 1)], { jurisdiction: 'US' })[0]!.state).toBe('prohibited');
    expect(judge([pure('pulegone', '89-82-7', 1)], { jurisdiction: 'US' })[0]!.state).toBe('prohibited');
  });

  test('St John’s wort is for alcoholic drinks only (Reg. 1334/2008 Annex IV)', () => {
    const herb = { ...oil('extract', 'none', 10), botanical: 'Hypericum perforatum' };
    expect(judge([herb])[0]!.state).toBe('prohibited');
    expect(judge([herb], { alcoholic: true, abv: 20 }).some(({ state }) => state === 'prohibited')).toBe(false);
  });
});

describe('numeric limits', () => {
  test('thujone in a spirit: cedar leaf oil up to 17.2 ppm (58 % of the oil, 10 mg/kg; Reg. 1334/2008 as quoted)', () => {
    const cedar = (ppm: number) => judge([oil('cedar leaf oil', '8007-20-3', ppm)], { alcoholic: true, abv: 40 });
    expect(about(cedar(10), 'thujone')!.state).toBe('within');
    expect(about(cedar(17), 'thujone')!.state).toBe('near');
    expect(about(cedar(17.3), 'thujone')!.state).toBe('over');
    const binding = ceilings(cedar(10), 10).find(({ finding }) => finding.what === 'thujone (alpha and beta)')!;
    expect(binding.mgPerKg).toBeCloseTo(17.2, 1);
    expect(binding.binding).toBe('cedar leaf oil');
  });

  test('a certificate beats the published range: calamus oil with 5 % β-asarone up to 20 ppm in a spirit (primary limit)', () => {
    const lot = oil('calamus oil', '8015-79-0', 10, [['5273-86-9', 'beta-asarone', 0.05]]);
    const findings = judge([lot], { alcoholic: true, abv: 40 });
    expect(about(findings, 'beta-asarone')!.amount.value).toBeCloseTo(0.5, 12);
    expect(ceilings(findings, 10).find(({ finding }) => finding.what === 'beta-asarone')!.mgPerKg).toBeCloseTo(20, 9);
    const unknown = judge([oil('calamus oil', '8015-79-0', 10)], { alcoholic: true, abv: 40 });
    expect(about(unknown, 'beta-asarone')!.amount.value).toBeCloseTo(9.6, 9); // worst published: 96 %
  });

  test('every source is added: safrole from nutmeg and from mace in one drink', () => {
    const both = judge([nutmeg(10), oil('mace oil', '8007-12-3', 10)]);
    expect(about(both, 'safrole')!.amount.value).toBeCloseTo(10 * 0.028 + 10 * 0.0067, 9);
    expect(about(both, 'safrole')!.from.map(({ material }) => material)).toEqual(['nutmeg oil', 'mace oil']);
  });

  test('a limit that was not read in the law never turns green: 1 ppm of nutmeg oil is "check the law"', () => {
    const found = about(judge([nutmeg(1)]), 'safrole')!;
    expect(found.amount.value).toBeLessThan(0.1 * found.max!);
    expect(isConfirmed(found.figure!)).toBe(false);
    expect(found.state).toBe('check');
  });

  test('nor does a content that was not read: the range of a tansy oil rests on memory', () => {
    const found = about(judge([oil('tansy oil', '8016-87-3', 1)], { alcoholic: true, abv: 40 }), 'thujone')!;
    expect(isConfirmed(found.figure!)).toBe(true);
    expect(found.state).toBe('check');
  });

  test('nor does a content given only as "1 % or more" or as usual: the true one may be higher', () => {
    const range = { cas: '546-80-5', name: 'thujone', low: massFraction(0.01), high: null, typical: null };
    const counted = worstConstituents({ published: [{ ...range, level: 'primary', source: 'x' }], certificate: [] });
    const some = { ...pure('an oil', '8000-00-0', 10), natural: true, constituents: counted };
    expect(about(judge([some], { alcoholic: true, abv: 40 }), 'thujone')!.state).toBe('check');
  });

  test('SAIB and ester gum are for cloudy drinks only in the EU', () => {
    const gum = pure('ester gum', '8050-31-5', 50, { fixed: true });
    expect(about(judge([gum]), 'glycerol esters')!.state).toBe('over');
    expect(about(judge([gum], { traits: ['cloudy'] }), 'glycerol esters')!.state).toBe('within');
    expect(
      about(judge([pure('SAIB', '126-13-6', 50)], { alcoholic: true, abv: 40, traits: ['cloudy'] }), 'sucrose')!.state,
    ).toBe('over');
  });

  test('the published emulsion at its own dosage is over the ester-gum cap in the EU and in the US', () => {
    for (const jurisdiction of ['EU', 'US'] as const) {
      const dose = pure('ester gum', '8050-30-4', 239 / 1.0423);
      const findings = judge([dose], { jurisdiction, traits: ['cloudy', 'citrus oil'], density: 1.0423 });
      expect(findings.find(({ check, what }) => check === 'limit' && what.startsWith('glycerol ester'))!.state).toBe(
        'over',
      );
    }
  });

  test('preservatives count as the acid and in mg/L: 160 mg/L of sodium benzoate are 135.6 of benzoic acid', () => {
    const findings = judge([pure('sodium benzoate', '532-32-1', 160 / 1.04, { fixed: true })], { density: 1.04 });
    expect(about(findings, 'benzoates')!.amount.value).toBeCloseTo(160 * (122.12 / 144.1), 1);
    // a published soda base brings 169 mg/kg benzoic acid: over 150 mg/L
    const soda = judge([pure('sodium benzoate', '532-32-1', 200, { fixed: true })], { density: 1.036 });
    expect(about(soda, 'benzoates')!.state).toBe('over');
  });

  test('steviol glycosides count as steviol: 200 mg/L of stevioside are 79.1 of 80, in a drink without added sugar', () => {
    const sweet = (mgPerKg: number) =>
      judge([pure('stevioside', '57817-89-7', mgPerKg)], { traits: ['no added sugar'] });
    expect(about(sweet(200), 'steviol')!.amount.value).toBeCloseTo((200 * 318.45) / 804.87, 1);
    expect(about(sweet(200), 'steviol')!.state).toBe('near');
    expect(about(sweet(203), 'steviol')!.state).toBe('over');
    const intake = sweet(200).find(({ check, what }) => check === 'intake' && what.startsWith('steviol'))!;
    expect(intake.amount.value).toBeCloseTo((79.1 * 0.3) / 60, 2);
  });

  test('beside benzoates the sorbate limit falls from 300 to 250 mg/L', () => {
    const sorbate = pure('potassium sorbate', '24634-61-5', 370);
    expect(about(judge([sorbate]), 'sorbates beside')).toBeUndefined();
    expect(about(judge([sorbate, pure('sodium benzoate', '532-32-1', 50)]), 'sorbates beside')!.state).toBe('over');
  });

  test('a rule that names only some drinks sends you to the law elsewhere: quinine in a still tonic in the US', () => {
    const tonic = (traits: Trait[]) =>
      about(judge([pure('quinine', '130-95-0', 60)], { jurisdiction: 'US', traits }), 'quinine')!;
    expect(tonic(['carbonated']).state).toBe('within');
    expect(tonic([]).state).toBe('check');
  });

  test('a label trigger is told, and is not a limit: 41 ppm vanillin in a US spirit (TTB)', () => {
    const spirit = (ppm: number) =>
      judge([pure('vanillin', '121-33-5', ppm)], { jurisdiction: 'US', alcoholic: true, abv: 40 });
    expect(about(spirit(41), 'vanillin, synthetic')!.state).toBe('label');
    expect(about(spirit(39), 'vanillin, synthetic')).toBeUndefined();
  });

  test('in the US a drink with wormwood or cedar leaf oil is free of thujone; sage is not named (21 CFR 172.510)', () => {
    const us = (name: string, cas: string) =>
      judge([oil(name, cas, 1)], { jurisdiction: 'US', alcoholic: true, abv: 40 });
    expect(about(us('wormwood oil', '8008-93-3'), 'thujone from')!.state).toBe('over');
    expect(about(us('cedar leaf oil', '8007-20-3'), 'thujone from')!.state).toBe('over');
    expect(about(us('sage oil', '8022-56-8'), 'thujone from')).toBeUndefined();
  });

  test('quinine salts count as the base: 100 mg/kg of the hydrochloride dihydrate are 82 (molar masses)', () => {
    const salt = pure('quinine hydrochloride', '6119-47-7', 100);
    expect(about(judge([salt], { jurisdiction: 'US', traits: ['carbonated'] }), 'quinine')!.amount.value).toBeCloseTo(
      81.74,
      2,
    );
  });

  test('an amount whose doubt reaches over the limit is near it', () => {
    const doubtful = { ...pure('x', '546-80-5', 7), mgPerKg: measured(7, 2, { id: 'drop', words: 'drop' }) };
    expect(about(judge([{ ...doubtful, natural: true }], { alcoholic: true, abv: 40 }), 'thujone (')!.state).toBe(
      'near',
    );
  });
});

describe('daily intakes', () => {
  /** Highest ppm at 0.5 kg a day and 60 kg, as worked out by hand: ADI × 60 / 0.5. */
  test.each([
    ['citral', '5392-40-5', 60],
    ['beta-ionone', '14901-07-6', 12],
    ['isoeugenol', '97-54-1', 9],
    ['maltol', '118-71-8', 120],
    ['vanillin', '121-33-5', 1200],
  ])('%s (%s) reaches its intake at %d ppm with half a litre a day at 60 kg', (name, cas, ppm) => {
    const findings = judge([pure(name, cas, 1)], { kg: 0.5 }).filter(({ check }) => check === 'intake');
    expect(ceilings(findings, 1)[0]!.mgPerKg).toBeCloseTo(ppm, 9);
  });

  test('members of the citral group are added (JECFA): 20 ppm each of four of them are over together', () => {
    const four = [
      pure('citral', '5392-40-5', 20),
      pure('linalool', '78-70-6', 20),
      pure('linalyl acetate', '115-95-7', 20),
      pure('citronellol', '106-22-9', 20),
    ];
    expect(about(judge(four, { kg: 0.5 }), 'citral, geranyl')!.state).toBe('over');
    expect(about(judge(four.slice(0, 1), { kg: 0.5 }), 'citral, geranyl')!.state).toBe('within');
  });

  test('citral of an oil counts too: lemongrass oil at its worst content', () => {
    const found = about(judge([oil('lemongrass oil', '8007-02-1', 100)], { kg: 0.3 }), 'citral, geranyl')!;
    expect(found.amount.value).toBeCloseTo((100 * 0.85 * 0.3) / 60, 9);
  });

  test('where two bodies differ both are shown and the lower binds: eugenol 1.0 before 2.5', () => {
    const eugenol = judge([pure('eugenol', '97-53-0', 10)], { kg: 0.5 }).filter(({ check }) => check === 'intake');
    expect(eugenol.map(({ max }) => max)).toContain(2.5);
    expect(ceilings(eugenol, 10)[0]!.finding.max).toBe(1);
  });

  test('the limonene value of a cargo assessment is not used', () => {
    expect(intakes.some((row) => row.cas.includes('138-86-3') || row.cas.includes('5989-27-5'))).toBe(false);
  });

  test('where there is no safe level it needs a look, however little', () => {
    const findings = judge([oil('basil oil', '8015-73-4', 0.01)]).filter(({ check }) => check === 'intake');
    expect(findings.find(({ what }) => what === 'estragole')!.state).toBe('look');
  });

  test('an intake known from memory never turns green', () => {
    expect(about(judge([pure('piperonal', '120-57-0', 0.1)]), 'piperonal')!.state).toBe('check');
  });
});

describe('threshold of concern', () => {
  test.each([
    ['I', '639-99-6', 3.6],
    ['II', '20489-53-6', 1.08],
    ['III', '27538-09-6', 0.18],
  ])('class %s (%s) needs a look from %d ppm with half a litre a day (EFSA 2019: 1800, 540, 90 µg)', (_, cas, ppm) => {
    const at = (mgPerKg: number) =>
      judge([pure('x', cas, mgPerKg)], { kg: 0.5 }).find(({ check }) => check === 'concern')!;
    expect(at(ppm * 0.99).state).toBe('within');
    expect(at(ppm * 1.01).state).toBe('look');
    expect(at(1).max! / 0.5).toBeCloseTo(ppm, 9);
  });

  test('it is not asked where an intake exists, and never says "over"', () => {
    const findings = judge([pure('vanillin', '121-33-5', 5000)]);
    expect(findings.filter(({ check }) => check === 'concern')).toEqual([]);
    expect(judge([pure('x', '639-99-6', 1e6)]).some(({ state }) => state === 'over')).toBe(false);
  });

  test('a class that was read goes before one from memory, and the stricter of two classes in one list', () => {
    const figure = (level: 'secondary' | 'memory') => ({ source: 'x', asOf: '', level });
    const find = cramerFinder([
      { classes: { I: 'a b', II: '', III: 'b' }, figure: figure('secondary') },
      { classes: { I: '', II: 'a c', III: '' }, figure: figure('memory') },
    ]);
    expect(find('a')).toMatchObject({ cramerClass: 'I', figure: { level: 'secondary' } });
    expect(find('b')).toMatchObject({ cramerClass: 'III' });
    expect(find('c')).toMatchObject({ cramerClass: 'II', figure: { level: 'memory' } });
    expect(find('d')).toBeNull();
  });

  test('a material no list knows is unknown, not green', () => {
    const findings = judge([pure('new', '1-1-1', 0.001)]);
    expect(worstState(findings)).toBe('unknown');
    expect(worstState([])).toBe('unknown');
    expect(worstState(judge([oil('an oil of which nothing is listed', '8000-00-0', 1)]))).toBe('unknown');
  });

  test('what nobody has judged is told in mg a day: 10 mg/kg in 0.3 kg are 3 mg, whatever of it is fixed too', () => {
    const [found] = judge([pure('new', '1-1-1', 10, { fixed: true })], { kg: 0.3 });
    expect(found).toMatchObject({ check: 'concern', state: 'unknown', unit: 'mg/day', max: null });
    expect([found!.amount.value, found!.fixed.value]).toEqual([3, 3]);
  });
});

describe('the reverse answer', () => {
  const formula = (k: number) => [
    nutmeg(20 * k),
    pure('maltol', '118-71-8', 80 * k),
    pure('citral', '5392-40-5', 10 * k),
  ];

  test('a formula broken by its oil’s safrole: the oil binds, and at the ceiling it is just within', () => {
    const found = judge(formula(2));
    expect(about(found, 'safrole')!.state).toBe('over'); // 40 ppm × 2.8 %
    const safrole = ceilings(found, 220).find(
      ({ finding }) => finding.what === 'safrole' && finding.check === 'limit',
    )!;
    expect(safrole.binding).toBe('nutmeg oil');
    expect(safrole.mgPerKg).toBeCloseTo((1 / 0.028 / 20) * 110, 6);
    const again = judge(formula(2 * safrole.times));
    expect(about(again, 'safrole')!.amount.value).toBeCloseTo(1, 9);
  });

  test('what does not follow the dose is kept out of the factor', () => {
    const fixed = pure('citral of the base', '5392-40-5', 30, { fixed: true });
    const found = judge([fixed, pure('citral', '5392-40-5', 10)], { kg: 0.5 });
    const ceiling = ceilings(found, 10).find(({ finding }) => finding.check === 'intake')!;
    expect(ceiling.mgPerKg).toBeCloseTo(30, 9); // 60 ppm less 30
  });

  test('a material that may not be added leaves no dose', () => {
    expect(ceilings(judge([pure('coumarin', '91-64-5', 1)]), 1)[0]).toMatchObject({ times: 0, binding: 'coumarin' });
    expect(() => ceilings([], 0)).toThrow('dosed above zero');
  });

  test('k times the formula is k times every amount and the same ceiling', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 20, noNaN: true }), (k) => {
        const [one, more] = [judge(formula(1)), judge(formula(k))];
        for (const finding of more) {
          const same = one.find(
            ({ check, what, rule }) => check === finding.check && what === finding.what && rule === finding.rule,
          )!;
          expect(finding.amount.value / same.amount.value).toBeCloseTo(k, 6);
        }
        const lowest = (found: Finding[], dose: number) => ceilings(found, dose)[0]!.mgPerKg;
        expect(lowest(more, 110 * k)).toBeCloseTo(lowest(one, 110), 6);
      }),
    );
  });

  test('portion and weight must be more than nothing', () => {
    expect(() => judge(formula(1), { kg: 0 })).toThrow('above zero');
  });
});
