import { beforeEach, describe, expect, test } from 'vitest';
import { measured } from '../../src/core/number/measured';
import { ancestors, descendants, lotsBeside, parentsOf } from '../../src/records/lineage';
import { sharingLots } from '../../src/records/recall';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { pipette, vialOf } from '../tasks/count/countShelf';

const material = newRecord('material', {
  id: 'm',
  name: 'cardamom oil',
  code: 'CARD',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});
const bottle = (id: string) =>
  newRecord('bottle', { id, from: ['m'], material: 'm', supplier: 'made up', lot: id, grade: 'fit for drinks' });
const vial = (id: string, from: string, calibration = '') => ({
  ...vialOf(id, 0.01),
  from: [from, `run-${id}`],
  uses: [{ id: from, massG: 0.1 }],
  massG: measured(10, 0.1, { id: `calibration:${calibration}:repeatability`, words: '' }),
});
const tasting = newRecord('tasting', {
  id: 't',
  from: ['second'],
  base: { name: 'tonic', volumeMl: 100, brix: 8, abv: 0, densityGPerMl: 1.03 },
  doses: [{ vial: 'second', code: 'X', drops: 3, massG: measured(0.05, 0, { id: '', words: '' }) }],
  reached: [],
  verdict: '',
  liking: null,
  uses: [{ id: 'second', massG: 0.05 }],
});
const names = (relatives: readonly { record: { id: string }; steps: number }[]) =>
  relatives.map(({ record, steps }) => `${record.id} ${steps}`);

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material, bottle('lot1'), bottle('lot2'), ...pipette]);
  takeIn([
    vial('first', 'lot1', 'cal'),
    vial('second', 'first'),
    vial('other', 'lot1'),
    vial('apart', 'lot2'),
    tasting,
  ]);
});

describe('the lineage of a record', () => {
  test('goes back from a drink to the lot, and to the calibration that its doubt rests on', () => {
    expect(names(ancestors('t'))).toEqual(['second 1', 'first 2', 'lot1 3', 'cal 3', 'm 4', 'pip 4']);
  });

  test('goes forward from a lot to all that was made of it', () => {
    expect(names(descendants('lot1'))).toEqual(['first 1', 'other 1', 'second 2', 't 3']);
  });

  test('leaves runs out: they are how, not what of', () => {
    takeIn([newRecord('run', { id: 'run-first', task: 'dilute', kept: [], title: '' })]);
    expect(parentsOf('first')).toEqual(['lot1', 'cal']);
  });

  test('tells what else used this lot', () => {
    expect(sharingLots('t').map((one) => [one.lot.id, one.others.map(({ record }) => record.id)])).toEqual([
      ['lot1', ['other']],
    ]);
    expect(sharingLots('apart')).toEqual([]);
  });

  test('tells which others were thinned from the same bottle of solvent', () => {
    const spirit = newRecord('supply', {
      id: 'spirit',
      name: 'ethanol',
      sort: 'solvent',
      solvent: 'ethanol-96',
      unit: 'g',
      amount: 800,
      supplier: 'made up',
      lot: 'E-1',
    });
    const thinned = (id: string, from: string) => {
      const made = vial(id, from);
      return { ...made, uses: [...made.uses, { id: 'spirit', massG: 8 }] };
    };
    takeIn([spirit, thinned('first', 'lot1'), thinned('apart', 'lot2')]);
    expect(names(ancestors('t'))).toContain('spirit 3');
    expect(sharingLots('t').map((one) => [one.lot.id, one.others.map(({ record }) => record.id)])).toEqual([
      ['lot1', ['other']],
      ['spirit', ['apart']],
    ]);
  });

  test('puts side by side the bottles of a material, and those of a solvent', () => {
    const spirit = (id: string, solvent = 'ethanol-96') =>
      newRecord('supply', {
        id,
        name: 'ethanol',
        sort: 'solvent',
        solvent,
        unit: 'g',
        amount: 800,
        supplier: '',
        lot: id,
      });
    const strips = newRecord('supply', {
      id: 'strips',
      name: 'strips',
      sort: 'strips',
      unit: 'pieces',
      amount: 100,
      supplier: '',
      lot: '',
    });
    takeIn([spirit('E-1'), spirit('E-2'), spirit('T-1', 'triacetin'), strips]);
    const ids = (record: Parameters<typeof lotsBeside>[0]) => lotsBeside(record).map(({ id }) => id);
    expect(ids(bottle('lot1'))).toEqual(['lot2', 'lot1']);
    expect(ids(material)).toEqual(['lot2', 'lot1']);
    expect(ids(spirit('E-1'))).toEqual(['E-2', 'E-1']);
    expect(ids(strips)).toEqual([]);
    expect(ids(tasting)).toEqual([]);
  });

  test('of an archived thing is still told', () => {
    const gone = { ...bottle('lot1'), archived: '2026-05-01' };
    takeIn([gone]);
    expect(names(ancestors('other'))).toContain('lot1 1');
  });

  test('that runs in a circle, as in a damaged backup, ends all the same', () => {
    const circle = { ...vial('first', 'second'), uses: [{ id: 'second', massG: 1 }] };
    takeIn([circle]);
    expect(ancestors('first').length).toBeLessThan(6);
    expect(descendants('first').length).toBeLessThan(6);
  });
});
