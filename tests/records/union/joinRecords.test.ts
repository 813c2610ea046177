import { describe, expect, test } from 'vitest';
import { goneOf, type Stored } from '../../../src/records/kind/record';
import { apartOf, settled } from '../../../src/records/union/apart';
import { joinRecords } from '../../../src/records/union/joinRecords';
import { inOrder } from '../../../src/records/union/json';
import { stamped } from '../../../src/records/union/stamp';
import { seeded } from '../../core/seeded';
import { bottle, type Any } from '../backup/histories';

const run = {
  id: 'x',
  kind: 'run',
  v: 1,
  made: '2026-01-01',
  from: [],
  task: 'count',
  open: 1,
  kept: [],
  title: 'Count',
} as Any;
const batch = { id: 'x', kind: 'batch', v: 1, made: '2026-01-01', from: [], name: 'Tide', uses: [] } as never as Any;

/** Versions of one record as devices may hold them: edited under counters or before them, joined in part, erased. */
function versions(seed: number): Stored[] {
  const random = seeded(seed);
  const chance = (below: number) => Math.floor(random() * below);
  const first = [{ ...bottle('x'), id: 'x' }, run, batch][seed % 3]!;
  const held: Any[] = Array.from({ length: 3 }, () => (seed % 2 ? first : stamped<Any>(first, undefined, 'd0:1')));
  const counters = [10, 10, 10];
  for (let i = 0; i < 14; i++) {
    const at = chance(3);
    const [now, dot] = [held[at]!, `d${at}:${(counters[at]! += 1 + chance(100))}`];
    const isOld = !('by' in now || 'edits' in now); // a Minim of before counters has not seen it since
    const stamps = [...(now['earlier'] ?? []), now['written'] ?? now['made']];
    const old = { ...now, written: `2026-01-${10 + i}`, earlier: stamps, box: `old ${i}` } as Any;
    const next = [
      () => stamped<Any>({ ...now, box: `B${chance(3)}` } as Any, now, dot),
      () => stamped<Any>({ ...now, title: `T${chance(3)}` } as Any, now, dot),
      () =>
        stamped<Any>(
          { ...now, weighed: [...(now['weighed'] ?? []), { at: `2026-01-0${1 + chance(9)}` }] } as Any,
          now,
          dot,
        ),
      () => stamped<Any>({ ...now, since: [...(now['since'] ?? []), { id: `s${i}`, at: '' }] } as Any, now, dot),
      () => stamped<Any>({ ...now, smellOnly: { at: '2026-01-02', why: `w${i}` } } as Any, now, dot),
      () => stamped<Any>({ ...now, goesOn: { run: `r${i}`, steps: chance(4) } } as Any, now, dot),
      () => (isOld ? old : now),
      () => ({ ...now, grade: chance(2) ? 'smell only' : 'fit for drinks' }) as Any,
    ][chance(8)]!;
    held[at] = chance(3) === 0 ? (joinRecords(now, held[chance(3)]!) as Any) : next();
  }
  return seed % 29 === 0 ? [...held, goneOf('x')] : held;
}

const join = (...all: Stored[]) => inOrder(all.reduce(joinRecords));

