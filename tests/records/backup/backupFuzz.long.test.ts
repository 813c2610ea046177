import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openBackup } from '../../../src/records/backup/backup';
import { largestBackup, readBackup, textOf } from '../../../src/records/backup/backupFile';
import { planMerge, type Here, type Plan } from '../../../src/records/backup/merge';
import type { Change } from '../../../src/records/store/change';
import type { Stored } from '../../../src/records/kind/record';
import type { RunEvent } from '../../../src/records/kind/run';
import { asEvent, whyNotStorable } from '../../../src/records/backup/storable';
import { seeded } from '../../core/seeded';

const whole = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../fixtures/backups/v1.json'), 'utf8')) as File;
interface File {
  [key: string]: unknown;
  records: Stored[];
  events: RunEvent[];
}

/** A small backup with one record of each kind. */
const records = [...new Map(whole.records.map((record) => [record.kind, record])).values()];
const run = records.find(({ kind }) => kind === 'run')!;
const events = whole.events.filter((event) => event.run === run.id).slice(0, 12);
const small: File = { ...whole, holds: { records: records.length, events: events.length }, records, events };
const lines = (items: object[]) => items.map((item) => JSON.stringify(item)).join(',\n');
const text = `{\n "format": "minim-backup",\n "version": 1,\n "made": "2026-05-04T10:00:00.000Z",\n "holds": ${JSON.stringify(small['holds'])},\n "records": [\n${lines(records)}\n],\n "events": [\n${lines(events)}\n]\n}\n`;
const bytes = new TextEncoder().encode(text);

/** The same things are here already, so that merging has something to meet. */
const here: Here = { records: new Map(records.map((record) => [record.id, record])), events };
const asItWas = JSON.stringify([...here.records, here.events]);

type Chance = (below: number) => number;
type Mutation = (chance: Chance) => Uint8Array;

const encode = (mutated: string) => new TextEncoder().encode(mutated);
const hostile = [
  'null',
  '{}',
  '[]',
  '""',
  '-1',
  '0',
  '1e999',
  '-1e999',
  'NaN',
  'Infinity',
  'undefined',
  '9007199254740993',
  '1e308',
  'true',
  '"\\u0000"',
  '"\\ud800"',
  '"=cmd|calc!A0"',
  '"<img src=x onerror=alert(1)>"',
  '"\u202egnp.exe"',
  '"__proto__"',
  '{"__proto__":{"open":1}}',
  '{"constructor":{"prototype":{"x":1}}}',
  `"${'💧'.repeat(5000)}"`,
  '['.repeat(40) + ']'.repeat(40),
  '['.repeat(20_000) + ']'.repeat(20_000),
  '{"a":'.repeat(3000) + '1' + '}'.repeat(3000),
];

