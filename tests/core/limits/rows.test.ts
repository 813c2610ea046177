import { describe, expect, test } from 'vitest';
import type { DrinkMaterial } from '../../../src/core/limits/exposure';
import type { Figure, IntakeRow, LimitRow, Trait } from '../../../src/core/limits/figure';
import type { Finding } from '../../../src/core/limits/finding';
import { ceilings } from '../../../src/core/limits/highestDose';
import { checkDrink, type Rules } from '../../../src/core/limits/limits';
import { speaksOf } from '../../../src/core/limits/plant';
import { sharedSubstances, unknownShare } from '../../../src/core/limits/totals';
import { exact } from '../../../src/core/number/measured';
import { gramPerMl, massFraction } from '../../../src/core/number/units';

const read: Figure = { source: 'law', asOf: '2008', level: 'primary' };
const none: Rules = { bans: [], limits: [], intakes: [], concerns: [], cramer: () => null, needless: [] };

const limit = (more: Partial<LimitRow>): LimitRow => ({
  ...read,
  jurisdiction: 'EU',
  what: 'x',
  cas: ['1-1-1'],
  max: 10,
  unit: 'mg/kg',
  effect: 'limit',
  drink: 'any',
  outside: 'silent',
  ...more,
});

const intake = (more: Partial<IntakeRow>): IntakeRow => ({
  ...read,
  body: 'EFSA',
  what: 'x',
  cas: ['1-1-1'],
  max: 1,
  per: 'kg bw',
  ...more,
});

const material = (name: string, mgPerKg: number, more: Partial<DrinkMaterial> = {}): DrinkMaterial => ({
  id: name,
  name,
  cas: ['1-1-1'],
  mgPerKg: exact(mgPerKg),
  constituents: [],
  natural: false,
  ...more,
});

const brings = (cas: string, name: string, share: number) => ({
  cas,
  name,
  share: massFraction(share),
  confirmed: true,
  open: false,
  from: '',
});

function check(
  materials: readonly DrinkMaterial[],
  rules: Partial<Rules>,
  drink: { traits?: Trait[]; bodyKg?: number } = {},
): Finding[] {
  const { traits = [], bodyKg = 60 } = drink;
  return checkDrink({
    materials,
    drink: { alcoholic: true, abv: 20, density: gramPerMl(1), traits },
    drinker: { drinkKgPerDay: 0.3, bodyKg },
    jurisdiction: 'EU',
    rules: { ...none, ...rules },
  });
}

describe('which rows count', () => {
  test('one that is not for a kind of drink gives way there to the one that is', () => {
    const limits = [limit({ whereNot: 'bitter' }), limit({ where: 'bitter', max: 50 })];
    const max = (traits: Trait[]) => check([material('a', 1)], { limits }, { traits }).map((one) => one.max);
    expect(max([])).toEqual([10, null]); // the last one is the threshold of concern, without a class
    expect(max(['bitter'])).toEqual([50, null]);
    expect(max(['mint'])).toEqual([10, null]);
  });

  test('where none does, it is said whether that forbids it or only leaves it open', () => {
    const told = (outside: LimitRow['outside']) => {
      const row = limit({ drink: 'non-alcoholic', outside });
      const [found] = check([material('a', 1)], { limits: [row], needless: ['1-1-1'] });
      return found && [found.state, found.rule];
    };
    expect(told('not allowed')).toEqual(['over', 'not named for this kind of drink: not allowed']);
    expect(told('ask')).toEqual(['check', 'the text does not name this kind of drink']);
    expect(told('silent')).toBeUndefined();
  });
});

describe('an intake', () => {
  const found = (more: Partial<IntakeRow>) => check([material('a', 100)], { intakes: [intake(more)] })[0]!;

  test('has the unit of its figure: per kg of body weight, or per person', () => {
    expect([found({}).unit, found({}).amount.value]).toEqual(['mg/kg bw/day', 0.5]); // 100 × 0.3 / 60
    expect([found({ per: 'person' }).unit, found({ per: 'person' }).amount.value]).toEqual(['mg/day', 30]);
  });

  test('is told with who said it and the note of the row, else with what it is about', () => {
    expect(found({}).rule).toBe('EFSA: x');
    expect(found({ note: 'kept in 2003' }).rule).toBe('EFSA: kept in 2003');
  });

  test('any weight above nothing can be asked for', () => {
    const [light] = check([material('a', 100)], { intakes: [intake({})] }, { bodyKg: 0.5 });
    expect(light!.amount.value).toBe(60);
  });
});

describe('a threshold of concern is asked of', () => {
  const asked = (all: readonly DrinkMaterial[], rules: Partial<Rules> = {}) =>
    check(all, rules).map(({ what, state }) => `${what}: ${state}`);
  const oil = (name: string, constituents: DrinkMaterial['constituents']) =>
    material(name, 1, { cas: [name], natural: true, constituents });

  test('an oil of which nothing is known as a whole, one whose constituents are known by those', () => {
    expect(asked([oil('known', [brings('2-2-2', 'limonene', 0.9)]), oil('dark', [])])).toEqual([
      'limonene: unknown',
      'dark: unknown',
    ]);
  });

  test('a substance itself, also where its certificate names what else is in it', () => {
    expect(asked([material('vanillin', 1, { constituents: [brings('2-2-2', 'guaiacol', 0.01)] })])).toEqual([
      'vanillin: unknown',
      'guaiacol: unknown',
    ]);
  });

  test('a class for which no threshold was given: not known, whatever the class', () => {
    const cramer = () => ({ cramerClass: 'II' as const, figure: read });
    expect(asked([material('a', 1)], { cramer })).toEqual(['a: unknown']);
    const concerns = [{ ...read, cramerClass: 'II' as const, microgramPerPersonDay: 540 }];
    expect(asked([material('a', 1)], { cramer, concerns })).toEqual(['a: within']);
    expect(asked([material('a', 1)], { concerns })).toEqual(['a: unknown']);
  });
});

test('a drink whose fixed part alone is over leaves no dose, not less than none', () => {
  const limits = [limit({ max: 2 })];
  const found = check([material('acid', 3, { fixed: true }), material('a', 1)], { limits, needless: ['1-1-1'] });
  expect(ceilings(found, 10).map(({ times, mgPerKg }) => [times, mgPerKg])).toEqual([[0, 0]]);
});

describe('a Latin name', () => {
  const speaks = (plant: string, botanical: string) => speaksOf({ plants: [plant] }, { botanical });

  test('of a genus alone is no other genus', () => {
    expect(speaks('Aristolochia serpentaria', 'Artemisia')).toBe(false);
    expect(speaks('Aristolochia', 'Artemisia spp.')).toBe(false);
  });

  test('may have a word of two letters; single letters are an author’s', () => {
    expect(speaks('Sesbania io', 'Sesbania ia')).toBe(false);
    expect(speaks('Sesbania io', 'Sesbania io L.')).toBe(true);
  });
});

describe('over several materials', () => {
  test('what two oils bring goes by the name that it has in the one that brings more', () => {
    const [less, more] = [
      material('a', 10, { cas: ['a'], constituents: [brings('9-9-9', 'safrole (lot)', 0.1)] }),
      material('b', 10, { cas: ['b'], constituents: [brings('9-9-9', 'safrole', 0.5)] }),
    ];
    expect(sharedSubstances([less, more]).map(({ name, total }) => [name, total.value])).toEqual([['safrole', 6]]);
  });

  test('nothing is known of a substance without a number; of one with a number something is', () => {
    expect(unknownShare([material('a', 3), material('b', 1, { cas: [] })])).toBe(0.25);
  });
});
