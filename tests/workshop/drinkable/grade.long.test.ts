import fc from 'fast-check';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { describe as inWords } from '../../../src/app/describe/describe';
import { recordTable } from '../../../src/app/record/paper';
import { isLabelled, isOf } from '../../../src/records/kind/kinds';
import { shelf } from '../../../src/records/shelf';
import { gradeNow } from '../../../src/workshop/drinkable/grade';
import { isGraded } from '../../../src/workshop/drinkable/gradeCause';
import { isBad, newWorld, toolNames, use, type Op } from './gradeHistory';
import { label } from './gradeShelf';

const op: fc.Arbitrary<Op> = fc.tuple(fc.constantFrom(...toolNames), fc.nat(50), fc.nat(50), fc.nat(50));
const FIT = 'fit for drinks';

beforeAll(() => void vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-11-30T08:00:00Z') }));
afterAll(() => void vi.useRealTimers());

/** What a thing says of itself, wherever that is read. */
function says(id: string): string[] {
  const record = shelf.records.value.get(id)!;
  const row =
    recordTable(record)
      .split('\r\n')
      .find((one) => one.startsWith('grade')) ?? '';
  return [
    isGraded(record) ? gradeNow(record).grade : '',
    inWords(record).grade ?? '',
    row,
    isLabelled(record) ? label(id) : '',
  ];
}

test('after any history of marks, edits, makings, repeats and restores nothing says fit while something in it is not', () => {
  const seen = { bad: 0, fit: 0, drinks: 0 };
  const history = fc.array(op, { minLength: 8, maxLength: 40 });
  const property = fc.property(history, (ops) => {
    const world = newWorld();
    const start: Op[] = [
      ['bottle', 1, 1, 0],
      ['bottle', 0, 1, 0],
      ['pack', 0, 0, 0],
      ['dilute', 0, 4, 1],
      ['dilute', 1, 5, 1],
    ];
    for (const one of [...start, ...ops]) use(world, one);
    expect(world.slipped).toEqual([]);
    for (const record of shelf.records.value.values()) {
      if (!isGraded(record)) continue;
      if (isBad(world, record.id)) {
        seen.bad++;
        expect(says(record.id).filter((text) => text.includes(FIT))).toEqual([]);
        expect(gradeNow(record).why).toMatch(/: smell only, it never goes into a drink\.$/);
      } else if (gradeNow(record).grade === FIT) seen.fit++;
      if (isOf('tasting', record)) seen.drinks++;
    }
  });
  fc.assert(property, { numRuns: 300 });
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(200);
});
