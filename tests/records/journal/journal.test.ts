import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Change } from '../../../src/records/store/change';
import { appendBatch, batchesOf, beginFile, openFile } from '../../../src/records/journal/journalFile';
import { lineOf, readLine, type Batch } from '../../../src/records/journal/journalLines';
import { batchesThatCount, batchOf, changesOf, refill } from '../../../src/records/journal/journalRead';
import { memoryHandle } from '../memoryHandle';

const head = { journal: 1, store: 's', base: 0 } as const;
const record = (id: string, more: object = {}) => ({ id, kind: 'dropper', v: 1, ...more });

function journalOf(batches: readonly Batch[], base = 0) {
  const handle = memoryHandle();
  const file = beginFile('a.jsonl', handle, { ...head, base });
  for (const batch of batches) appendBatch(file, batch);
  return { handle, file };
}

function reopened(bytes: Uint8Array) {
  const handle = memoryHandle(bytes);
  return { handle, file: openFile('a.jsonl', handle) };
}

async function storeFrom(...files: ReturnType<typeof openFile>[]) {
  const records = new Map<string, object>();
  const events = new Map<string, object>();
  const filled = await refill(files, { store: 's', after: -1 }, async (changes: readonly Change[]) => {
    for (const change of changes) {
      if ('record' in change) records.set(change.record.id, change.record);
      else if ('event' in change) events.set(`${change.event.run}/${change.event.seq}`, change.event);
      else records.delete(change.gone);
    }
  });
  return { filled, records, events };
}

const three = [1, 2, 3].map((n) => ({ n, records: [record(`r${n}`, { name: `Räucherwerk ${n} 🜁` })] }));

test('the files of two windows that wrote in turn hold everything together', async () => {
  const first = journalOf([three[0]!, three[2]!]).file;
  const second = journalOf([three[1]!], -1).file;
  for (const files of [
    [first, second],
    [second, first],
  ]) {
    const { filled, records } = await storeFrom(...files);
    expect([...records.keys()].sort()).toEqual(['r1', 'r2', 'r3']);
    expect(filled).toMatchObject({ records: 3, missing: 0, damagedLines: 0, state: { n: 3 } });
  }
});

describe('a line of the journal', () => {
  test('comes back as it went in, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const line = lineOf({ value });
        expect(line.at(-1)).toBe(10);
        expect(line.indexOf(10)).toBe(line.length - 1);
        expect(readLine(line.subarray(0, -1))).toEqual(JSON.parse(JSON.stringify({ value })));
      }),
    );
  });

  test('is refused when any one bit of it has changed', () => {
    const line = lineOf(three[0]!).subarray(0, -1);
    for (let bit = 0; bit < line.length * 8; bit++) {
      const broken = line.slice();
      broken[bit >> 3]! ^= 1 << (bit & 7);
      const sameSum = String.fromCharCode(...broken.subarray(0, 8)).toLowerCase(); // a digit in capitals is the same number
      if (sameSum !== String.fromCharCode(...line.subarray(0, 8)) || bit >= 72)
        expect(readLine(broken)).toBeUndefined();
    }
  });
});

