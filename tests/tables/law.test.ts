import { describe, expect, test } from 'vitest';
import law from '../reference/law.json';
import { differences, lawTables, linesOf } from './law';

/** Typed from the sources, not from the tables; the intakes, constituents and classes from what was noted while reading. */
const pinned = {
  ...law,
  cramerClasses: Object.entries(law.cramerClasses).flatMap(([name, list]) =>
    list.split(' ').map((cas) => `${name} | ${cas}`),
  ),
};

describe('every figure of law and intake', () => {
  test.each(Object.keys(pinned))('%s: each row agrees with a second list', (name) => {
    const lines = linesOf(lawTables);
    const one = (all: Record<string, string[]>) => ({ [name]: all[name]! });
    expect(differences(one(lines), one(pinned))).toEqual([]);
  });
});
