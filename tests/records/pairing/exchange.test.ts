import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exchange, type Side } from '../../../src/records/pairing/exchange';
import type { Parcel } from '../../../src/records/union/summary';
import { messageFrom, PROTOCOL } from '../../../src/records/pairing/messages';
import { wirePair } from './wires';

/** A device that holds ids, and nothing else of its records. */
class Device {
  readonly sent: string[] = [];
  readonly held: Set<string>;
  renewed = false;
  readonly #name: string;
  readonly #more: Partial<Side['introduction']>;

  constructor(name: string, ids: Iterable<string>, more: Partial<Side['introduction']> = {}) {
    this.#name = name;
    this.held = new Set(ids);
    this.#more = more;
  }

  side(): Side {
    return {
      introduction: { protocol: PROTOCOL, device: this.#name, name: this.#name, kinds: { vial: 1 }, ...this.#more },
      summary: async () => ({ version: 1, has: [...this.held] }),
      lacking: async (theirs) => {
        const lacked = [...this.held].filter((id) => !theirs.has.includes(id));
        this.sent.push(...lacked);
        return lacked.map((id) => ({ records: [{ id, kind: 'vial', v: 1 }], events: [] }));
      },
      beAnother: async () => void (this.renewed = true),
      join: async ({ records }: Parcel) => records.forEach(({ id }) => this.held.add(id)),
    };
  }
}

function meet(a: Device, b: Device, { breaksAfter = Infinity, stop = new AbortController() } = {}) {
  const [here, there] = wirePair(breaksAfter);
  const progress = () => {};
  return Promise.all([
    exchange({ wire: here, side: a.side(), progress, stop: stop.signal }),
    exchange({ wire: there, side: b.side(), progress, stop: new AbortController().signal }),
  ]);
}

const ids = fc.uniqueArray(fc.integer({ min: 0, max: 40 }).map(String), { maxLength: 25 });

describe('an exchange', () => {
  test('leaves both with all, and lists what came and went', async () => {
    await fc.assert(
      fc.asyncProperty(ids, ids, async (first, second) => {
        const [a, b] = [new Device('phone', first), new Device('tablet', second)];
        const [atA, atB] = await meet(a, b);
        const all = [...new Set([...first, ...second])].sort();
        expect([[...a.held].sort(), [...b.held].sort()]).toEqual([all, all]);
        expect([atA.end, atB.end, atA.other, atB.other]).toEqual(['equal', 'equal', 'tablet', 'phone']);
        expect(atA.came).toEqual(second.filter((id) => !first.includes(id)));
        expect(atA.came).toEqual(atB.went);
        expect(atB.came).toEqual(atA.went);
      }),
      { numRuns: 60 },
    );
  });

  test('that breaks anywhere goes on where it was: what was stored is not sent again', async () => {
    await fc.assert(
      fc.asyncProperty(ids, ids, fc.integer({ min: 0, max: 60 }), async (first, second, breaksAfter) => {
        const [a, b] = [new Device('phone', first), new Device('tablet', second)];
        const [broken] = await meet(a, b, { breaksAfter });
        const stored = [...a.held].filter((id) => !first.includes(id));
        if (broken.end === 'broke') expect(broken.came).toEqual(stored);
        b.sent.length = 0;
        await meet(a, b);
        expect([...a.held].sort()).toEqual([...b.held].sort());
        expect(b.sent.filter((id) => stored.includes(id))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test('goes on while somebody works on one of them', async () => {
    const [a, b] = [new Device('phone', ['1', '2']), new Device('tablet', ['3'])];
    const side = b.side();
    let more = 2;
    const [here, there] = wirePair();
    const stop = new AbortController().signal;
    const working: Side = {
      ...side,
      join: async (parcel) => {
        await side.join(parcel);
        if (more-- > 0) b.held.add(`new ${more}`);
      },
    };
    const ends = await Promise.all([
      exchange({ wire: here, side: a.side(), progress: () => {}, stop }),
      exchange({ wire: there, side: working, progress: () => {}, stop }),
    ]);
    expect(ends.map(({ end }) => end)).toEqual(['equal', 'equal']);
    expect([...a.held].sort()).toEqual([...b.held].sort());
  });

  test('can be stopped: the other is told, and what came stays', async () => {
    const [a, b] = [new Device('phone', ['1']), new Device('tablet', ['2'])];
    const stop = new AbortController();
    stop.abort();
    const [atA, atB] = await meet(a, b, { stop });
    expect([atA.end, atB.end]).toEqual(['stopped here', 'stopped there']);
    expect([...a.held]).toEqual(['1']);
  });

  test('tells how far it is', async () => {
    const [a, b] = [new Device('phone', ['1', '2', '3']), new Device('tablet', ['4'])];
    const [here, there] = wirePair();
    const told: string[] = [];
    const stop = new AbortController().signal;
    await Promise.all([
      exchange({
        wire: here,
        side: a.side(),
        progress: ({ came, toCome, went, toGo }) => told.push(`${came}/${toCome} ${went}/${toGo}`),
        stop,
      }),
      exchange({ wire: there, side: b.side(), progress: () => {}, stop }),
    ]);
    expect(told.at(-1)).toBe('1/1 3/3');
    expect(told).toContain('1/1 2/3');
  });
});

describe('an exchange is refused', () => {
  test.each([
    ['an older protocol', { protocol: 0 }, 'older Minim', 'newer Minim'],
    ['a newer kind of record', { kinds: { vial: 2 } }, 'newer Minim', 'older Minim'],
    ['a kind that is not known here', { kinds: { vial: 1, cask: 1 } }, 'newer Minim', 'older Minim'],
    ['the same data under one id', { device: 'phone' }, 'copy of the other', 'copy of the other'],
  ])('by %s, in a true sentence on both', async (_, more, said, there) => {
    const [a, b] = [new Device('phone', ['1']), new Device('tablet', ['2'], more)];
    const [atA, atB] = await meet(a, b);
    expect([atA.end, atB.end]).toEqual(['refused', 'refused']);
    expect(atA.why?.message).toContain(said);
    expect(atB.why?.message).toContain(there);
    expect([...a.held, ...b.held]).toEqual(['1', '2']);
    expect([a.renewed, b.renewed]).toEqual([said, said].map((words) => words.startsWith('copy')));
  });

  test('when what came cannot be stored', async () => {
    const [a, b] = [new Device('phone', ['1']), new Device('tablet', ['2'])];
    const full = { ...a.side(), join: () => Promise.reject(new Error('no room')) };
    const [here, there] = wirePair();
    const stop = new AbortController().signal;
    const [atA, atB] = await Promise.all([
      exchange({ wire: here, side: full, progress: () => {}, stop }),
      exchange({ wire: there, side: b.side(), progress: () => {}, stop }),
    ]);
    expect(atA.why?.message).toContain('no room');
    expect(atB.end).toBe('stopped there');
  });

  test.each(['{}', '{"is":"dance"}', '{"is":"parcel","parcel":{"records":[{}],"events":[]}}'])(
    'when %s is said',
    (text) => {
      expect(() => messageFrom(new TextEncoder().encode(text))).toThrow('does not understand');
    },
  );
});
