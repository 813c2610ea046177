import * as z from 'zod/mini';
import { describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import { envelope, readRecord, type Shape } from '../../../src/records/kind/record';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';

const jar = {
  kind: 'jar',
  schema: z.object({ ...envelope('jar'), litres: z.number() }),
  upgrades: [({ ml, ...rest }) => ({ ...rest, litres: ml / 1000 })],
} satisfies Shape;
const envelopeOf = { id: 'a', kind: 'jar', made: '2026-05-04T10:00:00.000Z', from: [] };

describe('the one door in for stored data', () => {
  test('an older shape is brought up to date', () => {
    expect(readRecord(jar, { ...envelopeOf, v: 1, ml: 500 })).toMatchObject({ ok: true, value: { v: 2, litres: 0.5 } });
  });

  test('a newer shape is handed back untouched, with the reason', () => {
    const raw = { ...envelopeOf, v: 3, barrels: 1 };
    expect(readRecord(jar, raw)).toEqual({ ok: false, raw, why: 'it was made by a newer version of Minim' });
  });

  test.each([null, 7, 'text', {}, { v: 'one' }, { ...envelopeOf, v: 1 }, { ...envelopeOf, v: 2, litres: 'much' }])(
    'what cannot be read is kept as it is: %j',
    (raw) => expect(readRecord(jar, raw)).toMatchObject({ ok: false, raw }),
  );

  test('every kind carries its own name and reads what it writes', () => {
    for (const [name, kind] of Object.entries(kinds)) expect(kind.kind).toBe(name);
    const dropper = newRecord('dropper', { name: 'P1', tip: 'glass' });
    expect(readRecord(kinds.dropper, dropper)).toEqual({ ok: true, value: dropper });
  });

  test('what cannot be read is shown on the shelf, and what can be read beside it is there', () => {
    const good = newRecord('dropper', { name: 'P2', tip: 'plastic' });
    takeIn([{ id: 'x', kind: 'unheard-of', v: 1 }, good]);
    expect(shelf.unreadable.value.map(({ raw }) => raw.id)).toContain('x');
    expect(shelf.records.value.get(good.id)).toEqual(good);
  });
});
