import { describe, expect, test } from 'vitest';
import type { DrinkMaterial } from '../../../src/core/limits/exposure';
import { sharedSubstances, unknownShare } from '../../../src/core/limits/totals';
import { exact } from '../../../src/core/number/measured';
import { massFraction } from '../../../src/core/number/units';

const LIMONENE = '5989-27-5';

function oil(name: string, mgPerKg: number, limonene: number | null): DrinkMaterial {
  const part = (share: number) => ({
    cas: LIMONENE,
    name: 'limonene',
    share: massFraction(share),
    confirmed: true,
    open: false,
    from: 'x',
  });
  const constituents = limonene === null ? [] : [part(limonene)];
  return { id: name, name, cas: [`cas of ${name}`], mgPerKg: exact(mgPerKg), constituents, natural: true };
}
const neat = (name: string, cas: string[], mgPerKg: number): DrinkMaterial => {
  return { id: name, name, cas, mgPerKg: exact(mgPerKg), constituents: [], natural: false };
};

describe('the same substance from several materials', () => {
  test('neat and from two oils is one sum, most first, by the name of the neat one', () => {
    const found = sharedSubstances([
      oil('orange oil', 20, 0.9),
      neat('d-limonene', [LIMONENE], 3),
      oil('lemon oil', 10, 0.5),
    ]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ cas: LIMONENE, name: 'd-limonene' });
    expect(found[0]!.total.value).toBeCloseTo(26, 12);
    expect(sharedSubstances([oil('a', 0.5, 0.9), oil('b', 0.5, 0.9)])).toHaveLength(1);
    expect(found[0]!.from.map(({ material }) => material)).toEqual(['orange oil', 'lemon oil', 'd-limonene']);
  });

  test('from two oils alone it has the name of the constituent; the larger sum comes first', () => {
    const found = sharedSubstances([
      oil('orange oil', 1, 0.9),
      oil('lemon oil', 1, 0.5),
      neat('vanillin', ['121-33-5'], 4),
      neat('vanilla of the base', ['121-33-5'], 5),
    ]);
    expect(found.map(({ name }) => name)).toEqual(['vanilla of the base', 'limonene']);
  });

  test('from one material only, or nothing of it, it is not shared', () => {
    expect(sharedSubstances([oil('orange oil', 20, 0.9), neat('vanillin', ['121-33-5'], 5)])).toEqual([]);
    expect(sharedSubstances([oil('orange oil', 20, 0.9), neat('d-limonene', [LIMONENE], 0)])).toEqual([]);
  });
});

describe('what is not known', () => {
  test('of an oil it is what its known constituents leave, of a substance without a number all', () => {
    const dosed = [oil('orange oil', 20, 0.9), neat('vanillin', ['121-33-5'], 10), neat('house blend', [], 10)];
    expect(unknownShare(dosed)).toBeCloseTo((2 + 0 + 10) / 40, 12);
    expect(unknownShare([oil('rhubarb', 5, null)])).toBe(1);
  });

  test('contents at their worst may be more than the whole; of nothing, nothing is unknown', () => {
    const worst = {
      ...oil('odd oil', 5, 0.9),
      constituents: [...oil('a', 1, 0.9).constituents, ...oil('b', 1, 0.4).constituents],
    };
    expect(unknownShare([worst])).toBe(0);
    expect(unknownShare([])).toBe(0);
  });
});
