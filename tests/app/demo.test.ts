import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { isOf, kindOf, type AnyRecord } from '../../src/records/kind/kinds';
import { recordTable } from '../../src/app/record/paper';
import { storyOf } from '../../src/app/describe/story';
import { ancestors } from '../../src/records/lineage';
import { readRecord } from '../../src/records/kind/record';
import type { RunEvent } from '../../src/records/kind/run';
import { list, shelf, takeIn } from '../../src/records/shelf';
import { usualSettings } from '../../src/records/kind/settings';
import { overLines } from '../../src/workshop/drinkable/overNow';
import { loadTask } from '../../src/tasks';

/** What the demo wrote, in place of a database. */
const written: { record?: AnyRecord; event?: { run: string; seq: number } }[] = [];
vi.mock('../../src/records/door', () => ({
  write: async (changes: typeof written) => void written.push(...changes),
}));

beforeAll(async () => {
  const { setUpDemo } = await import('../../src/app/demo/setUp');
  await setUpDemo();
});
afterAll(() => void (shelf.records.value = new Map()));

const records = () => written.flatMap(({ record }) => record ?? []);

describe('the demo workshop', () => {
  test('can be read again, record by record', () => {
    for (const record of records()) {
      const read = readRecord(kindOf(record), JSON.parse(JSON.stringify(record)));
      expect(read.ok ? '' : `${record.kind}: ${read.why}`).toBe('');
    }
  });

  test('is marked as demo in every record, runs too', () => {
    expect(records().every((record) => record.demo === true)).toBe(true);
    expect(records().filter(({ kind }) => kind === 'run').length).toBeGreaterThan(15);
  });

  test('has bottles, vials, a weighed dropper, layerings, a formula and drinks', () => {
    const count = (kind: string) => records().filter((record) => record.kind === kind).length;
    const wanted = {
      bottle: 7,
      material: 6,
      vial: 8,
      dropper: 1,
      calibration: 2,
      layering: 3,
      formula: 2,
      tasting: 2,
      base: 1,
      batch: 1,
    };
    for (const [kind, number] of Object.entries(wanted)) expect([kind, count(kind)]).toEqual([kind, number]);
  });

  test('was made by the tasks themselves: strengths are near what was asked for', () => {
    for (const vial of list('vial').filter(({ contents }) => contents.length === 1))
      expect(Math.abs(vial.contents[0]!.strength.value * vial.densityGPerMl * 100 - vial.label.value)).toBeLessThan(
        vial.label.value * 0.25,
      );
  });

  test('keeps what was thinned with isopropanol out of drinks', () => {
    expect(list('vial').find(({ code }) => code === 'ION')!.grade).toBe('smell only');
  });

  test('traces a drink back to its lot and its calibration', () => {
    const back = ancestors(list('tasting').at(-1)!.id).map(({ record }) => record);
    expect(back.some((record) => isOf('bottle', record) && record.lot === '24-630')).toBe(true);
    expect(back.some((record) => isOf('calibration', record))).toBe(true);
  });

  test('has no drink and no batch over a limit, in the EU or in the US', () => {
    const drinks = records().filter((record) => isOf('batch', record) || isOf('tasting', record));
    expect(drinks.length).toBeGreaterThanOrEqual(3);
    for (const record of drinks)
      for (const jurisdiction of ['EU', 'US'] as const) {
        takeIn([{ ...usualSettings, jurisdiction } as never]);
        expect(overLines(record)).toEqual([]);
      }
    expect(list('batch')[0]!.checks.some(({ state }) => ['over', 'prohibited'].includes(state))).toBe(false);
    expect(list('batch')[0]!.although).toBeUndefined();
  });

  test('traces the batch back to four lots', () => {
    const lots = ancestors(list('batch')[0]!.id).flatMap(({ record }) => (isOf('bottle', record) ? record.lot : []));
    expect(lots).toEqual(expect.arrayContaining(['C-2208', 'R-09', 'H-31']));
    expect(lots.length).toBe(4);
  });

  test('each record of it is a table that says more than its name; a run tells every step', async () => {
    for (const record of records()) {
      const run = isOf('run', record) ? record : null;
      const events = written.flatMap(({ event }) => (run && event?.run === run.id ? event : [])) as RunEvent[];
      const story = run ? storyOf((await loadTask(run.task))!, events) : [];
      const table = recordTable(record, story);
      const told = table.split('\r\n\r\n').slice(1);
      expect([record.kind, told.some((part) => part.trim().split('\r\n').length > 1)]).toEqual([record.kind, true]);
      if (run) expect(story.flatMap(({ say, answers }) => [say, ...answers]).length).toBeGreaterThan(1);
    }
  });

  test('events of a run are numbered from 0 without a gap', () => {
    const events = written.flatMap(({ event }) => event ?? []);
    for (const run of new Set(events.map((event) => event.run))) {
      const numbers = events.filter((event) => event.run === run).map(({ seq }) => seq);
      expect(numbers).toEqual(numbers.map((_, i) => i));
    }
  });
});
