import { beforeEach, describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import { shelf } from '../../../src/records/shelf';
import type { Supply } from '../../../src/records/kind/supply';
import { supply } from '../../../src/tasks/supply/task';
import { startWalking } from '../walking';

beforeEach(() => void (shelf.records.value = new Map()));

function added(typed: Record<string, string>): Supply {
  const walk = startWalking(supply, typed);
  while (walk.step().key !== 'label') walk.next();
  const kept = walk.keep()[0] as Supply;
  expect(readRecord(kinds.supply, kept).ok).toBe(true);
  return kept;
}

describe('a supply', () => {
  test('of a solvent takes its name from it and is counted in grams', () => {
    const typed = { sort: 'solvent', solvent: 'ethanol-96', grade: 'fit for drinks', grams: '807', lot: 'E-1' };
    expect(added(typed)).toMatchObject({
      name: 'ethanol 96 % vol',
      solvent: 'ethanol-96',
      unit: 'g',
      amount: 807,
      lot: 'E-1',
      grade: 'fit for drinks',
    });
  });

  test('of a solvent that no food grade is sold of is smell only, whatever was answered before', () => {
    const typed = { sort: 'solvent', solvent: 'isopropanol-99', grade: 'fit for drinks', grams: '786' };
    expect(added(typed).grade).toBe('smell only');
  });

  test('that is called by the name of what is never fit for drinks is not kept as food grade', () => {
    const typed = { sort: 'solvent', solvent: 'ethanol-96', 'grade.ethanol-96': 'fit for drinks', grams: '807' };
    const walk = startWalking(supply, { ...typed, name: 'Alcohol denat.' });
    while (walk.step().key !== 'label') walk.next();
    expect(walk.step().problem).toBe('Denatured alcohol is never fit for drinks: smell only.');
    expect((walk.keep()[0] as Supply).grade).toBe('smell only');
    expect(added({ ...typed, 'grade.ethanol-96': 'smell only', name: 'Alcohol denat.' }).grade).toBe('smell only');
    expect(added(typed).grade).toBe('fit for drinks');
  });

  test('of a solvent is not kept before its label was read', () => {
    expect(() => added({ sort: 'solvent', solvent: 'ethanol-96', grams: '807' })).toThrow('choose one');
  });

  test('of strips is counted in whole pieces', () => {
    expect(added({ sort: 'strips', pieces: '100' })).toMatchObject({
      name: 'paper strips',
      unit: 'pieces',
      amount: 100,
    });
    const half = startWalking(supply, { sort: 'strips', pieces: '1,5' });
    half.next();
    expect(() => half.next()).toThrow('whole pieces only');
  });

  test('cannot be kept before it is known what and how much', () => {
    expect(() => startWalking(supply, { sort: 'strips' }).keep()).toThrow('Something is still missing');
  });
});
