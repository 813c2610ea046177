import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ringsIn } from '../../../src/records/backup/rings';
import { backupHead, backupText, readBackup, type BackupContent } from '../../../src/records/backup/backupFile';
import { isLocked, lockBackup, unlockBackup } from '../../../src/records/backup/backupLock';
import { kindNamed } from '../../../src/records/kind/kinds';
import { apartOf } from '../../../src/records/union/apart';
import { planMerge, type Here } from '../../../src/records/backup/merge';
import { readRecord, type Stored } from '../../../src/records/kind/record';
import type { RunEvent } from '../../../src/records/kind/run';

const at = (minute: number) => `2026-05-04T10:${String(minute).padStart(2, '0')}:00.000Z`;

function dropper(id: string, more: object = {}): Stored {
  return { id, kind: 'dropper', v: 1, made: at(0), from: [], name: `Dropper ${id}`, tip: 'glass', ...more } as Stored;
}

function step(run: string, seq: number, key = 'k'): RunEvent {
  return { run, seq, at: at(seq), type: 'drop', key };
}

const run = (id: string) =>
  ({ id, kind: 'run', v: 1, made: at(0), from: [], task: 'count', open: 1, kept: [], title: 'Count' }) as Stored;

function file(records: readonly unknown[], events: readonly unknown[] = []): BackupContent {
  return { made: at(0), records, events, missing: 0 };
}

function here(records: readonly Stored[], events: readonly RunEvent[] = []): Here {
  return { records: new Map(records.map((record) => [record.id, record])), events };
}

function planned(content: BackupContent, stored: Here) {
  return planMerge(content, stored);
}

/** The store after a plan. */
function after(content: BackupContent, stored: Here): Map<string, Stored> {
  const records = new Map(stored.records);
  for (const change of planned(content, stored).changes)
    if ('record' in change) records.set(change.record.id, change.record);
  return records;
}

