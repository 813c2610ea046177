import { afterAll, describe, expect, test, vi } from 'vitest';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { isLabelled, isOf, kindOf, type AnyRecord } from '../../src/records/kind/kinds';
import { readBackup } from '../../src/records/backup/backupFile';
import { readRecord } from '../../src/records/kind/record';
import type { Run, RunEvent } from '../../src/records/kind/run';
import { shelf, takeIn } from '../../src/records/shelf';
import { loadTask } from '../../src/tasks';
import { fold, freshRun } from '../../src/tasks/engine/fold';
import { withPresets } from '../../src/tasks/engine/leaving';
import { placeOf } from '../../src/tasks/engine/place';
import type { Step } from '../../src/tasks/engine/task';
import { nextsOf } from '../../src/app/record/nexts';
import { describe as wordsOf } from '../../src/app/describe/describe';
import { calledOf } from '../../src/workshop/thing/labelled';
import { dayOfMoment } from '../../src/workshop/today';

const written: { record?: AnyRecord; event?: RunEvent }[] = [];
vi.mock('../../src/records/door', () => ({
  write: async (changes: typeof written) => void written.push(...changes),
}));
afterAll(() => void (shelf.records.value = new Map()));

/** Every sentence and every option that a step shows; parts of a formula are of materials, not of vials. */
function textsOf({ say, more = [], offers = [], ask = [], results = [], problem = '', pad }: Step): string[] {
  const fields = ask.filter(({ unit }) => unit !== 'parts');
  return [
    ...[say, problem, ...more, ...offers.map(({ words }) => words), pad?.live(1) ?? '', pad?.expects?.tag ?? ''],
    ...fields.flatMap(({ title, help = '', options = [] }) => [title, help, ...options.map(({ label }) => label)]),
    ...results.flatMap(({ label, how }) => [label, ...how.inputs.map(({ words }) => words)]),
  ];
}

/** What names a vial or bottle by its code without saying how strong it is. */
function bareIn(texts: readonly string[]): string[] {
  const codes = [...shelf.records.value.values()].flatMap((record) => {
    if (!isLabelled(record)) return [];
    const { code, strength } = calledOf(record);
    return strength ? [code] : [];
  });
  const bare = new RegExp(`\\b(?:${[...new Set(codes)].join('|')})\\b(?! (?:neat|[\\d.]+ (?:%|mg/)))`);
  return texts.filter((text) => bare.test(text));
}

/** Every step of a run, as it stood when the run was there. */
async function stepsOf(run: Run, events: readonly RunEvent[]): Promise<Step[]> {
  const task = (await loadTask(run.task))!;
  return events.flatMap(({ type }, cut) => {
    if (type !== 'go') return [];
    const paused = fold(events.slice(0, cut));
    const state = fold(events.slice(0, cut), { ...freshRun, presets: withPresets(task, paused).presets });
    const steps = task.steps(state);
    return [steps[placeOf(steps, state)]!];
  });
}

async function bareInRuns(runs: readonly Run[], events: readonly RunEvent[]): Promise<string[]> {
  const steps = await Promise.all(
    runs.map((run) =>
      stepsOf(
        run,
        events.filter((event) => event.run === run.id),
      ),
    ),
  );
  return bareIn(steps.flat().flatMap(textsOf));
}

describe('the demo', async () => {
  shelf.records.value = new Map();
  const { setUpDemo } = await import('../../src/app/demo/setUp');
  await setUpDemo();
  const events = written.flatMap(({ event }) => event ?? []);
  const runs = written.flatMap(({ record }) => (record && isOf('run', record) ? record : []));
  const records = shelf.records.value;
  const dayOf = new Map(runs.flatMap((run) => run.kept.map((id) => [id, dayOfMoment(run.endedAt!)] as const)));

  test('names every vial and bottle in full at every step of its runs', async () => {
    shelf.records.value = records;
    expect(bareIn(['Take ‹CARD›.', 'CARD 1 % · x', 'CARD neat', 'CARD'])).toEqual(['Take ‹CARD›.', 'CARD']);
    expect((await Promise.all(runs.map((run) => stepsOf(run, events)))).length).toBeGreaterThan(15);
    expect(await bareInRuns(runs, events)).toEqual([]);
  });

  test('names them in full in lists and on pages', () => {
    shelf.records.value = records;
    const shown = [...records.values()].filter((record) => !isOf('material', record));
    const texts = shown.flatMap((record) => {
      const { title, line, code = '', facts = [], results = [] } = wordsOf(record);
      return [
        title,
        line,
        code,
        ...facts.flatMap(([label, text]) => [label, text]),
        ...results.map(({ label }) => label),
        ...nextsOf(record, false).map(({ words }) => words),
      ];
    });
    expect(bareIn(texts)).toEqual([]);
  });

  test('has the day of its run on everything that was made', () => {
    const made = [...records.values()].flatMap((record) => ('madeOn' in record ? [record] : []));
    expect(made.length).toBeGreaterThan(8);
    expect(made.map(({ id, madeOn }) => [id, madeOn])).toEqual(made.map(({ id }) => [id, dayOf.get(id)]));
    for (const [id, day] of dayOf) expect([id, dayOfMoment(records.get(id)!.made)]).toEqual([id, day]);
  });
});

test('runs of the first version name every vial and bottle in full', async () => {
  const text = readFileSync(resolve(import.meta.dirname, '../fixtures/paused/backup.json'), 'utf8');
  const opened = readBackup(text);
  if (!opened.ok) throw new Error(opened.why);
  const { records, events } = opened.content as { records: readonly AnyRecord[]; events: readonly RunEvent[] };
  shelf.records.value = new Map();
  for (const record of records) {
    const now = readRecord(kindOf(record), record);
    if (now.ok && record.kind !== 'run') takeIn([now.value]);
  }
  const runs = records.filter((record): record is Run => record.kind === 'run');
  expect(await bareInRuns(runs, events)).toEqual([]);
});
