import { beforeEach, describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { labelWarnings } from '../../../src/tables/drinkLabel/labelWarnings';
import { emulsifiers } from '../../../src/tables/emulsion/emulsifiers';
import { weightingAgents } from '../../../src/tables/emulsion/weightingAgents';
import { syrupExtras } from '../../../src/tables/keeping/syrupExtras';
import { acids, preservatives } from '../../../src/tables/syrupAdditives';
import { countedAs } from '../../../src/workshop/drinkLabel/ingredients';
import { limitsEu } from '../../../src/tables/limitsEu';
import { draftOf } from '../../../src/workshop/drinkLabel/draft';
import { heldIn } from '../../../src/workshop/drinkable/judging';
import type { DrinkToLabel, Put } from '../../../src/workshop/drinkLabel/drinkToLabel';
import { nutritionOf } from '../../../src/workshop/drinkLabel/nutrition';

const put = (id: string, gramsPerL: number, more: Partial<Put> = {}): Put => ({
  id,
  name: id,
  gramsPerL,
  source: null,
  own: false,
  acid: 0,
  ...more,
});

/** A lemonade of 100 g/L. */
const lemonade: DrinkToLabel = {
  market: 'EU',
  name: '',
  netMl: null,
  puts: [
    put('sugar', 100),
    put('water', 930),
    put('citric-acid', 2),
    put('m', 1),
    put('sodium-benzoate', 0.18),
    put('potassium-sorbate', 0.33),
  ],
  parts: [],
  held: () => 0,
  sugarPerL: 100,
  abv: 0,
  abvOff: null,
  isAbvUnknown: false,
  densityGPerMl: 1.04,
  volumes: 0,
  bestBefore: '',
  treated: 'none',
  lot: '',
};
const rows = (more: Partial<DrinkToLabel> = {}) => draftOf({ ...lemonade, held: heldIn(more.parts ?? []), ...more });
const said = (what: string, more: Partial<DrinkToLabel> = {}) =>
  rows(more)
    .filter((row) => row.what === what)
    .flatMap(({ words, notes }) => [words, ...notes])
    .join(' | ');
const caffeine = (mgPerL: number) => [
  { id: 'caf', name: 'caffeine', cas: '58-08-2', mgPerKg: exact(mgPerL / lemonade.densityGPerMl) },
];

const material = (id: string, sort: 'substance' | 'natural', botanical?: string) =>
  newRecord('material', { id, name: id, code: id, sort, form: 'liquid', cautions: [], ...(botanical ? { botanical } : {}) } as never); // prettier-ignore
const bottle = (id: string, of: string, allergens?: string[]) =>
  newRecord('bottle', { id, material: of, supplier: '', lot: '', grade: 'fit for drinks', ...(allergens ? { allergens } : {}) } as never); // prettier-ignore

beforeEach(() => {
  shelf.records.value = new Map();
});

describe('ingredients', () => {
  test('go by weight, additives under their category', () => {
    expect(said('Ingredients')).toMatch(
      /^water, sugar, acid: citric acid, flavouring, preservatives: sodium benzoate, potassium sorbate \|/,
    );
    const us = said('Ingredients', { market: 'US' });
    expect(us).toMatch(/potassium sorbate \(preservative\), sodium benzoate \(preservative\) \|/);
  });

  test('gas and what flavours by name are in it; a material of one’s own is known by its CAS number', () => {
    expect(said('Ingredients', { volumes: 3 })).toMatch(/sugar, carbon dioxide, acid/);
    expect(said('Ingredients', { parts: caffeine(100) })).toContain('flavouring (caffeine)');
    takeIn([newRecord('material', { ...material('e', 'substance'), cas: '149-32-6' } as never)]);
    expect(said('Ingredients', { puts: [put('water', 900), put('e', 60, { own: true })] })).toMatch(
      /^water, sweetener: erythritol/,
    );
  });

  test('allergens are set apart, from the bottle up; a bottle that says nothing is not none', () => {
    takeIn([material('almond', 'natural'), bottle('b1', 'almond', ['nuts']), bottle('b2', 'almond')]);
    const from = (id: string) => [...lemonade.puts, put('almond', 20, { own: true, source: shelf.records.value.get(id)! })]; // prettier-ignore
    expect(said('Ingredients', { puts: from('b1') })).toContain('almond (‹nuts›)');
    expect(said('Allergens', { puts: from('b1') })).toBe('set apart in the list: ‹nuts›');
    expect(said('Allergens', { puts: from('b1'), abv: 20 })).toBe('contains ‹nuts›');
    expect(said('Allergens', { puts: from('b2') })).toMatch(/^not known yet: not all of its bottles say/);
    expect(said('Quantities', { puts: from('b1') })).toMatch(/^almond 1.9 %/);
  });
});

test('everything that can be weighed as an additive has its row: what has none would count as flavouring', () => {
  const weighable = [...acids, ...preservatives, ...syrupExtras, ...emulsifiers].map(({ id }) => id);
  const agents = weightingAgents.map(({ cas }) => `agent-${cas[0]}`);
  for (const id of [...weighable, ...agents])
    expect([id, typeof countedAs({ id, own: false })]).toEqual([id, 'object']);
  expect(said('Ingredients')).toContain('citric acid E 330, sodium benzoate E 211, potassium sorbate E 202');
});

describe('nutrition', () => {
  test('is what went in by the factors: 10 g of sugar and 0.2 g of acid in 100 mL', () => {
    const { kJ, kcal, sodium } = nutritionOf(lemonade);
    expect(kJ).toBeCloseTo(10 * 17 + 0.2 * 13, 9);
    expect(kcal).toBeCloseTo(10 * 4 + 0.2 * 3, 9);
    expect(sodium * 2.5).toBeCloseTo(0.018 * (22.99 / 144.1) * 2.5, 9);
    expect(said('In 100 mL')).toMatch(
      /^energy ‹173 kJ \/ 41 kcal›, fat 0 g, of which saturates 0 g, carbohydrate 10 g, of which sugars ‹10 g›, protein 0 g, salt < 0.01 g/,
    );
  });

  test('of a liqueur: 25 % vol and 200 g/L, and the energy alone is enough', () => {
    const liqueur = { abv: 25, sugarPerL: 200, puts: [put('sugar', 200), put('spirit', 230), put('water', 600)] };
    const { kJ, kcal } = nutritionOf({ ...lemonade, ...liqueur });
    expect(kJ).toBeCloseTo(20 * 17 + 25 * 0.78924 * 29, 0);
    expect(kcal).toBeCloseTo(20 * 4 + 25 * 0.78924 * 7, 0);
    expect(said('In 100 mL', liqueur)).toMatch(/^energy ‹912 kJ \/ 218 kcal› \| Not required above 1.2 % vol/);
    expect(said('Ingredients', liqueur)).toContain('Not required above 1.2 % vol');
    expect(said('Alcohol', liqueur)).toMatch(/^‹alc. 25.0 % vol› \| ± 0.3 % vol is allowed/);
    expect(said('Its own law', liqueur)).toMatch(/2019\/787.*It has 211 g\/L of sugar.*a liqueur has at least 100/);
    expect(said('Best before', liqueur)).toMatch(/^none needed from 10 % vol on/);
    expect(said('Its own law', { ...liqueur, abv: 12 })).toMatch(/under 15 % vol it is no spirit drink/);
    expect(said('Its own law', { ...liqueur, sugarPerL: 50 })).toMatch(/It has 52.6 g\/L.*would have at least 100/);
  });

  test('in the US is of a serving: the bottle where it is small, else 12 fl oz', () => {
    expect(said('In 330 mL', { market: 'US', netMl: 330 })).toMatch(/^‹130 Calories›.*total sugars ‹33 g›, includes 33 g added/); // prettier-ignore
    expect(said('In 360 mL', { market: 'US', netMl: 1000 })).toMatch(/^‹150 Calories›/);
    expect(rows({ market: 'US', abv: 25, netMl: 700 }).map(({ what }) => what)).toContain('In 44 mL'); // 1.5 fl oz
    expect(said('Warning', { market: 'US', abv: 0.5 })).toMatch(/GOVERNMENT WARNING/);
    expect(said('Warning', { market: 'US', abv: 0.4 })).toBe('');
  });
});

describe('words a label has to carry', () => {
  test('caffeine: over 150 mg/L, not at it, and not above 1.2 % vol', () => {
    expect(said('Warning', { parts: caffeine(160) })).toMatch(/High caffeine content.*16.0 mg per 100 mL/);
    expect(said('Warning', { parts: caffeine(149.9) })).toBe('');
    expect(said('Warning', { parts: caffeine(160), abv: 5 })).toBe('');
  });

  test('liquorice, by strength; the strong words take the place of the weak', () => {
    const with_ = (mgPerL: number) => [
      { id: 'g', name: 'g', cas: '1405-86-3', mgPerKg: exact(mgPerL / lemonade.densityGPerMl) },
    ];
    expect(said('Warning', { parts: with_(9) })).toBe('');
    expect(said('Warning', { parts: with_(11) })).toBe('‹Contains liquorice›');
    expect(said('Warning', { parts: with_(60) })).toMatch(/^‹Contains liquorice – people suffering/);
    expect(said('Warning', { parts: with_(60), abv: 20 })).toBe('‹Contains liquorice›');
  });

  test('sweeteners, phenylalanine, polyols, colours', () => {
    const sweet = [...lemonade.puts, put('aspartame', 0.2)];
    expect(said('Warning', { puts: sweet })).toMatch(/with sugar and sweetener”.*phenylalanine/);
    takeIn([newRecord('material', { ...material('e', 'substance'), cas: '87-99-0' } as never)]);
    const polyols = (g: number) => [put('water', 800), put('e', g, { own: true })];
    expect(said('Warning', { puts: polyols(120) })).toMatch(/with sweetener”.*laxative/);
    expect(said('Warning', { puts: polyols(90) })).not.toMatch(/laxative/);
    const colour = [{ id: 'c', name: 'c', cas: '1934-21-0', mgPerKg: exact(10) }];
    expect(said('Warning', { parts: colour })).toMatch(/activity and attention in children/);
    expect(said('Warning', { parts: colour, abv: 20 })).toBe('');
  });

  test('begin where the limits say that words are needed', () => {
    const words = limitsEu.filter(({ effect }) => effect === 'label');
    expect(words.length).toBeGreaterThan(0);
    for (const { cas, max, drink, unit } of words) {
      const own = labelWarnings.filter((row) => row.market === 'EU' && row.cas.some((one) => cas.includes(one)));
      const from = own.flatMap((row) => (drink === 'alcoholic' ? (row.strong ?? row.from) : row.from));
      expect([unit, from]).toEqual(['mg/L', expect.arrayContaining([max])]);
    }
  });
});

describe('a flavouring', () => {
  const parts = (...all: [string, number][]) => all.map(([id, mg]) => ({ id, name: id, mgPerKg: exact(mg) }));
  beforeEach(() =>
    takeIn([
      material('lemon oil', 'natural', 'Citrus limon'),
      material('lime oil', 'natural', 'Citrus aurantifolia'),
      material('linalool', 'substance'),
    ]),
  );

  test('is natural of a plant from 95 % of it on', () => {
    expect(said('Flavouring', { parts: parts(['lemon oil', 96], ['lime oil', 4]) })).toMatch(/96 % of it is from Citrus limon: “natural … flavouring”/); // prettier-ignore
    expect(said('Flavouring', { parts: parts(['lemon oil', 90], ['lime oil', 10]) })).toMatch(/under 95 %: .*other natural/); // prettier-ignore
  });

  test('is no natural one with a substance of which no paper says so', () => {
    const both = parts(['lemon oil', 99], ['linalool', 1]);
    expect(said('Flavouring', { parts: both })).toMatch(/^Only “flavouring”: linalool would have/);
    expect(said('Flavouring', { parts: both, market: 'US' })).toMatch(/“artificial flavor”/);
  });
});

test('every line has a source, and what was not read in the law says so', () => {
  for (const market of ['EU', 'US'] as const)
    for (const abv of [0, 5, 25])
      for (const { source, what } of rows({ market, abv })) expect([what, source.length > 10]).toEqual([what, true]);
});
