import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { kindNamed } from '../../../src/records/kind/kinds';
import { readRecord, type Stored } from '../../../src/records/kind/record';
import { withTimes, type RunEvent } from '../../../src/records/kind/run';

const fixtures = resolve(import.meta.dirname, '../../fixtures');
const backups = ['backups', 'paused', 'afternoon'].flatMap((folder) =>
  readdirSync(join(fixtures, folder)).flatMap((name) => {
    const { records = [] } = JSON.parse(readFileSync(join(fixtures, folder, name), 'utf8')) as { records?: Stored[] };
    return records;
  }),
);
const read = (record: Stored) => readRecord(kindNamed(record.kind)!, record);
const first = (kind: string) => structuredClone(backups.findLast((record) => record.kind === kind)!);

/** A stored record with another value at a place. */
function changed(kind: string, path: string, value: unknown): Stored {
  const record = first(kind) as unknown as Record<string, unknown>;
  const steps = path.split('.');
  const holder = steps.slice(0, -1).reduce((at, step) => at[step] as Record<string, unknown>, record);
  holder[steps.at(-1)!] = value;
  return record as unknown as Stored;
}

describe('what a record can hold', () => {
  test('is all that was ever stored', () => {
    expect(backups.length).toBeGreaterThan(100);
    expect(backups.map(read).filter(({ ok }) => !ok)).toEqual([]);
  });

  test.each([
    ['bottle', 'received', '10/2026'],
    ['bottle', 'received', '2026-02-30'],
    ['bottle', 'opened', '0001-01-01'],
    ['bottle', 'made', 'yesterday'],
    ['bottle', 'amountG', -1],
    ['bottle', 'amountG', 1e300],
    ['bottle', 'purity', 98],
    ['material', 'density.gPerMl', 0],
    ['material', 'density.halfWidth', -0.001],
    ['supply', 'amount', -5],
    ['vial', 'massG.value', -3],
    ['vial', 'contents.0.strength.value', 50],
    ['vial', 'madeOn', '2026-04-31'],
    ['vial', 'useBy', 'soon'],
    ['solvent', 'abv', 96],
    ['base', 'abv', 400],
    ['tasting', 'liking', 12],
    ['layering', 'strips.0.dippedAt', 'now'],
    ['calibration', 'mgPerDrop.value', 0],
    ['calibration', 'readabilityG', 0],
    ['batch', 'madeOn', '2026-13-01'],
    ['test', 'risk', 5],
    ['proportions', 'best.shares', [1]],
    ['proportions', 'bounds', []],
    ['settings', 'roomC', 0],
    ['run', 'made', ''],
  ])('is not a %s with %s of %j: it is kept as it is, and says why', (kind, path, value) => {
    const record = changed(kind, path, value);
    const result = read(record);
    expect(result).toMatchObject({ ok: false, raw: record });
    expect('why' in result && result.why).toMatch(/does not fit$/);
    expect('why' in result && result.why).toContain(kind === 'proportions' ? 'blends' : path.split('.')[0]);
  });

  test('is told where a part is missing, and how many more do not fit', () => {
    const { id, kind, v } = first('bottle');
    const result = read({ id, kind, v });
    expect('why' in result && result.why).toBe('made is missing; from is missing; material is missing; and 3 more');
  });
});

test('a step without a time is as late as the one before it, and stays in the store as it was', () => {
  const step = (seq: number, at: string): RunEvent => ({ run: 'r', seq, at, type: 'drop', key: 'k' });
  const [made, later] = ['2026-05-04T10:00:00.000Z', '2026-05-04T10:01:00.000Z'];
  const steps = [step(0, ''), step(1, later), step(2, 'yesterday')];
  expect(withTimes(steps, made).map(({ at }) => at)).toEqual([made, later, later]);
  expect(steps.map(({ at }) => at)).toEqual(['', later, 'yesterday']);
});
