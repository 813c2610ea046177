import { describe, expect, test } from 'vitest';
import law from '../reference/law.json';
import { differences, lawTables, linesOf, type LawTables } from './law';

const pinned = { ...law, cramerClasses: undefined } as unknown as Record<string, string[]>;
pinned.cramerClasses = Object.entries(law.cramerClasses).flatMap(([name, list]) =>
  list.split(' ').map((cas) => `${name} | ${cas}`),
);

/** Numbers of a row of chance (Park and Miller), so that a failing slip is planted again at the next run. */
function chance(seed: number) {
  let state = seed;
  return (below: number) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}

type Row = Record<string, unknown>;
type Draw = (below: number) => number;

const CHOICES: Readonly<Record<string, readonly unknown[]>> = {
  jurisdiction: ['EU', 'US'],
  unit: ['mg/kg', 'mg/L'],
  effect: ['limit', 'label'],
  drink: ['any', 'alcoholic', 'non-alcoholic'],
  outside: ['silent', 'ask', 'not allowed'],
  level: ['primary', 'secondary', 'replaced', 'proposal', 'memory'],
  per: ['kg bw', 'person'],
  where: ['mint', 'cloudy', 'cider', undefined],
  whereNot: ['bitter', undefined],
  unless: ['alcoholic', undefined],
  partSaid: [true, undefined],
  cramerClass: ['I', 'II', 'III'],
};

/** One wrong digit in a number or a text, or another letter where the text has no digit; null where nothing can be wrong. */
function slipped(value: unknown, draw: Draw): unknown {
  if (typeof value === 'number') return slippedNumber(value, draw);
  if (typeof value === 'string' && value !== '') return slippedText(value, draw);
  if (Array.isArray(value) && value.length > 0) {
    const at = draw(value.length);
    return value.map((one, i) => (i === at ? slipped(one, draw) : one));
  }
  if (value !== null && typeof value === 'object') {
    const keys = Object.keys(value);
    const key = keys[draw(keys.length)]!;
    return { ...value, [key]: slipped((value as Row)[key], draw) };
  }
  return value;
}

function slippedNumber(value: number, draw: Draw): number {
  if (draw(3) === 0) return value === 0 ? 1 : [value * 10, value / 10, value * 1.5][draw(3)]!;
  return Number(slippedText(String(Number(value.toPrecision(12))), draw));
}

function slippedText(text: string, draw: Draw): string {
  const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
  const letters = [...text.matchAll(/[a-z]/gi)].map(({ index }) => index);
  const places = digits.length > 0 ? digits : letters;
  const at = places[draw(places.length)]!;
  const other = digits.length > 0 ? String((Number(text[at]) + 1 + draw(9)) % 10) : text[at] === 'q' ? 'x' : 'q';
  return text.slice(0, at) + other + text.slice(at + 1);
}

/** The tables with one slip in one field of one row, and what was done. */
function withSlip(name: keyof LawTables, draw: Draw): { tables: LawTables; what: string } {
  const rows = lawTables[name] as unknown as readonly Row[];
  const at = draw(rows.length);
  const row = rows[at]!;
  const fields = Object.keys(row).filter((key) => key !== 'note' && slippable(row[key]));
  const field = fields[draw(fields.length)]!;
  const others = CHOICES[field]?.filter((one) => one !== row[field]);
  const wrong = others ? others[draw(others.length)] : slipped(inUse(row, field), draw);
  const what = `${name}[${at}].${field}: ${JSON.stringify(row[field])} → ${JSON.stringify(wrong)}`;
  const changed = rows.map((one, i) => (i === at ? { ...one, [field]: wrong } : one));
  return { tables: { ...lawTables, [name]: changed } as LawTables, what };
}

/** The value of a field; of factors only those of numbers that the row names, to five decimals. */
function inUse(row: Row, field: string): unknown {
  if (field !== 'as') return row[field];
  const named = row.cas as readonly string[];
  const factors = Object.entries(row.as as Record<string, number>).filter(([cas]) => named.includes(cas));
  return Object.fromEntries(factors.map(([cas, factor]) => [cas, Number(factor.toFixed(5))]));
}

function slippable(value: unknown): boolean {
  return value !== null && value !== '' && value !== undefined && !(Array.isArray(value) && value.length === 0);
}

const names = Object.keys(lawTables) as (keyof LawTables)[];

describe('a slip in a table of law or intake', () => {
  test.each(names)('%s: 60 planted slips of a digit, unit, flag, CAS number or name are all noticed', (name) => {
    const draw = chance(20261130);
    const planted = Array.from({ length: 60 }, () => withSlip(name, draw));
    const missed = planted.filter(({ tables }) => differences(linesOf(tables), pinned).length === 0);
    expect(missed.map(({ what }) => what)).toEqual([]);
  });

  test('a row that is gone, and a row that stands twice, are noticed', () => {
    for (const name of names) {
      const rows = lawTables[name] as readonly unknown[];
      for (const changed of [rows.slice(1), [...rows, rows[0]!]]) {
        const tables = { ...lawTables, [name]: changed } as LawTables;
        expect(differences(linesOf(tables), pinned).length, name).toBeGreaterThan(0);
      }
    }
  });

  test('a number in a note is noticed', () => {
    const limits = lawTables.limitsEu.map((row) =>
      row.note?.includes('35 mg/kg') ? { ...row, note: '53 mg/kg' } : row,
    );
    expect(differences(linesOf({ ...lawTables, limitsEu: limits }), pinned)).toHaveLength(2);
  });

  test('without a slip nothing is said', () => expect(differences(linesOf(lawTables), pinned)).toEqual([]));
});