describe('a restore that is merged', () => {
  test('brings what is not here, and leaves what is the same', () => {
    const plan = planned(file([dropper('a'), dropper('b')]), here([dropper('a')]));
    expect(plan).toMatchObject({ fresh: 1, same: 1, changed: 0, older: 0, both: 0 });
    expect(plan.changes).toEqual([{ record: dropper('b') }]);
  });

  test('lets the newer of two versions of a record stand, whichever side it is on', () => {
    const old = dropper('a', { written: at(1), tip: 'old' });
    const fresh = dropper('a', { written: at(2), earlier: [at(1)], tip: 'new' });
    expect(planned(file([fresh]), here([old]))).toMatchObject({ changed: 1, both: 0, conflicts: [] });
    expect(planned(file([old]), here([fresh]))).toMatchObject({ older: 1, both: 0, conflicts: [] });
    const ways = [after(file([fresh]), here([old])), after(file([old]), here([fresh]))];
    for (const store of ways) expect(store.get('a')).toMatchObject({ tip: 'new', by: at(2), earlier: [at(1)] });
    expect(ways[0]).toEqual(ways[1]);
  });

  test('keeps both values of what was changed on both sides, in one record, the later shown', () => {
    const mine = dropper('a', { written: at(5), earlier: [at(1)], tip: 'mine' });
    const theirs = dropper('a', { written: at(4), earlier: [at(1)], tip: 'theirs' });
    for (const [content, stored] of [
      [theirs, mine],
      [mine, theirs],
    ] as const) {
      expect(planned(file([content]), here([stored])).both).toBe(1);
      const store = after(file([content]), here([stored]));
      expect(store.size).toBe(1);
      expect(store.get('a')).toMatchObject({ tip: 'mine', by: [at(5), at(4)], earlier: [at(1)] });
      expect(apartOf(store.get('a')!)).toMatchObject([{ key: 'tip', sides: [{ value: 'mine' }, { value: 'theirs' }] }]);
      expect(planned(file([content]), here([stored])).conflicts).toEqual(['dropper Dropper a']);
      expect(planned(file([content]), here([...store.values()]))).toMatchObject({ both: 0, changes: [] });
    }
  });

  test('takes no older time for an ancestor, however many edits came after it', () => {
    const earlier = Array.from({ length: 8 }, (_, i) => at(20 + i));
    const long = dropper('a', { written: at(30), earlier, tip: 'weighed nine times' });
    const there = dropper('a', { written: at(3), earlier: [at(1)], tip: 'changed there' });
    for (const [content, stored] of [
      [there, long],
      [long, there],
    ] as const)
      expect(planned(file([content]), here([stored]))).toMatchObject({ both: 1, older: 0, changed: 0 });
  });

  test('knows an ancestor that is many edits behind', () => {
    const earlier = Array.from({ length: 40 }, (_, i) => at(i));
    const long = dropper('a', { written: at(50), earlier, tip: 'long since' });
    expect(planned(file([dropper('a', { written: at(0) })]), here([long]))).toMatchObject({ older: 1, both: 0 });
  });

  test('asks about no settings: the later stay', () => {
    const settings = (theme: string, written: string) =>
      ({ id: 'settings', kind: 'settings', v: 1, made: at(0), from: [], theme, written }) as Stored;
    const [early, late] = [settings('dark', at(1)), settings('light', at(2))];
    for (const [content, stored] of [
      [early, late],
      [late, early],
    ] as const) {
      expect(after(file([content]), here([stored])).get('settings')).toMatchObject({ theme: 'light' });
      expect(planned(file([content]), here([stored])).conflicts).toEqual([]);
    }
  });

  test('adds the steps of a run that are not here', () => {
    const plan = planned(
      file([run('r')], [step('r', 0), step('r', 1), step('r', 2)]),
      here([run('r')], [step('r', 0)]),
    );
    expect(plan).toMatchObject({ same: 1, steps: 2 });
  });

  test('parts a run that went on differently under one id, the same way on the two sides', () => {
    const [one, other] = [
      [step('r', 0), step('r', 1, 'a'), step('r', 2)],
      [step('r', 0), step('r', 1, 'b')],
    ];
    for (const [theirs, ours] of [
      [one, other],
      [other, one],
    ] as const) {
      const plan = planned(file([run('r')], theirs), here([run('r')], ours));
      const part = plan.changes.flatMap((change) => ('record' in change ? [change.record] : []));
      expect(part.find(({ id }) => id !== 'r')).toMatchObject({ title: 'Count', partOf: 'r', open: 1 });
      const gone = new Set(plan.changes.flatMap((change) => ('gone' in change ? [change.gone] : [])));
      const fresh = plan.changes.flatMap((change) => ('event' in change ? [change.event] : []));
      const keys = (is: (run: string) => boolean) =>
        [...ours.filter(({ run }) => !gone.has(run)), ...fresh].filter((event) => is(event.run)).map(({ key }) => key);
      expect(keys((id) => id === 'r')).toEqual(['k', 'b']); // the greater as text
      expect(keys((id) => id !== 'r')).toEqual(['k', 'a', 'k']);
      expect(plan.conflicts).toEqual(['run Count']);
    }
  });

  test('keeps records of a newer Minim untouched, and says that it cannot read them', () => {
    const newer = { ...dropper('a'), v: 99, colour: 'blue' } as Stored;
    const unknown = { id: 'b', kind: 'centrifuge', v: 1, speed: 3000 } as Stored;
    const plan = planned(file([newer, unknown]), here([]));
    expect(plan).toMatchObject({ untouched: 2, fresh: 2, outCount: 0 });
    expect(plan.changes).toEqual([{ record: newer }, { record: unknown }]);
  });

  test('leaves out what cannot be stored, each with its reason', () => {
    const deep = JSON.parse('['.repeat(100) + ']'.repeat(100));
    const items = [
      null,
      7,
      'x',
      [],
      {},
      { id: 'a' },
      { ...dropper('b'), note: deep },
      { ...dropper('c'), n: 1e999 },
      JSON.parse('{"id":"d","kind":"dropper","v":1,"__proto__":{"open":1}}'),
    ];
    const plan = planned(
      file(items, [step('nowhere', 0), { run: 'x' }, step('a', -1), step('a', 0, '__proto__')]),
      here([]),
    );
    expect(plan.changes).toEqual([]);
    expect(plan.outCount).toBe(13);
    expect(plan.out.map(({ why }) => why)).toEqual(
      expect.arrayContaining([
        'it is nested too deep',
        'a number in it is too large',
        'the run it belongs to is missing',
      ]),
    );
    expect(({} as { open?: number }).open).toBeUndefined();
  });

  test('joins two records with the same id', () => {
    const twice = [dropper('a', { written: at(1), tip: 'old' }), dropper('a', { written: at(2), tip: 'new' })];
    for (const items of [twice, [...twice].reverse()]) {
      const plan = planned(file(items), here([]));
      expect(plan.changes).toMatchObject([{ record: { id: 'a', tip: 'new', apart: { tip: [{}, {}] } } }]);
      expect(plan.outCount).toBe(1);
    }
  });

  test('leaves out records that are made from themselves, and nothing else', () => {
    const ring = [dropper('a', { from: ['c', 'x'] }), dropper('b', { from: ['a'] }), dropper('c', { from: ['b'] })];
    const plan = planned(file([...ring, dropper('x'), dropper('y', { from: ['b'] })]), here([]));
    expect(plan.changes.flatMap((change) => ('record' in change ? [change.record.id] : []))).toEqual(['x', 'y']);
    expect(planned(file([dropper('p', { from: ['q'] })]), here([dropper('q', { from: ['p'] })])).outCount).toBe(1);
  });

  test('finds a ring behind thirty thousand records at once', () => {
    const chain = Array.from({ length: 30_000 }, (_, i) => dropper(`c${i}`, { from: [`c${i + 1}`] }));
    expect(ringsIn(chain).size).toBe(0);
    expect(ringsIn([...chain, dropper('c30000', { from: ['c29999'] })])).toEqual(new Set(['c29999', 'c30000']));
  });

  test('counts a photo and its picture as one, and brings both', () => {
    const photo = { id: 'p', kind: 'photo', v: 1, made: at(0), from: [], of: 'a', taken: at(0), picture: 'q' };
    const picture = { id: 'q', kind: 'picture', v: 1, made: at(0), from: [], type: 'image/jpeg', data: 'AAEC' };
    const both = [{ ...photo, width: 2, height: 1, bytes: 3 }, picture];
    const plan = planned(file(both), here([]));
    expect(plan).toMatchObject({ fresh: 1, untouched: 0, changes: both.map((record) => ({ record })) });
    expect(planned(file(both), here(both))).toMatchObject({ fresh: 0, same: 1, changes: [] });
    expect(planned(file([picture]), here([]))).toMatchObject({ fresh: 0, changes: [{ record: picture }] });
  });

  test('done twice does nothing the second time', () => {
    const content = file([dropper('a'), run('r')], [step('r', 0), step('r', 1)]);
    const store = here([...after(content, here([])).values()], [step('r', 0), step('r', 1)]);
    expect(planned(content, store).changes).toEqual([]);
  });
});