describe('a journal file', () => {
  test('cut off at any byte holds every line before the cut, and goes on after it', () => {
    const whole = journalOf(three).handle.bytes();
    for (let size = 160; size <= whole.length; size++) {
      const { file, handle } = reopened(whole.subarray(0, size));
      const lines = whole.subarray(160, size).filter((byte) => byte === 10).length;
      expect(file.last).toBe(lines);
      appendBatch(file, { n: lines + 1, records: [record('later')] });
      const again = reopened(handle.bytes()).file;
      expect(again.damaged).toBe(false);
      expect([...batchesOf(again)].map((batch) => batch?.n)).toEqual(
        Array.from({ length: lines + 1 }, (_, i) => i + 1),
      );
    }
  });

  test('with a line torn in the middle still gives the others, and says that one is damaged', async () => {
    const bytes = journalOf(three).handle.bytes().slice();
    bytes[160 + lineOf(three[0]!).length + 30]! ^= 0xff;
    const { file } = reopened(bytes);
    expect(file.last).toBe(3);
    const { filled, records } = await storeFrom(file);
    expect([...records.keys()]).toEqual(['r1', 'r3']);
    expect(filled).toMatchObject({ damagedLines: 1, missing: 1 });
  });

  test('whose last line is damaged and not torn says so', () => {
    const bytes = journalOf(three).handle.bytes().slice();
    bytes[bytes.length - 3]! ^= 0xff;
    expect(reopened(bytes).file).toMatchObject({ last: 2, damaged: true });
  });

  test('that ends in zeros, as after a power cut, loses only the zeros', () => {
    const bytes = journalOf(three).handle.bytes();
    const padded = new Uint8Array(bytes.length + 4096);
    padded.set(bytes);
    const { file, handle } = reopened(padded);
    expect(file).toMatchObject({ last: 3, damaged: false });
    expect(handle.getSize()).toBe(bytes.length);
  });

  test('with every line twice gives the same store', async () => {
    const once = journalOf(three);
    const twice = journalOf([...three, ...three, three[1]!]);
    expect((await storeFrom(twice.file)).records).toEqual((await storeFrom(once.file)).records);
  });

  test('without its head was not finished, but its lines are still read', async () => {
    const bytes = journalOf(three).handle.bytes().slice().fill(32, 0, 159);
    const { file } = reopened(bytes);
    expect(file).toMatchObject({ head: null, damaged: true, last: 3 });
    expect((await storeFrom(file)).records.size).toBe(3);
  });

  test('that is filled with noise gives nothing and does not throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 3000 }), (noise) => {
        const { file } = reopened(noise);
        expect(file).toMatchObject({ head: null, damaged: true, last: -1 });
        expect([...batchesOf(file)].every((batch) => batch === null)).toBe(true);
      }),
    );
  });

  test('of a full phone stays as it was when a line does not fit', () => {
    const { handle } = journalOf(three);
    const before = handle.bytes().slice();
    const full = memoryHandle(before, before.length + 20);
    const file = openFile('a.jsonl', full);
    expect(() => appendBatch(file, three[0]!)).toThrow('no room');
    expect(full.bytes()).toEqual(before);
    expect(file).toMatchObject({ last: 3, size: before.length });
  });

  test('longer than one read still gives every line', () => {
    const many = Array.from({ length: 3000 }, (_, i) => ({
      n: i + 1,
      records: [record(`r${i}`, { name: 'x'.repeat(i % 700) })],
    }));
    const { file } = reopened(journalOf(many).handle.bytes());
    expect(file.last).toBe(3000);
    expect([...batchesOf(file)].every((batch, i) => batch?.n === i + 1)).toBe(true);
  });
});

describe('several journal files', () => {
  test('count together: two windows wrote at the same time', async () => {
    const a = journalOf([three[0]!, three[2]!]);
    const b = journalOf([three[1]!]);
    const { records, filled } = await storeFrom(a.file, b.file);
    expect([...records.keys()].sort()).toEqual(['r1', 'r2', 'r3']);
    expect(filled).toMatchObject({ missing: 0, state: { n: 3 } });
  });

  test('written anew and not yet cleared away, the old one says nothing against the new one', async () => {
    const old = journalOf([
      { n: 1, records: [record('erased')] },
      { n: 2, records: [record('a', { name: 'old' })] },
    ]);
    const fresh = journalOf([{ n: 5, records: [record('a', { name: 'new' })] }], 5);
    for (const files of [
      [old.file, fresh.file],
      [fresh.file, old.file],
    ]) {
      const { records } = await storeFrom(...files);
      expect([...records.values()]).toEqual([record('a', { name: 'new' })]);
    }
  });

  test('the newest write of a record wins in whatever order the files are read', async () => {
    const a = journalOf([
      { n: 1, records: [record('a', { name: 'first' })] },
      { n: 4, gone: ['b'] },
    ]);
    const b = journalOf([{ n: 2, records: [record('a', { name: 'second' }), record('b')] }]);
    for (const files of [
      [a.file, b.file],
      [b.file, a.file],
    ]) {
      expect([...(await storeFrom(...files)).records.values()]).toEqual([record('a', { name: 'second' })]);
    }
  });

  test('a batch that is written and read is the same batch', () => {
    const changes: Change[] = [
      { record: record('a') },
      { event: { run: 'a', seq: 0, at: '2026-05-04T10:00:00.000Z', type: 'drop', key: 'k' } },
      { gone: 'b' },
    ];
    const { file } = journalOf([batchOf(1, changes)]);
    expect([...batchesThatCount([file])].flatMap((batch) => (batch ? changesOf(batch) : []))).toEqual(changes);
  });
});
