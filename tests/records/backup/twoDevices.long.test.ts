import { expect, test } from 'vitest';
import { exact } from '../../../src/core/number/measured';
import { shelf, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { seeded } from '../../core/seeded';
import { vialOf } from '../../tasks/count/countShelf';
import { backupOf, bottle, bring, clock, device, writeOld, type Any, type Device } from './histories';

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

/** One thing that a person does on a device; the marks that were ever made are noted. */
function act(on: Device, chance: (below: number) => number, marks: Set<string>): void {
  const ids = [...on.records.values()].filter(({ kind }) => kind === 'bottle').map(({ id }) => id);
  const id = ids[chance(ids.length)]!;
  const deeds = [
    () => writeOld(on, id, { box: `B${chance(99)}` }),
    () => writeOld(on, id, { weighed: [...(on.records.get(id)!['weighed'] ?? []), weighing(chance(19))] }),
    () => (writeOld(on, id, { grade: 'smell only' }), marks.add(id)),
    () => (writeOld(on, id, { smellOnly: { at: clock.now(), why: 'spilled' } }), marks.add(`${id} why`)),
    () => writeOld(on, id, { grade: 'fit for drinks' }), // no way back by an edit, once another copy knows it
    () => writeOld(on, id, { box: 'same moment' }, '2026-06-01T00:00:00.000Z'),
    () => writeOld(on, `b${clock.minute}`, bottle(`b${clock.minute}`)),
    () =>
      on.records.set(`v${clock.minute}`, {
        ...vialOf(`v${clock.minute++}`, 0.01, { material: 'm' }),
        uses: [{ id, massG: 0.01 }],
      } as never as Any),
  ];
  deeds[chance(deeds.length)]!();
}

test('three devices of the time before counters that change, exchange and restore old files at random lose no mark, no weighing and no mass, and agree in the end', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const random = seeded(seed);
    const chance = (below: number) => Math.floor(random() * below);
    const devices = [1, 2, 3].map(() => device([material, bottle('a'), bottle('b')]));
    const [old, marks] = [[backupOf(devices[0]!)], new Set<string>()];
    for (let i = 0; i < 40; i++) {
      const on = devices[chance(3)]!;
      if (chance(4) > 0) act(on, chance, marks);
      else if (chance(2) > 0) bring(old[chance(old.length)]!, on);
      if (chance(4) === 0) old.push(backupOf(on));
    }
    const isMarked = (on: Device, mark: string) =>
      on.records.get(mark.split(' ')[0]!)![mark.includes(' ') ? 'smellOnly' : 'grade'];
    const onWhich = [...marks].filter((mark) =>
      devices.some(
        (on) => on.records.has(mark.split(' ')[0]!) && isMarked(on, mark) !== 'fit for drinks' && isMarked(on, mark),
      ),
    );
    const weighings = new Set(
      devices.flatMap((on) => kept(on).flatMap(({ weighed = [] }) => weighed.map(({ at }: { at: string }) => at))),
    );
    for (let i = 0; i < 4; i++)
      for (const from of devices) for (const to of devices) if (from !== to) bring(backupOf(from), to);
    for (const from of devices)
      for (const to of devices) {
        expect(bring(backupOf(from), to).changes, `seed ${seed}`).toEqual([]);
        expect(kept(from), `seed ${seed}`).toEqual(kept(to));
      }
    const [one] = devices as [Device];
    for (const file of old) {
      bring(file, one); // it may know of a mark that was taken away before any other device heard of it
      expect(bring(file, one).changes, `seed ${seed}: an old file`).toEqual([]);
    }
    for (const mark of onWhich) expect(isMarked(one, mark), `seed ${seed}: ${mark}`).not.toBe('fit for drinks');
    for (const mark of onWhich) expect(isMarked(one, mark), `seed ${seed}: ${mark}`).toBeTruthy();
    const after = new Set(kept(one).flatMap(({ weighed = [] }) => weighed.map(({ at }: { at: string }) => at)));
    expect([...weighings].filter((at) => !after.has(at))).toEqual([]);
    shelf.records.value = new Map();
    takeIn(kept(one));
    const vials = kept(one).filter(({ id, kind }) => kind === 'vial' && id.startsWith('v'));
    for (const { id, weighed } of kept(one).filter(({ kind }) => kind === 'bottle')) {
      if (weighed) continue;
      const taken = vials.filter(({ uses }) => uses[0].id === id).length;
      expect(leftOf(shelf.records.value.get(id) as never)!.value).toBeCloseTo(20 - 0.01 * taken, 9);
    }
  }
});
