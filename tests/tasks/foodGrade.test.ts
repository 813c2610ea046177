import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readBackup } from '../../src/records/backup/backupFile';
import { kindOf, type AnyRecord } from '../../src/records/kind/kinds';
import { readRecord } from '../../src/records/kind/record';
import type { Run, RunEvent } from '../../src/records/kind/run';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { loadTask, shelfTasks, tasks } from '../../src/tasks';
import { textOf } from '../../src/tasks/engine/fields';
import { fold, freshRun, type RunState } from '../../src/tasks/engine/fold';
import { problemsOf } from '../../src/tasks/engine/leaving';
import type { Task } from '../../src/tasks/engine/task';
import { repeatOf } from '../../src/tasks/shared/repeat';
import { batchShelf, clearPlan } from './batch/batchShelf';
import { asLeft } from './walking';

/** A question whose answer only the label of the thing in the hand gives. */
const isOfFood = (name: string) => name.split('.').some((part) => part === 'food' || part === 'grade');
const foodFields = (task: Task, run: RunState) =>
  task.steps(run).flatMap(({ ask = [] }) => ask.filter(({ name }) => isOfFood(name)));

const files = ['paused/backup.json', 'backups/v1.json'].map((file) => {
  const read = readBackup(readFileSync(resolve(import.meta.dirname, '../fixtures', file), 'utf8'));
  if (!read.ok) throw new Error(read.why);
  return read.content as { records: readonly AnyRecord[]; events: readonly RunEvent[] };
});

beforeEach(() => {
  shelf.records.value = new Map();
});

const solvent = (id: string) =>
  newRecord('solvent', { id, name: id, density: { gPerMl: 1, atC: 20, source: 't' }, food: true, dryOff: 'unknown' });
const { 'carrier.food': _, ...plan } = clearPlan;
const dilution = { bottle: 'b-linalool', strength: '1', size: '15' };

/** How to come to each such question, and two things that it may be about. */
const asked: [task: string, typed: Record<string, string>, about: [Record<string, string>, Record<string, string>]][] =
  [
    ['bottle', { 'new.name': 'an oil' }, [{}, {}]],
    ['supply', { sort: 'solvent' }, [{ solvent: 'ethanol-96' }, { solvent: 'mct' }]],
    ['dilute', dilution, [{ solvent: 'ethanol-96' }, { solvent: 'propylene-glycol' }]],
    [
      'dilute',
      { ...dilution, solvent: 'new', 'solvent.density': '1' },
      [{ 'solvent.name': 'spirit' }, { 'solvent.name': 'lamp oil' }],
    ],
    ['batch', plan, [{ carrier: 'propylene-glycol' }, { carrier: 'mct' }]],
    ['batch', { ...plan, abv: '20', spirit: '40' }, [{}, {}]],
  ];

describe.each(asked)('the grade asked in %s', (name, typed, [one, other]) => {
  beforeEach(() => takeIn([...batchShelf(), solvent('own')]));
  const runOf = (more: Record<string, string>) => ({ ...freshRun, typed: { ...typed, ...more } });

  test('is in no field before it is answered', async () => {
    const task = (await loadTask(name))!;
    const fields = foodFields(task, runOf(one));
    expect(fields.length).toBeGreaterThan(0);
    for (const field of fields) {
      expect(field.preset ?? '').toBe('');
      expect(textOf(runOf(one), field)).toBe('');
      expect(Object.keys(problemsOf({ key: '', say: '', ask: [field] }, runOf(one)))).toEqual([field.name]);
    }
  });

  test('is asked again when something else is chosen', async () => {
    if (one === other || Object.keys(one).length === 0) return;
    const task = (await loadTask(name))!;
    const [field] = foodFields(task, runOf(one));
    const good = field!.options!.map(({ value }) => value).find((value) => /yes|fit/.test(value))!;
    const answered = { [field!.name]: good };
    expect(textOf(runOf({ ...one, ...answered }), foodFields(task, runOf({ ...one, ...answered }))[0]!)).toBe(good);
    const changed = runOf({ ...one, ...answered, ...other });
    for (const again of foodFields(task, changed)) expect(textOf(changed, again)).toBe('');
  });

  test('is not brought along by a repeat', async () => {
    const task = (await loadTask(name))!;
    const all = foodFields(task, runOf(one)).map((field) => [field.name, field.options![0]!.value]);
    const run = runOf({ ...one, ...Object.fromEntries(all) });
    const again = repeatOf(task, { task: name, kept: [] } as unknown as Run, run);
    expect(Object.keys(again.typed).filter(isOfFood)).toEqual([]);
  });
});

test('no task repeats a question of food grade, by name or by the beginning of a name', async () => {
  const loaded = await Promise.all([...tasks, ...shelfTasks].map((card) => card.load()));
  const names = [
    'new.grade',
    'grade',
    'grade.ethanol-96',
    'food',
    'food.ethanol-96',
    'food.new.spirit',
    'carrier.food',
    'carrier.food.mct',
    'spirit.food',
  ];
  for (const { id, repeats = [] } of loaded)
    for (const name of names)
      expect(
        repeats.filter((one) => (one.endsWith('.') ? name.startsWith(one) : name === one)),
        `${id} ${name}`,
      ).toEqual([]);
});

test('in every run of the first version no such field is filled in but by the person, nor taken along by its repeat or its offers', async () => {
  const found = new Set<string>();
  for (const { records, events } of files) {
    shelf.records.value = new Map();
    for (const record of records) {
      const now = readRecord(kindOf(record), record);
      if (now.ok && record.kind !== 'run') takeIn([now.value]);
    }
    for (const run of records.filter(({ kind }) => kind === 'run') as Run[]) {
      const task = (await loadTask(run.task))!;
      const mine = events.filter((event) => event.run === run.id);
      const state = asLeft(task, fold(mine));
      for (const field of foodFields(task, state)) {
        found.add(field.name);
        expect(field.preset ?? '', run.title).toBe('');
        expect(textOf(state, field), run.title).toBe(state.typed[field.name] ?? '');
      }
      expect(Object.keys(repeatOf(task, run, state).typed).filter(isOfFood)).toEqual([]);
      const started = task
        .steps(state)
        .flatMap(({ offers = [] }) => offers.flatMap(({ start }) => Object.entries(start?.typed ?? {})));
      for (const [name, text] of started.filter(([key]) => isOfFood(key))) expect(state.typed[name], name).toBe(text); // the same solvent, in one sitting
    }
  }
  expect([...found].sort()).toEqual(expect.arrayContaining(['carrier.food', 'food']));
});
