import { beforeEach, describe, expect, test } from 'vitest';
import type { AnyRecord } from '../../../src/records/kind/kinds';
import type { Run } from '../../../src/records/kind/run';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { today } from '../../../src/workshop/today';
import { canBeMadeAgain, repeatOf } from '../../../src/tasks/shared/repeat';
import { batch } from '../../../src/tasks/batch/task';
import { bottle as addBottle } from '../../../src/tasks/bottle/task';
import { count } from '../../../src/tasks/count/task';
import { dilute } from '../../../src/tasks/dilute/task';
import { layer } from '../../../src/tasks/layer/task';
import { lookup } from '../../../src/tasks/lookup/task';
import { freshRun } from '../../../src/tasks/engine/fold';
import { material, pipette, vialOf } from '../count/countShelf';

const bottle = (id: string, facts: object = {}) => ({
  ...newRecord('bottle', { id, material: 'card', supplier: 'Pebblewick', lot: id, grade: 'fit for drinks' }),
  ...facts,
});
const run = (task: string, kept: readonly AnyRecord[] = []): Run =>
  newRecord('run', { id: 'run', task, kept: kept.map(({ id }) => id), title: '', endedAt: '2025-05-01T10:00:00Z' });
const state = (typed: Record<string, string>) => ({ ...freshRun, typed });
const wish = { bottle: 'A1', strength: '0,5', basis: '% w/v', size: '10', solvent: 'ethanol-96', dropper: 'pip' };

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), bottle('A1'), ...pipette]);
});

describe('making a vial again', () => {
  test('carries the wishes over as they were typed, and nothing that was measured', () => {
    const measured = { 'material.g': '0.086', 'solvent.g': '7.9', 'vial.made': '2025-05-01', overshoot: 'keep' };
    const again = repeatOf(dilute, run('dilute'), state({ ...wish, ...measured }));
    expect(again.typed).toEqual(wish);
    expect(again.differences).toEqual([]);
  });

  test('takes the lot of today where the old one is put away, and says so', () => {
    const old = bottle('A1', { archived: '2026-01-01T00:00:00Z' });
    const fresh = bottle('B7', { supplier: 'Mudlark', density: { gPerMl: 0.925, atC: 20, source: 'test' } });
    takeIn([old, fresh]);
    const { typed, differences } = repeatOf(dilute, run('dilute'), state(wish));
    expect(typed['bottle']).toBe('B7');
    expect(differences).toEqual([
      {
        words: 'CARD neat lot A1 is archived',
        then: 'CARD neat lot A1',
        now: 'CARD neat lot B7 (from Mudlark, density 0.925 g/mL)',
      },
    ]);
  });

  test('takes the code of then, with a letter while a vial of today has it with that strength', () => {
    const then = vialOf('card', 0.01);
    const again = () =>
      repeatOf(dilute, run('dilute', [then]), state({ ...wish, 'vial.code': 'CARD' })).typed['vial.code'];
    expect(again()).toBe('CARD');
    takeIn([then]);
    expect(again()).toBe('CARD'); // told apart by their days
    const fresh: typeof then = { ...then, id: 'card-2', madeOn: today() };
    takeIn([fresh]);
    expect(again()).toBe('CARDB');
  });

  test('takes another bottle of the solvent where the old one is put away', () => {
    const spirit = (id: string, facts: object = {}) => ({
      ...newRecord('supply', {
        id,
        name: 'ethanol',
        sort: 'solvent',
        solvent: 'ethanol-96',
        unit: 'g',
        amount: 800,
        supplier: '',
        lot: id,
        grade: 'fit for drinks',
      }),
      ...facts,
    });
    takeIn([spirit('E-1', { archived: '2026-01-01T00:00:00Z' }), spirit('E-2', { grade: 'smell only' })]);
    const { typed, differences } = repeatOf(dilute, run('dilute'), state({ ...wish, solvent: 'E-1' }));
    expect(typed['solvent']).toBe('E-2');
    expect(differences).toEqual([
      { words: 'ethanol lot E-1 is archived', then: 'ethanol lot E-1', now: 'ethanol lot E-2 (smell only)' },
    ]);
  });

  test('keeps the old lot while it is good, even when a newer one came', () => {
    takeIn([bottle('B7')]);
    expect(repeatOf(dilute, run('dilute'), state(wish)).typed['bottle']).toBe('A1');
  });

  test('does not take a lot of which too little is left, nor one for a drink that is smell only now', () => {
    const made = { ...vialOf('v', 0.01), uses: [{ id: 'A1', massG: 3 }] };
    takeIn([bottle('A1', { amountG: 4 }), bottle('B7', { grade: 'smell only' }), bottle('C3'), made]);
    const again = () => repeatOf(dilute, run('dilute', [made]), state(wish));
    expect(again().typed['bottle']).toBe('C3'); // 1 g is left of A1
    expect(again().differences[0]!.words).toBe('CARD neat lot A1 is down to 1 g, 3 g are needed');
    takeIn([bottle('A1', { amountG: 40, grade: 'smell only' })]);
    expect(again().differences[0]!.words).toBe('CARD neat lot A1 is smell only');
  });

  test('does not take one that is past its day, and says when there is no other', () => {
    const old = bottle('A1', { useBy: '2020-01-01' });
    takeIn([old]);
    const { typed, differences } = repeatOf(dilute, run('dilute'), state(wish));
    expect(typed['bottle']).toBe('A1');
    expect(differences).toEqual([
      {
        words: 'CARD neat lot A1 is past its date (Jan 1, 2020)',
        then: 'CARD neat lot A1',
        now: 'no other is on the Shelf',
      },
    ]);
  });

  test('finds the bottle that was new then', () => {
    const again = repeatOf(dilute, run('dilute', [bottle('A1')]), state({ ...wish, bottle: 'new' }));
    expect(again.typed['bottle']).toBe('A1');
  });

  test('says when a drop was weighed anew since', () => {
    const old = { ...vialOf('v', 0.01), from: ['A1', 'cal'] };
    const later = newRecord('calibration', {
      id: 'cal2',
      dropper: 'pip',
      liquid: { id: 'ethanol-96', name: 'ethanol 96 %' },
      readings: [],
      readabilityG: 0.001,
      mgPerDrop: { value: 14.2, sources: [] },
      spread: 0.05,
    });
    takeIn([old, later]);
    expect(repeatOf(dilute, run('dilute', [old]), state(wish)).differences).toEqual([
      {
        words: 'A drop of ethanol 96 % from Pipette 1 was weighed again',
        then: '15.0 ± 0.6 mg',
        now: '14.2 mg',
      },
    ]);
  });
});

