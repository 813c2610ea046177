import { describe, expect, test } from 'vitest';
import type { DrinkMaterial } from '../../../src/core/limits/exposure';
import type { LimitRow, Trait } from '../../../src/core/limits/figure';
import type { Finding } from '../../../src/core/limits/finding';
import { checkDrink } from '../../../src/core/limits/limits';
import { exact } from '../../../src/core/number/measured';
import { gramPerMl } from '../../../src/core/number/units';
import { limitsEu } from '../../../src/tables/limitsEu';

const SODIUM_BENZOATE = '532-32-1';
const POTASSIUM_SORBATE = '24634-61-5';
/** mg of the salt for a mg of the acid: 144.10/122.12 and 150.22/112.13 g/mol. */
const [BENZOATE, SORBATE] = [144.1 / 122.12, 150.22 / 112.13];

const pure = (cas: string, mgPerKg: number): DrinkMaterial => ({
  id: cas,
  name: cas,
  cas: [cas],
  mgPerKg: exact(mgPerKg),
  constituents: [],
  natural: false,
});

interface Drink {
  readonly abv: number;
  readonly traits?: readonly Trait[];
  readonly density?: number;
}

function limitsOf(materials: readonly DrinkMaterial[], drink: Drink, limits: readonly LimitRow[] = limitsEu) {
  const { abv, traits = [], density = 1 } = drink;
  return checkDrink({
    materials,
    drink: { alcoholic: abv > 1.2, abv, density: gramPerMl(density), traits },
    drinker: { drinkKgPerDay: 0.3, bodyKg: 60 },
    jurisdiction: 'EU',
    rules: { bans: [], limits, intakes: [], concerns: [], cramer: () => null, needless: [] },
  }).filter(({ check }) => check === 'limit');
}

const said = (findings: readonly Finding[]) =>
  Object.fromEntries(
    findings.map(({ what, state, amount, max }) => [what, `${state}: ${amount.value.toFixed(1)} of ${max}`]),
  );

/** A drink with so many mg/kg of benzoic and of sorbic acid, brought in as their salts. */
const preserved = (benzoic: number, sorbic: number, drink: Drink) =>
  said(
    limitsOf(
      [pure(SODIUM_BENZOATE, benzoic * BENZOATE), pure(POTASSIUM_SORBATE, sorbic * SORBATE)].filter(
        ({ mgPerKg }) => mgPerKg.value > 0,
      ),
      drink,
    ),
  );

const [BENZOATES, SORBATES] = ['benzoates, as benzoic acid', 'sorbates, as sorbic acid'];
const TOGETHER = 'benzoates and sorbates together, as the acids';

describe('benzoates and sorbates together in a spirit drink below 15 % vol: 200, 200 and 400 mg/L as the acids', () => {
  test('are added up in the acids, whatever the salt, and are at the maximum at 200 + 200', () => {
    expect(preserved(200, 200, { abv: 8 })).toEqual({
      [BENZOATES]: 'at: 200.0 of 200',
      [SORBATES]: 'at: 200.0 of 200',
      [TOGETHER]: 'at: 400.0 of 400',
    });
  });

  test.each([
    [201, 200, 'over: 401.0 of 400'],
    [160, 240, 'at: 400.0 of 400'],
    [160, 160, 'near: 320.0 of 400'],
    [150, 150, 'check: 300.0 of 400'], // passes, but by the law that the present one replaced
  ])('%s and %s mg/L: %s', (benzoic, sorbic, together) => {
    expect(preserved(benzoic, sorbic, { abv: 8 })[TOGETHER]).toBe(together);
  });

  test('in mg/L of the drink, not per kg of it', () => {
    expect(preserved(200, 200, { abv: 8, density: 1.05 })[TOGETHER]).toBe('over: 420.0 of 400');
  });

  test('one of them alone is judged by its own maximum only', () => {
    expect(preserved(190, 0, { abv: 8 })).toEqual({ [BENZOATES]: 'near: 190.0 of 200' });
    expect(preserved(0, 190, { abv: 8 })).toEqual({ [SORBATES]: 'near: 190.0 of 200' });
  });

  test('from 15 % vol on no such drink is named: each of them asks, the sum says nothing', () => {
    expect(Object.keys(preserved(100, 100, { abv: 14.9 }))).toHaveLength(3);
    expect(preserved(100, 100, { abv: 15 })).toEqual({
      [BENZOATES]: 'check: 100.0 of null',
      [SORBATES]: 'check: 100.0 of null',
    });
  });

  test('without alcohol the law gives two numbers beside each other, 150 and 250, and no sum', () => {
    expect(preserved(150, 250, { abv: 0 })).toEqual({
      [BENZOATES]: 'at: 150.0 of 150',
      [SORBATES]: 'near: 250.0 of 300',
      'sorbates beside benzoates, as sorbic acid': 'at: 250.0 of 250',
    });
    expect(Object.keys(preserved(0, 250, { abv: 0 }))).toEqual([SORBATES]);
  });
});

describe('sulfites are one sum, as sulfur dioxide, from all sources', () => {
  const sulfites = (parts: readonly (readonly [string, number])[], drink: Drink) =>
    said(
      limitsOf(
        parts.map(([cas, mgPerKg]) => pure(cas, mgPerKg)),
        drink,
      ),
    )['sulfites, as sulfur dioxide'];

  test.each([
    [[['7446-09-5', 20]], 'at: 20.0 of 20'],
    [[['16731-55-8', 20]], 'check: 11.5 of 20'], // potassium disulfite, 2 × 64.06 of 222.3
    [[['7681-57-4', 20]], 'check: 13.5 of 20'], // sodium disulfite, 2 × 64.06 of 190.1
    [[['7757-83-7', 40]], 'over: 20.3 of 20'], // sodium sulfite, 64.06 of 126.0
    [[['7631-90-5', 30]], 'near: 18.5 of 20'], // sodium hydrogen sulfite, 64.06 of 104.1
    [[['7773-03-7', 31]], 'near: 16.5 of 20'], // potassium hydrogen sulfite, 64.06 of 120.2
    [[['7446-09-5', 9], ['16731-55-8', 20]], 'over: 20.5 of 20'], // prettier-ignore
  ] as const)('without alcohol %j mg/kg: %s', (parts, words) => {
    expect(sulfites(parts, { abv: 0 })).toBe(words);
  });

  test('cider may hold 200 mg/L; of other alcoholic drinks the text says nothing', () => {
    expect(sulfites([['7446-09-5', 201]], { abv: 5, traits: ['cider'] })).toBe('over: 201.0 of 200');
    expect(sulfites([['7446-09-5', 201]], { abv: 5 })).toBe('check: 201.0 of null');
  });
});

test('a row that sums two groups counts only where something of each is in the drink', () => {
  const row = limitsEu.find(({ what }) => what === TOGETHER)!;
  const other: LimitRow = { ...row, what: 'other', cas: ['50-00-0'] };
  const there = (cas: readonly string[]) =>
    limitsOf(
      cas.map((one) => pure(one, 1)),
      { abv: 8 },
      [row, other],
    ).map(({ what }) => what);
  expect(there(['65-85-0', '110-44-1'])).toEqual([TOGETHER]);
  expect(there(['65-85-0', '532-32-1'])).toEqual([]);
  expect(there(['65-85-0', '110-44-1', '50-00-0'])).toEqual([TOGETHER, 'other']);
  expect(there(['65-85-0', '50-00-0'])).toEqual([]);
});