async function written(records: readonly Stored[], events: readonly RunEvent[]): Promise<string> {
  async function* page<T>(list: readonly T[]) {
    if (list.length > 0) yield list;
  }
  let text = backupHead({ made: at(0), holds: { records: records.length, events: events.length } });
  for await (const part of backupText({ records: page(records), events: page(events) })) text += part;
  return text;
}

describe('a backup file', () => {
  test('is JSON that reads back as it was written, empty or not', async () => {
    for (const [records, events] of [
      [[], []],
      [[dropper('é💧‮"<b>')], [step('r', 0)]],
    ] as [Stored[], RunEvent[]][]) {
      const text = await written(records, events);
      expect(JSON.parse(text)).toMatchObject({
        format: 'minim-backup',
        version: 1,
        holds: { records: records.length },
      });
      expect(readBackup(text)).toEqual({ ok: true, content: { made: at(0), records, events, missing: 0 } });
    }
  });

  test('that is cut off anywhere still gives the items before the cut, and says how many are missing', async () => {
    const records = Array.from({ length: 6 }, (_, i) => dropper(`d${i}`));
    const text = await written(records, [step('r', 0), step('r', 1)]);
    for (let size = 1; size < text.length - 4; size++) {
      const read = readBackup(text.slice(0, size));
      if (!read.ok) continue;
      const got = read.content.records.length + read.content.events.length;
      expect(read.content.records).toEqual(records.slice(0, read.content.records.length));
      expect(read.content.missing).toBe(Math.max(1, 8 - got));
    }
    expect(readBackup(text.slice(0, text.indexOf('"id":"d4"')))).toMatchObject({ ok: true, content: { missing: 4 } });
  });

  test.each(['0', '-1', '1.5', 'null', '"1"', '{}'])('of a form that was never released (%s) is refused', (version) => {
    const why = 'This backup does not say which form it has: another program has changed it, or it is damaged.';
    const whole = `{"format":"minim-backup","version":${version},"records":[],"events":[]}`;
    const torn = `{"format":"minim-backup","version":${version},\n{"id":"d","kind":"dropper","v":1},\n`;
    for (const text of [whole, torn]) expect(readBackup(text)).toEqual({ ok: false, why });
  });

  test('of a newer form is refused with the way out', () => {
    expect(readBackup('{"format":"minim-backup","version":2,"records":[],"events":[]}')).toEqual({
      ok: false,
      why: 'This backup was made by a newer Minim. Update Minim, then restore it.',
    });
  });

  const opened = new Set<string>();
  for (const name of readdirSync(resolve(import.meta.dirname, '../../fixtures/backups'))) {
    test(`of every released version opens: ${name}`, () => {
      const read = readBackup(readFileSync(resolve(import.meta.dirname, '../../fixtures/backups', name), 'utf8'));
      if (!read.ok) throw new Error(read.why);
      const { records, events } = read.content;
      const all = records as Stored[];
      expect(all.filter(({ kind }) => !kindNamed(kind))).toEqual([]);
      all.forEach(({ kind }) => opened.add(kind));
      for (const record of all) {
        expect(readRecord(kindNamed(record.kind)!, record)).toMatchObject({ ok: true });
      }
      expect(planned(read.content, here([]))).toMatchObject({
        fresh: all.length,
        untouched: 0,
        steps: events.length,
        outCount: 0,
      });
    });
  }

  test('of a released version holds every kind that there was then', () =>
    expect(opened.size).toBeGreaterThanOrEqual(15));
});