describe('two versions of a record', () => {
  test('come to the same in any order, in any company, and however often', () => {
    for (let seed = 1; seed <= 600; seed++) {
      const held = versions(seed);
      const [a, b, c] = held.slice(-3) as [Stored, Stored, Stored];
      expect(join(a, b), `seed ${seed}`).toBe(join(b, a));
      expect(inOrder(joinRecords(joinRecords(a, b), c)), `seed ${seed}`).toBe(
        inOrder(joinRecords(a, joinRecords(b, c))),
      );
      expect(join(a, b, a, b, b), `seed ${seed}`).toBe(join(a, b));
      expect(join(a, b, c), `seed ${seed}`).toBe(join(c, a, b));
    }
  });

  test('of which a file has damaged what it tells of its writes are joined all the same, and alike on both sides', () => {
    const damages: object[] = [
      { seen: { d1: 'nine', d2: 5 } },
      { apart: { box: [['d9:3'], 7, [[null], 2]], id: [[['d1:2'], 'y']] } },
      { by: 7, edits: { box: [], kind: 'd1:99', row: 5 } },
      { by: 'd1:1e400', seen: { d1: 1e300, d2: -4 }, earlier: 'never' },
    ];
    for (const [i, damage] of damages.entries())
      for (let seed = 1; seed <= 40; seed++) {
        const [a, b] = versions(seed) as [Any, Any];
        const damaged = { ...a, ...damage } as Stored;
        expect(join(damaged, b), `damage ${i}, seed ${seed}`).toBe(join(b, damaged));
        expect(joinRecords(damaged, b)).toMatchObject({ id: 'x' });
      }
  });

  test('of which one came out of the other are the later one, and nothing is asked', () => {
    const first = stamped<Any>(bottle('x'), undefined, 'phone:5');
    const later = stamped<Any>({ ...first, box: 'B1' } as Any, first, 'tablet:6');
    const last = stamped<Any>({ ...later, box: 'B2' } as Any, later, 'phone:7');
    expect(joinRecords(first, last)).toEqual(last);
    expect(joinRecords(last, later)).toEqual(last);
    expect(apartOf(joinRecords(last, later))).toEqual([]);
  });

  test('never number a write below one that the record has of its device, whatever its clock says', () => {
    const first = stamped<Any>(bottle('x'), undefined, 'phone:500');
    const later = stamped<Any>({ ...first, box: 'B1' } as Any, first, 'phone:5');
    expect(joinRecords(first, later)).toEqual(later);
    expect(later).toMatchObject({ box: 'B1', edits: { box: 'phone:501' } });
  });

  test('that gave one field the same value are settled by themselves', () => {
    const first = stamped<Any>(bottle('x'), undefined, 'phone:5');
    const [here, there] = ['phone:8', 'tablet:9'].map((dot) =>
      stamped<Any>({ ...first, box: 'B1' } as Any, first, dot),
    );
    const both = joinRecords(here!, there!) as Any;
    expect([both['box'], apartOf(both)]).toEqual(['B1', []]);
  });

  test('of which one took a value out keep both until it is settled, with nothing or with the value', () => {
    const first = stamped<Any>(bottle('x', { box: 'B1' }), undefined, 'phone:5');
    const { box, ...without } = first;
    const here = stamped<Any>(without as Any, first, 'phone:6');
    const there = stamped<Any>({ ...first, box: 'B2' } as Any, first, 'tablet:7');
    const both = joinRecords(here, there) as Any;
    expect(apartOf(both)).toMatchObject([
      { key: 'box', sides: [{ value: 'B2' }, { value: undefined, device: 'phone' }] },
    ]);
    const empty = stamped<Any>(settled(both, [{ key: 'box', value: undefined }]), both, 'phone:8');
    expect('box' in empty).toBe(false);
    expect(joinRecords(empty, both)).toEqual(empty);
    expect(joinRecords(there, empty)).toEqual(empty);
  });

  test('leave a field that was chosen from both alone when another one is changed', () => {
    const first = stamped<Any>(bottle('x'), undefined, 'phone:5');
    const [here, there] = (
      [
        ['P', 'phone:6'],
        ['T', 'tablet:7'],
      ] as const
    ).map(([box, dot]) => stamped<Any>({ ...first, box } as Any, first, dot));
    const both = joinRecords(here!, there!) as Any;
    const moved = stamped<Any>({ ...both, row: '1' } as Any, both, 'phone:8');
    expect(apartOf(moved)).toHaveLength(1);
    const chosen = stamped<Any>(settled(moved, [{ key: 'box', value: 'T' }]), moved, 'phone:9'); // what is shown already
    expect(apartOf(chosen)).toEqual([]);
    expect(apartOf(joinRecords(chosen, both))).toEqual([]);
  });
});