describe('making other things again', () => {
  test('strips: the vials of today stand in for those that are put away, nearest in strength', () => {
    const gone = { ...vialOf('old', 0.01, { material: 'card' }), archived: '2026-01-01T00:00:00Z' };
    takeIn([gone, vialOf('near', 0.011, { material: 'card' }), vialOf('far', 0.1, { material: 'card' })]);
    const { typed, differences } = repeatOf(
      layer,
      run('layer'),
      state({ 'pick.old': 'yes', 'reading.1.words': 'citrus' }),
    );
    expect(typed).toEqual({ 'pick.near': 'yes' });
    expect(differences).toHaveLength(1);
  });

  test('a formula: the version of then, and what to begin with for the later one', () => {
    const version = (id: string, n: number) =>
      newRecord('formula', { id, name: 'Orchard', root: 'f1', version: n, lines: [], notes: '' });
    takeIn([version('f1', 1), version('f2', 2)]);
    const { typed, differences, newer } = repeatOf(count, run('count'), state({ formula: 'f1', most: '60' }));
    expect(typed).toEqual({ formula: 'f1', most: '60' });
    expect(differences).toEqual([]);
    expect(newer).toEqual({
      words: 'Orchard has a later version',
      then: 'version 1',
      now: 'version 2',
      typed: { formula: 'f2', most: '60' },
    });
  });

  test('a bottle: the same material, with its lot left open', () => {
    const typed = {
      'new.name': 'card oil',
      'new.lot': 'A1',
      'new.supplier': 'Pebblewick',
      'new.grade': 'fit for drinks',
    };
    const again = repeatOf(addBottle, run('bottle', [bottle('A1')]), state(typed));
    expect(again.typed).toMatchObject({ 'new.material': 'card', 'new.supplier': 'Pebblewick' });
    expect(again.typed['new.lot']).toBeUndefined();
  });

  test('a batch, a year later: the plan, and the lots of today in place of those that are used up or put away', () => {
    const sure = (value: number) => ({ value, sources: [] });
    const weighed = (id: string, source: string | null) => ({
      into: 'concentrate' as const,
      id,
      name: id,
      source,
      lot: source ?? '',
      plannedG: 1,
      massG: sure(1),
    });
    const made = newRecord('batch', {
      id: 'batch1',
      name: 'Orchard',
      madeOn: '2025-05-01',
      jurisdiction: 'EU',
      notes: '',
      asked: {},
      lines: [],
      formula: { id: 'f1', name: 'Orchard', version: 1 },
      reached: [],
      checks: [],
      from: ['f1', 'A1'],
      weighed: [weighed('card', 'A1'), weighed('sugar', null)],
      drink: { litres: sure(20), brix: sure(10), abv: sure(0), densityGPerMl: sure(1), emulsion: false },
      uses: [{ id: 'A1', massG: 5 }],
    });
    const vial = { ...vialOf('left', 0.05), from: ['batch1', 'A1', 'run'] };
    const typed = { what: 'f1', litres: '20', dose: '50', 'throw.n': '5' };
    const then = state({
      ...typed,
      'spirit.food': 'yes',
      'mass.c.card': '1.02',
      'over.c.card': 'keep',
      name: 'Orchard',
      'lot.card': 'A1',
    });
    takeIn([made, vial, bottle('A1', { amountG: 5 }), bottle('B7', { supplier: 'Mudlark' })]);
    const { typed: again, differences } = repeatOf(batch, run('batch', [made, vial]), then);
    expect(again).toEqual({ ...typed, 'lot.card': 'B7', again: 'batch1', exactly: 'batch1' }); // the spirit is asked about again
    expect(differences).toEqual([
      { words: 'CARD neat lot A1 is empty', then: 'CARD neat lot A1', now: 'CARD neat lot B7 (from Mudlark)' },
    ]);
    expect([canBeMadeAgain(run('batch'), batch), canBeMadeAgain(vial)]).toEqual([true, true]);
  });

  test('a batch from lots that are still there is the same: nothing is different', () => {
    const again = repeatOf(batch, run('batch'), state({ what: 'f1', 'mass.c.card': '1.02' }));
    expect(again).toEqual({ task: 'batch', typed: { what: 'f1' }, differences: [], newer: null });
  });

  test('is not offered for what came out of nothing', () => {
    expect(canBeMadeAgain(bottle('A1'))).toBe(false);
    expect(canBeMadeAgain(bottle('A1', { from: ['card', 'run'] }))).toBe(true);
    expect(canBeMadeAgain(run('lookup'), lookup)).toBe(false);
  });
});