describe('a locked backup', () => {
  test('opens with its passphrase and with no other, and not when a byte of it was changed', async () => {
    const text = await written([dropper('a')], []);
    const locked = await (await lockBackup(new Blob([text]), 'drei Tropfen Zitronenöl')).text();
    expect(isLocked(locked)).toBe(true);
    expect(locked).not.toContain('Dropper');
    expect(JSON.parse(locked).lock.rounds).toBeGreaterThanOrEqual(600_000);
    expect(await unlockBackup(locked, 'drei Tropfen Zitronenöl')).toBe(text);
    expect(await unlockBackup(locked, 'drei Tropfen Zitronenöl'.normalize('NFD'))).toBe(text);
    expect(await unlockBackup(locked, 'drei Tropfen')).toBeNull();
    const at = locked.indexOf('"data":"') + 20;
    expect(
      await unlockBackup(
        locked.slice(0, at) + (locked[at] === 'A' ? 'B' : 'A') + locked.slice(at + 1),
        'drei Tropfen Zitronenöl',
      ),
    ).toBeNull();
    expect(await unlockBackup(locked.replace('AES-256-GCM', 'AES-256-gcm'), 'drei Tropfen Zitronenöl')).toBeNull();
    expect(await unlockBackup(locked.slice(0, -40), 'drei Tropfen Zitronenöl')).toBeNull();
  });

  test('that asks for endless work is refused at once', async () => {
    const lock = { cipher: 'AES-256-GCM', key: 'PBKDF2-HMAC-SHA-256', rounds: 1e12, salt: 'AAAA', nonce: 'AAAA' };
    expect(
      await unlockBackup(JSON.stringify({ format: 'minim-backup', version: 1, lock, data: 'AAAA' }), 'x'),
    ).toBeNull();
  });
});
