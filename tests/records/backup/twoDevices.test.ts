import { describe, expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import { planReplace } from '../../../src/records/backup/merge';
import { shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { vialOf } from '../../tasks/count/countShelf';
import { apartOf, settled } from '../../../src/records/union/apart';
import { backupOf, bottle, bring, clock, device, put, step, write, type Any, type Device } from './histories';

const material = {
  id: 'm',
  kind: 'material',
  v: 1,
  made: '',
  from: [],
  name: 'cardamom oil',
  code: 'CARD',
} as never as Any;
const kept = (one: Device) => [...one.records.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
const weighing = (left: number) => ({ at: clock.now(), left: exact(left) });

/** Both devices begin with the same things. */
function pair(...records: Any[]): [Device, Device] {
  return [device([material, ...records]), device([material, ...records])];
}

describe('smell only on one of two devices', () => {
  test.each([
    ['a bottle', bottle('b'), { grade: 'smell only' }],
    ['a pack', { ...bottle('b'), kind: 'supply', name: 'ethanol' } as Any, { grade: 'smell only' }],
    [
      'a solvent',
      { ...bottle('b'), kind: 'solvent', grade: undefined, food: true, name: 'spirit' } as Any,
      { food: false },
    ],
    ['a vial', { ...bottle('b'), kind: 'vial', name: 'v' } as Any, { smellOnly: { at: '2026-01-01', why: 'spilled' } }],
    [
      'a batch',
      { ...bottle('b'), kind: 'batch', name: 'v' } as Any,
      { smellOnly: { at: '2026-01-01', why: 'spilled' } },
    ],
  ])('is so on both: %s, changed on the other, however often, and in either order', (_, record, mark) => {
    for (const edits of [0, 1, 12])
      for (const last of [false, true]) {
        const [phone, tablet] = pair(record);
        if (last) for (let i = 0; i < edits; i++) write(phone, 'b', { box: `C${i}` });
        write(tablet, 'b', mark);
        if (!last) for (let i = 0; i < edits; i++) write(phone, 'b', { box: `C${i}` });
        const [there, here] = [backupOf(tablet), backupOf(phone)];
        expect(bring(there, phone).stricter).toHaveLength(1);
        bring(here, tablet);
        for (const one of [phone, tablet])
          for (const version of kept(one).filter(({ id }) => id !== 'm')) expect(version).toMatchObject(mark);
        expect(kept(phone)).toEqual(kept(tablet));
      }
  });

  test('stays so where what is here is newer, and where the file is', () => {
    const marked = bottle('b', { grade: 'smell only' });
    for (const isHere of [false, true]) {
      const [phone, tablet] = pair(marked);
      write(phone, 'b', { grade: 'fit for drinks' });
      if (isHere) bring(backupOf(tablet), phone);
      else bring(backupOf(phone), tablet);
      expect((isHere ? phone : tablet).records.get('b')).toMatchObject({ grade: 'smell only' });
    }
  });

  test('stays so where a file takes the place of what is here', () => {
    const [phone, tablet] = pair(bottle('b'));
    write(phone, 'b', { grade: 'smell only' });
    const plan = planReplace(backupOf(tablet), phone.records);
    expect(plan.changes).toContainEqual({ record: expect.objectContaining({ id: 'b', grade: 'smell only' }) });
    expect(plan.stricter).toEqual(['bottle cardamom oil, lot L-b']);
  });

  test('is kept with the earlier of two reasons', () => {
    const [phone, tablet] = pair({ ...bottle('b'), kind: 'vial', name: 'v' } as Any);
    write(phone, 'b', { smellOnly: { at: '2026-02-02', why: 'later' } });
    write(tablet, 'b', { smellOnly: { at: '2026-02-01', why: 'first' } });
    const there = backupOf(tablet);
    bring(backupOf(phone), tablet);
    bring(there, phone);
    expect(kept(phone)).toEqual(kept(tablet));
    expect(phone.records.get('b')!['smellOnly']).toEqual({
      at: '2026-02-01',
      why: 'first',
      by: expect.stringContaining(tablet.id),
    });
  });
});

describe('a record that was changed on both devices', () => {
  test('is one record with both values, until one is chosen, on both', () => {
    const [phone, tablet] = pair(bottle('b'));
    write(tablet, 'b', { box: 'T', row: '4' });
    write(phone, 'b', { box: 'P', supplier: 'Saltmarsh' });
    const there = backupOf(tablet);
    expect(bring(there, phone)).toMatchObject({ both: 1, conflicts: ['bottle cardamom oil, lot L-b'] });
    for (let i = 0; i < 4; i++) expect(bring(there, phone)).toMatchObject({ both: 0, conflicts: [], changes: [] });
    bring(backupOf(phone), tablet);
    expect(kept(tablet)).toEqual(kept(phone));
    const record = phone.records.get('b')!;
    expect(record).toMatchObject({ box: 'P', row: '4', supplier: 'Saltmarsh' });
    expect(apartOf(record)).toMatchObject([
      {
        key: 'box',
        sides: [
          { value: 'P', device: phone.id },
          { value: 'T', device: tablet.id },
        ],
      },
    ]);
    write(phone, 'b', { row: '5' }); // another edit settles nothing
    expect(apartOf(phone.records.get('b')!)).toHaveLength(1);
    put(phone, settled(phone.records.get('b')!, [{ key: 'box', value: 'T' }]));
    expect(bring(backupOf(phone), tablet)).toMatchObject({ conflicts: [] });
    bring(there, tablet);
    for (const one of [phone, tablet]) {
      expect(apartOf(one.records.get('b')!)).toEqual([]);
      expect(one.records.get('b')).toMatchObject({ box: 'T', row: '5' });
    }
    expect(kept(tablet)).toEqual(kept(phone));
  });

  test('has all weighings of both, and is one bottle where nothing else was changed', () => {
    const [phone, tablet] = pair(bottle('b'));
    write(phone, 'b', { weighed: [weighing(7)], emptyG: 12.5 });
    write(tablet, 'b', { weighed: [weighing(6)] });
    bring(backupOf(tablet), phone);
    bring(backupOf(phone), tablet);
    expect(kept(phone)).toEqual(kept(tablet));
    expect(kept(phone)).toHaveLength(2);
    expect(phone.records.get('b')!['weighed'].map((one: any) => one.left.value)).toEqual([7, 6]);
  });

  test('takes nothing out of its bottle twice', () => {
    const vial = { ...vialOf('v', 0.01, { material: 'm' }), uses: [{ id: 'b', massG: 0.5 }], written: '2025-06-01' };
    const [phone, tablet] = pair(bottle('b'), vial as never as Any);
    write(tablet, 'v', { row: '9' });
    write(phone, 'v', { box: 'Z' });
    const there = backupOf(tablet);
    for (let i = 0; i < 4; i++) {
      bring(there, phone);
      shelf.records.value = new Map();
      takeIn([...phone.records.values()]);
      expect(leftOf(phone.records.get('b') as never)!.value).toBe(19.5);
    }
    expect(kept(phone).filter(({ kind }) => kind === 'vial')).toHaveLength(1);
  });
});

describe('a run that was carried to the second device', () => {
  const runs = (on: Device) => kept(on).filter(({ kind }) => kind === 'run');
  const story = (on: Device) =>
    runs(on)
      .map(({ id }) =>
        on.events
          .filter((event) => event.run === id)
          .sort((a, b) => a.seq - b.seq)
          .map(({ key }) => key)
          .join(' '),
      )
      .sort();
  const run = { kind: 'run', v: 1, made: '', from: [], task: 'count', open: 1, kept: [], title: 'Count drops' };

  test('and goes on there as well is two runs, after any number of exchanges', () => {
    const [phone, tablet] = pair();
    put(phone, { ...run, id: 'r' } as never as Any);
    step(phone, 'r', 'together');
    bring(backupOf(phone), tablet);
    step(phone, 'r', 'phone');
    let theirs = step(tablet, 'r', 'tablet');
    for (let i = 0; i < 6; i++) {
      bring(backupOf(tablet), phone);
      bring(backupOf(phone), tablet);
      expect(step(phone, 'r', `p${i}`)).toBe('r'); // and each goes on with its own
      theirs = step(tablet, theirs, `t${i}`);
    }
    bring(backupOf(tablet), phone);
    bring(backupOf(phone), tablet);
    for (const one of [phone, tablet]) {
      expect(runs(one).filter(({ open }) => open)).toHaveLength(2);
      expect(story(one)).toEqual(['together phone p0 p1 p2 p3 p4 p5', 'together tablet t0 t1 t2 t3 t4 t5']);
    }
    expect(bring(backupOf(tablet), phone).changes).toEqual([]);
  });

  test('and only there goes on is paused once, and ends on both', () => {
    const [phone, tablet] = pair();
    put(phone, { ...run, id: 'r' } as never as Any);
    step(phone, 'r', 'together');
    bring(backupOf(phone), tablet);
    const theirs = step(tablet, 'r', 'tablet');
    bring(backupOf(tablet), phone);
    for (const one of [phone, tablet]) expect(runs(one).flatMap(({ id, open }) => (open ? id : []))).toEqual([theirs]);
    const { open, ...ended } = tablet.records.get(theirs)!;
    put(tablet, { ...ended, endedAt: clock.now() } as never as Any);
    bring(backupOf(tablet), phone);
    for (const one of [phone, tablet]) expect(runs(one).filter(({ open }) => open)).toEqual([]);
    expect(runs(phone)).toEqual(runs(tablet));
  });

  test('from before steps said whose they are is parted once, the same way on both', () => {
    const [phone, tablet] = pair({ ...run, id: 'r' } as never as Any);
    for (const one of [phone, tablet]) {
      one.events.push({ run: 'r', seq: 0, at: '', type: 'drop', key: 'together' });
      step(one, 'r', one === phone ? 'phone' : 'tablet');
    }
    for (let i = 0; i < 3; i++) {
      bring(backupOf(tablet), phone);
      bring(backupOf(phone), tablet);
      for (const one of [phone, tablet]) {
        const own = runs(one).find(({ id }) => one.events.findLast((event) => event.run === id)?.who === one.id)!;
        step(one, own.id, 'on');
      }
    }
    bring(backupOf(tablet), phone);
    bring(backupOf(phone), tablet);
    expect(story(phone)).toEqual(['together phone on on on', 'together tablet on on on']);
    expect(story(tablet)).toEqual(story(phone));
    expect(runs(tablet)).toEqual(runs(phone));
  });
});
