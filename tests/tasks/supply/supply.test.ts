import { beforeEach, describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import { readRecord } from '../../../src/records/kind/record';
import { shelf, takeIn } from '../../../src/records/shelf';
import type { Supply } from '../../../src/records/kind/supply';
import { firstOpen, slotsOf } from '../../../src/tasks/engine/card';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { supply } from '../../../src/tasks/supply/task';
import { startWalking } from '../walking';

beforeEach(() => void (shelf.records.value = new Map()));

function added(typed: Record<string, string>): Supply[] {
  const walk = startWalking(supply, typed);
  expect(Object.values(problemsOf(walk.step(), walk.state()))).toEqual([]);
  expect(walk.step().problem).toBeUndefined();
  const kept = walk.keep() as Supply[];
  for (const one of kept) expect(readRecord(kinds.supply, one).ok).toBe(true);
  return kept;
}

const openOf = (typed: Record<string, string>) => {
  const walk = startWalking(supply, typed);
  return firstOpen(slotsOf(walk.state(), walk.step()));
};

describe('supplies', () => {
  test('several at once, each a record of its own, in the usual packs; of a solvent in the grams that they weigh', () => {
    const kept = added({
      'came.ethanol-96': 'yes',
      'grade.ethanol-96': 'fit for drinks',
      'came.propylene-glycol': 'yes',
      'grade.propylene-glycol': 'smell only',
      'came.strips': 'yes',
      supplier: 'Pebblewick',
    });
    expect(kept).toMatchObject([
      { name: 'ethanol 96 % vol', solvent: 'ethanol-96', unit: 'g', grade: 'fit for drinks', supplier: 'Pebblewick' },
      { name: 'propylene glycol', solvent: 'propylene-glycol', unit: 'g', grade: 'smell only' },
      { name: 'paper strips', sort: 'strips', unit: 'pieces', amount: 100 },
    ]);
    expect(kept.map(({ amount }) => amount)).toEqual([807.42, 518.05, 100]);
  });

  test('take an amount in g as it is, and a lot each', () => {
    const came = { 'came.ethanol-96': 'yes', 'grade.ethanol-96': 'fit for drinks' };
    const [spirit] = added({ ...came, 'unit.ethanol-96': 'g', 'size.ethanol-96': '800', 'lot.ethanol-96': 'E-1' });
    expect(spirit).toMatchObject({ amount: 800, lot: 'E-1' });
  });

  test('of which no food grade is sold are smell only, and no one is asked', () => {
    const typed = { 'came.isopropanol-99': 'yes', 'grade.isopropanol-99': 'fit for drinks' };
    expect(openOf(typed)).toBeUndefined();
    expect(added(typed)[0]!.grade).toBe('smell only');
  });

  test('are not kept before the label of each solvent was read; one does not answer for another', () => {
    const both = { 'came.ethanol-96': 'yes', 'came.mct': 'yes' };
    expect(openOf(both)).toMatchObject({ value: '', asks: 'Say the grade of ethanol 96 % vol' });
    const one = { ...both, 'grade.ethanol-96': 'fit for drinks' };
    expect(openOf(one)!.asks).toMatch(/^Say the grade of MCT/);
    expect(startWalking(supply, one).step().problem).toMatch(/MCT/);
  });

  test('can be taken off the list again, and are as the last ones were bought', () => {
    const came = { 'came.vials': 'yes', supplier: 'Gannet Row', box: 'drawer' };
    expect(() => startWalking(supply, { ...came, 'came.vials': 'no' }).keep()).toThrow('Something is still missing');
    takeIn(added(came));
    expect(added({ 'came.strips': 'yes' })[0]).toMatchObject({ supplier: 'Gannet Row', box: 'drawer' });
  });

  test('in pieces are counted in whole ones', () => {
    const half = { 'came.strips': 'yes', 'size.strips': '1,5' };
    expect(openOf(half)!.wrong).toMatch('whole pieces only');
    expect(openOf({ 'came.other': 'yes' })!.text).toBe('its name');
    expect(added({ 'came.other': 'yes', 'name.other': 'funnels', 'size.other': '3' })[0]).toMatchObject({
      name: 'funnels',
      sort: 'other',
      amount: 3,
    });
  });

  test('cannot be kept before it is known what came', () => {
    expect(startWalking(supply).step().problem).toBe('Tap what came.');
    expect(() => startWalking(supply).keep()).toThrow('Something is still missing');
  });
});

describe('a run of the first version', () => {
  test('opens with what was typed, its solvent in g', () => {
    takeIn(added({ 'came.strips': 'yes', supplier: 'Gannet Row' }));
    const typed = {
      sort: 'solvent',
      solvent: 'ethanol-96',
      grade: 'fit for drinks',
      grams: '807',
      lot: 'E-1',
      name: 'spirit',
    };
    expect(added(typed)).toMatchObject([
      {
        name: 'spirit',
        solvent: 'ethanol-96',
        unit: 'g',
        amount: 807,
        lot: 'E-1',
        grade: 'fit for drinks',
        supplier: '',
      },
    ]);
    expect(openOf({ sort: 'solvent', solvent: 'ethanol-96', grams: '807' })!.field.name).toBe('grade.ethanol-96');
    const denatured = startWalking(supply, { ...typed, name: 'Alcohol denat.' });
    const never = 'Denatured alcohol is never fit for drinks: smell only.';
    expect(Object.values(problemsOf(denatured.step(), denatured.state()))).toEqual([never]);
    expect((denatured.keep()[0] as Supply).grade).toBe('smell only');
    expect(added({ sort: 'strips', pieces: '50', useBy: '2027-01-01' })).toMatchObject([
      { name: 'paper strips', amount: 50, useBy: '2027-01-01' },
    ]);
  });
});
