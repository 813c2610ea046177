import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cramerFinder } from '../../../src/core/limits/cramer';
import { worstConstituents, type DrinkMaterial } from '../../../src/core/limits/exposure';
import { isConfirmed, type Trait } from '../../../src/core/limits/figure';
import { isOver, STATES, worstState, type Finding, type OtherDrinker } from '../../../src/core/limits/finding';
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
  needless: [],
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
    others?: OtherDrinker[];
  } = {},
): Finding[] {
  const { alcoholic = false, abv = 0, traits = [], jurisdiction = 'EU', kg = 0.3, density = 1, others } = how;
  return checkDrink({
    materials,
    drink: { alcoholic, abv, density: gramPerMl(density), traits },
    drinker: { drinkKgPerDay: kg, bodyKg: 60 },
    ...(others ? { others } : {}),
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
    expect(at(ppm * 0.79).state).toBe('within');
    expect(at(ppm * 0.81).state).toBe('near');
    expect(at(ppm * 0.9999).state).toBe('at');
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

describe('at, near and over', () => {
  const spirit = { alcoholic: true, abv: 40 };
  const thujone = (mgPerKg: number, u = 0) => {
    const amount = u > 0 ? measured(mgPerKg, u, { id: 'drop', words: 'drop' }) : exact(mgPerKg);
    const material = { ...pure('thujone oil', '546-80-5', 1), mgPerKg: amount, natural: true };
    return about(judge([material], spirit), 'thujone (')!.state; // 10 mg/kg, Reg. 1334/2008 as quoted
  };

  test.each([
    [7.99, 'within'],
    [8, 'near'],
    [9.99, 'near'],
    [9.996, 'at'],
    [10, 'at'],
    [10.004, 'at'],
    [10.006, 'over'],
  ] as const)('%d of 10 mg/kg is %s', (mgPerKg, state) => expect(thujone(mgPerKg)).toBe(state));

  test('near from the value whose ± at k = 2 just reaches over', () => {
    expect(thujone(7, 1.49)).toBe('within');
    expect(thujone(7, 1.51)).toBe('near');
    expect(thujone(10, 5)).toBe('at');
    expect(thujone(11, 5)).toBe('over');
  });

  test('of a maximum of nothing any amount is over', () => {
    const found = judge([oil('cedar leaf oil', '8007-20-3', 0.001)], { ...spirit, jurisdiction: 'US' });
    expect(about(found, 'thujone from')).toMatchObject({ max: 0, state: 'over' });
  });

  test('not fit for drinks is what is not allowed and what is over, and nothing else', () => {
    expect(STATES.filter((state) => isOver({ state }))).toEqual(['prohibited', 'over']);
  });

  test('the ± of a concern reaches over too: 1.6 of 1.8 mg, 0.1 mg more or less at k = 1', () => {
    const at = (mgPerKg: number, u: number) => {
      const amount = { ...pure('x', '639-99-6', 1), mgPerKg: measured(mgPerKg, u, { id: 'drop', words: 'drop' }) };
      return judge([amount], { kg: 0.5 }).find(({ check }) => check === 'concern')!;
    };
    expect(at(2.8, 0.39).state).toBe('within'); // 1.4 ± 0.39 mg of 1.8 mg
    expect(at(2.8, 0.41).state).toBe('near');
    expect(at(3.7, 0.4).state).toBe('look'); // above it: never "over"
  });

  test('a class from memory never turns green, and a threshold not read neither', () => {
    const menthone = judge([pure('menthone', '89-80-5', 0.01)]).find(({ check }) => check === 'concern')!;
    expect(menthone).toMatchObject({ state: 'check', rule: 'Cramer class II' });
    expect(menthone.figure!.source).toContain('EFSA');
    const unread = { ...rules, concerns: concerns.map((row) => ({ ...row, level: 'memory' as const })) };
    const known = checkDrink({
      materials: [pure('x', '639-99-6', 0.01)],
      drink: { alcoholic: false, abv: 0, density: gramPerMl(1), traits: [] },
      drinker: { drinkKgPerDay: 0.3, bodyKg: 60 },
      jurisdiction: 'EU',
      rules: unread,
    });
    expect(known[0]!.state).toBe('check');
  });

  test('at or near a threshold of concern the drink as a whole needs a look; a limit that is near goes before it', () => {
    const near = judge([pure('x', '639-99-6', 5.5)]); // 1.65 of 1.8 mg a day
    expect(near.map(({ state }) => state)).toEqual(['near']);
    expect(worstState(near)).toBe('look');
    const both = [...near, ...judge([oil('cedar leaf oil', '8007-20-3', 17)], spirit)];
    expect(worstState(both)).toBe('near');
    expect(worstState(judge([pure('x', '639-99-6', 6)]))).toBe('look'); // 1.8 mg: at it
  });
});

describe('rows beside each other', () => {
  test('sorbates beside benzoates are judged by both rows', () => {
    const both = judge([pure('potassium sorbate', '24634-61-5', 100), pure('sodium benzoate', '532-32-1', 50)]);
    expect(both.filter(({ what }) => what.startsWith('sorbates')).map((found) => found.max)).toEqual(
      expect.arrayContaining([300, 250, 11]),
    );
  });

  test('a label duty and a limit of the same substance are both told: 200 mg/kg of caffeine', () => {
    const found = judge([pure('caffeine', '58-08-2', 200)]).filter(({ check }) => check === 'limit');
    expect(found.map(({ state }) => state)).toEqual(['over', 'label']);
  });
});

describe('the edges of rows and sums', () => {
  test('what is not in the drink is not judged', () => {
    expect(judge([pure('vanillin', '121-33-5', 0), pure('coumarin', '91-64-5', 0), pure('x', '639-99-6', 0)])).toEqual(
      [],
    );
  });

  test('below 15 % vol is below: SAIB in a cloudy spirit of 14.9 is limited, of 15 it is not named', () => {
    const saib = (abv: number) =>
      about(judge([pure('SAIB', '126-13-6', 50)], { alcoholic: true, abv, traits: ['cloudy'] }), 'sucrose')!;
    expect([saib(14.9).max, saib(14.9).state]).toEqual([300, 'check']);
    expect([saib(15).max, saib(15).state]).toEqual([0, 'over']);
  });

  test('words on the label are due above the amount, not at it: 40 ppm of vanillin in a US spirit', () => {
    const spirit = judge([pure('vanillin', '121-33-5', 40)], { jurisdiction: 'US', alcoholic: true, abv: 40 });
    expect(about(spirit, 'vanillin, synthetic')).toBeUndefined();
  });

  test('two bottles of one substance without an intake are one line of concern, with their sum', () => {
    const found = judge([pure('from here', '639-99-6', 2), pure('from there', '639-99-6', 3)]);
    expect(found).toHaveLength(1);
    expect(found[0]!.amount.value).toBeCloseTo(5 * 0.3, 12);
    expect(found[0]!.from.map(({ material }) => material)).toEqual(['from here', 'from there']);
    const nameless = { ...pure('a', '', 1), cas: [] };
    expect(judge([nameless, { ...nameless, name: 'b' }]).map(({ what }) => what)).toEqual(['a', 'b']);
  });

  test('of two published contents of the same height the first counts, with its source', () => {
    const range = { cas: '1-1-1', name: 'x', low: null, typical: null, high: massFraction(0.1) };
    const [one] = worstConstituents({
      published: [
        { ...range, level: 'primary', source: 'first' },
        { ...range, level: 'memory', source: 'second' },
      ],
      certificate: [],
    });
    expect(one).toMatchObject({ from: 'first', confirmed: true });
  });
});

describe('other drinkers', () => {
  const judgeFor = (materials: DrinkMaterial[], others: OtherDrinker[]) =>
    checkDrink({
      materials,
      drink: { alcoholic: false, abv: 0, density: gramPerMl(1), traits: [] },
      drinker: { drinkKgPerDay: 0.3, bodyKg: 60 },
      others,
      jurisdiction: 'EU',
      rules: {
        ...rules,
        intakes: [
          ...intakes,
          {
            body: 'x',
            what: 'read per person',
            cas: ['639-99-6'],
            max: 6,
            per: 'person',
            source: 'x',
            asOf: '',
            level: 'primary',
          },
        ],
      },
    });
  const child = { who: 'child', drinkKgPerDay: 0.2, bodyKg: 12 };
  const heavy = { who: 'heavy', drinkKgPerDay: 1.5, bodyKg: 60 };

  test('vanillin at 200 mg/kg: 1 of 10 mg/kg bw for the adult, a third of it for the child, half for who drinks 1.5 L', () => {
    const found = about(judgeFor([pure('vanillin', '121-33-5', 200)], [child, heavy]), 'vanillin')!;
    expect(found.amount.value / found.max!).toBeCloseTo(0.1, 12);
    expect(found.others!.map(({ who, times }) => [who, Number(times.toFixed(9))])).toEqual([
      ['child', 0.333333333],
      ['heavy', 0.5],
    ]);
    expect(found.state).toBe('within');
  });

  test('what passes for the adult and not for the child needs a look; near stays near, over stays over', () => {
    const state = (mgPerKg: number) =>
      about(judgeFor([pure('vanillin', '121-33-5', mgPerKg)], [child]), 'vanillin')!.state;
    expect(state(599)).toBe('within'); // the child: 599 × 0.2 / 12 = 9.98 of 10
    expect(state(600)).toBe('within'); // just the intake
    expect(state(601)).toBe('look');
    expect(state(1700)).toBe('near');
    expect(state(2100)).toBe('over');
    expect(about(judgeFor([pure('piperonal', '120-57-0', 200)], [child]), 'piperonal')!.state).toBe('look'); // from memory
  });

  test('a figure per person is for 60 kg, and so is a threshold of concern: less for a child', () => {
    const perPerson = about(judgeFor([pure('x', '639-99-6', 10)], [child]), 'read per person')!;
    expect(perPerson.amount.value).toBeCloseTo(3, 12);
    expect(perPerson.others![0]!.times).toBeCloseTo((10 * 0.2) / (6 / 5), 12); // 6 mg for 60 kg are 1.2 mg for 12 kg
    const [found] = judge([pure('x', '639-99-6', 4)], { kg: 0.3, others: [child] }).filter(
      ({ check }) => check === 'concern',
    );
    expect(found!.state).toBe('look'); // 1.2 of 1.8 mg for the adult, 0.8 of 0.36 for the child
    expect(found!.others![0]!.times).toBeCloseTo(0.8 / 0.36, 12);
  });

  test('without a number there is nothing to compare', () => {
    const found = judge([oil('basil oil', '8015-73-4', 0.01)], { others: [child] }).find(({ max }) => max === null)!;
    expect(found.others).toEqual([]);
  });

  test('portion and weight of the others must be more than nothing, too', () => {
    expect(() => judgeFor([], [{ ...child, bodyKg: 0 }])).toThrow('above zero');
    expect(() => judgeFor([], [{ ...child, drinkKgPerDay: 0 }])).toThrow('above zero');
  });
});

test('of what needs no number no threshold of concern is asked', () => {
  const asked = (needless: string[]) =>
    checkDrink({
      materials: [pure('citric acid', '77-92-9', 2000), pure('new', '1-1-1', 1)],
      drink: { alcoholic: false, abv: 0, density: gramPerMl(1), traits: [] },
      drinker: { drinkKgPerDay: 0.3, bodyKg: 60 },
      jurisdiction: 'EU',
      rules: { ...rules, needless },
    }).map(({ what }) => what);
  expect(asked([])).toContain('citric acid');
  expect(asked(['77-92-9'])).toEqual(['new']);
});