/** Somewhere in the text, at a JSON value. */
function replacedValue(chance: Chance): string {
  const places = [...text.matchAll(/(?<=[:[,])("(?:[^"\\]|\\.)*"|-?\d[\d.e+-]*|true|null)/g)];
  const place = places[chance(places.length)]!;
  return text.slice(0, place.index) + hostile[chance(hostile.length)]! + text.slice(place.index + place[0].length);
}

/** A file that is right but for one of its items. */
function changedItem(chance: Chance): string {
  const file = structuredClone(small) as unknown as {
    records: Record<string, unknown>[];
    events: Record<string, unknown>[];
  };
  const list = chance(3) === 0 ? file.events : file.records;
  const item = list[chance(list.length)]!;
  const other = list[chance(list.length)]!;
  const keys = Object.keys(item);
  const key = keys[chance(keys.length)]!;
  const deeds = [
    () => void list.push(structuredClone(item)),
    () => void list.push({ ...structuredClone(item), [key]: other[key] ?? 7 }),
    () => delete item[key],
    () => (item[key] = structuredClone(other)),
    () => (item['v'] = [0, 2, 99, 1.5, '1', -1][chance(6)]),
    () => (item['kind'] = other['kind']),
    () => (item['from'] = [other['id'], item['id']]),
    () => ((item['from'] = [other['id']]), (other['from'] = [item['id']])),
    () => (item['seq'] = [-1, 0, 1.5, 2 ** 53, '3'][chance(5)]),
    () => (item['id'] = ['', other['id'], '__proto__', 'x'.repeat(5000), 7][chance(5)]),
    () => (item['written'] = ['2099-01-01', '', 7, null, '2026-05-04T10:00:00.000Z'][chance(5)]),
    () => list.splice(0, list.length, ...Array.from({ length: 50 }, () => item)),
    () =>
      ((file as Record<string, unknown>)[chance(2) ? 'records' : 'events'] = [{}, 7, null, 'x', { length: 1e9 }][
        chance(5)
      ]),
    () =>
      ((file as Record<string, unknown>)['holds'] = [{ records: 1e300 }, { records: -5 }, { records: '9' }, null][
        chance(4)
      ]),
    () => ((file as Record<string, unknown>)['version'] = [0, 2, '1', null, 1e999][chance(5)]),
  ];
  deeds[chance(deeds.length)]!();
  return JSON.stringify(file);
}

const mutations: Mutation[] = [
  (chance) => bytes.slice(0, chance(bytes.length)), // truncated
  (chance) => bytes.slice(chance(bytes.length)), // its beginning gone
  (chance) => {
    const flipped = bytes.slice();
    for (let i = 0; i <= chance(8); i++) flipped[chance(flipped.length)]! ^= 1 << chance(8);
    return flipped;
  },
  (chance) => {
    const [from, to] = [chance(bytes.length), chance(bytes.length)];
    return new Uint8Array([
      ...bytes.subarray(0, from),
      ...bytes.subarray(Math.min(from, to), to),
      ...bytes.subarray(from),
    ]); // a piece doubled
  },
  (chance) => {
    const from = chance(bytes.length);
    return new Uint8Array([...bytes.subarray(0, from), ...bytes.subarray(from + chance(2000))]); // a hole
  },
  (chance) => encode(replacedValue(chance)),
  (chance) => encode(replacedValue(chance)),
  (chance) => encode(changedItem(chance)),
  (chance) => encode(changedItem(chance)),
  (chance) => encode(changedItem(chance)),
  (chance) =>
    new Uint8Array(
      new Uint16Array([0xfeff, ...Array.from(text.slice(0, 500 + chance(500)), (sign) => sign.charCodeAt(0))]).buffer,
    ), // UTF-16
  (chance) =>
    encode(
      text
        .split('\n')
        .sort(() => chance(3) - 1)
        .join('\n'),
    ), // lines shuffled
  (chance) => encode(`${'\ufeff'.repeat(chance(3))}${text}${text.slice(0, chance(900))}`),
  (chance) => encode(hostile[chance(hostile.length)]!),
  (chance) => Uint8Array.from({ length: chance(400) }, () => chance(256)), // noise
];

/** All that may come of a file: a refusal in one sentence, or a plan in which everything can be stored. */
function look(mutated: Uint8Array): Plan | string {
  const decoded = textOf(mutated);
  const read = decoded === null ? ({ ok: false, why: 'This file is no UTF-8.' } as const) : readBackup(decoded);
  return read.ok ? planMerge(read.content, here) : read.why;
}

/** Whether a change can be stored: a run is emptied only where it is one that is here. */
function isStorable(change: Change): boolean {
  if ('record' in change) return whyNotStorable(change.record) === '';
  return 'event' in change ? asEvent(change.event) !== null : here.events.some(({ run }) => run === change.gone);
}

const SLOW_MS = 5000; // a thousand times what the others take

/** Whether a file takes that long three times more: a busy machine may have paused the first time. */
function isSlow(mutated: Uint8Array): boolean {
  return [1, 2, 3].every(() => {
    const began = performance.now();
    look(mutated);
    return performance.now() - began > SLOW_MS;
  });
}

describe('a file of which anything may be wrong', () => {
  test('20,000 damaged and hostile backups end in one sentence or in a plan of things that can be stored', () => {
    const random = seeded(20261125);
    const chance: Chance = (below) => Math.floor(random() * below);
    let [refused, planned, slow] = [0, 0, 0];
    for (let i = 0; i < 20_000; i++) {
      const mutated = mutations[i % mutations.length]!(chance);
      const began = performance.now();
      const found = look(mutated);
      if (performance.now() - began > SLOW_MS && isSlow(mutated)) slow++;
      if (typeof found === 'string') {
        refused++;
        if (!/^[A-Z][^.]*\.( [A-Z][^.]*\.)?$/.test(found)) throw new Error(`not one sentence: ${found}`);
        continue;
      }
      planned++;
      for (const change of found.changes) {
        structuredClone(change); // as the database takes it
        JSON.stringify(change); // as the journal takes it
        if (!isStorable(change)) throw new Error(`not to be stored: ${JSON.stringify(change)}`);
      }
      if (found.out.length > 101) throw new Error('too long a list for a screen');
    }
    expect(refused).toBeGreaterThan(2000);
    expect(planned).toBeGreaterThan(5000);
    expect(slow).toBe(0);
    expect(JSON.stringify([...here.records, here.events])).toBe(asItWas);
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Record<string, unknown>)['open']).toBeUndefined();
  });

  test('200 MB are refused by their size, without being read', async () => {
    const huge = { size: 200 * 1024 ** 2, arrayBuffer: () => Promise.reject(new Error('read')) } as unknown as Blob;
    expect(await openBackup(huge)).toEqual({
      state: 'refused',
      why: 'This file has 200 MB. A backup of Minim has at most 128 MB.',
    });
    expect(largestBackup).toBe(128 * 1024 ** 2);
  });

  test('a million opening brackets are refused, whether they are the file or stand in an item', () => {
    const deep = '['.repeat(1_000_000);
    expect(look(encode(deep))).toBe('This file is no backup of Minim.');
    expect(typeof look(encode(text.replace('"kind":"dropper"', `"x":${deep}`)))).not.toBe('undefined');
  });
});
