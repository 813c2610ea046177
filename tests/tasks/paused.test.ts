import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { readBackup } from '../../src/records/backup/backupFile';
import { kindOf, type AnyRecord } from '../../src/records/kind/kinds';
import { readRecord } from '../../src/records/kind/record';
import type { Run, RunEvent } from '../../src/records/kind/run';
import { shelf, takeIn } from '../../src/records/shelf';
import { loadTask } from '../../src/tasks';
import { textOf } from '../../src/tasks/engine/fields';
import { fold, freshRun } from '../../src/tasks/engine/fold';
import { withPresets } from '../../src/tasks/engine/leaving';
import { placeOf } from '../../src/tasks/engine/place';
import { dropsText } from '../../src/workshop/dropWords';

const read = (file: string) => readFileSync(resolve(import.meta.dirname, '../fixtures/paused', file), 'utf8');
const opened = readBackup(read('backup.json'));
if (!opened.ok) throw new Error(opened.why);

/** A backup of the version that recorded no presets, with runs of eight tasks, and what its screens showed at each step. */
const { records, events } = opened.content as { records: readonly AnyRecord[]; events: readonly RunEvent[] };
const screens = JSON.parse(read('screens.json')) as Record<string, string[][]>;
const runs = records.filter(({ kind }) => kind === 'run') as Run[];

beforeAll(() => {
  vi.useFakeTimers({ now: new Date('2026-11-30T12:00:00Z'), toFake: ['Date'] });
  for (const record of records) {
    const now = readRecord(kindOf(record), record);
    if (!now.ok) throw new Error(now.why);
    if (record.kind !== 'run') takeIn([now.value]);
  }
});
afterAll(() => {
  vi.useRealTimers();
  shelf.records.value = new Map();
});

/** Screens where the hand counted or weighed: such a run goes on at this very one. What is poured by volume is told on the card. */
const HAND_BUSY = /^(drops$|material$|count\.|glass\.|[tcsed]\.|dip$|fan$)/;

/** What that version said in other words. */
const inTodaysWords = (line: string) =>
  line.replace(/^Thin it first/, 'Dilute it first').replace(/, thinned to ([\d.]+ %)/, ', diluted to $1 w/w');

/** A dose is one screen now: where its drops were counted it goes on at that glass, with what is in it. */
const GLASS_OF: Record<string, string> = { drops: 'glass.1', 'glass.1': 'glass.1' };

/** Questions that today's tasks ask no more: what was answered there still counts where it can, and is told. */
const ASKED_NO_MORE = /^(more\.\d+|newTip|way|name|code|vial\.(code|made|useBy))$/;

test.each(runs.map((run) => [run.title, run] as const))('%s opens at every step as it was left', async (_, run) => {
  const task = (await loadTask(run.task))!;
  const mine = events.filter((event) => event.run === run.id);
  const cuts = mine.flatMap(({ type }, i) => (type === 'go' ? [i] : []));
  cuts.forEach((cut, at) => {
    const then = screens[run.id]![at]!.map(inTodaysWords);
    const paused = fold(mine.slice(0, cut));
    const { presets } = withPresets(task, paused);
    const state = fold(mine.slice(0, cut), { ...freshRun, presets });
    const steps = task.steps(state);
    const step = steps[placeOf(steps, state)]!;
    if (state.at !== '' && state.at !== then[0]) return; // that version had lost its step itself, and began again
    const parted = step.key === 'new-material' && step.key === then[0]; // what it asked beside the name is on the card behind it
    if (parted)
      expect([step.key, step.say, step.ask!.map((field) => `${field.name}=${textOf(state, field)}`)[0]]).toEqual(
        then.slice(0, 3),
      );
    if (step.key === then[0] && !step.card && !parted) {
      const now = (step.ask ?? []).map((field) => `${field.name}=${textOf(state, field)}`);
      expect([step.key, step.say, ...now]).toEqual(then);
      return;
    }
    const glass = run.task === 'dose' ? GLASS_OF[then[0]!] : undefined;
    if (glass !== undefined) {
      expect(step.key).toBe(glass);
      expect(step.counting!.counter).toBe('drops');
      expect(step.card!.answer!.lines[0]).toContain(dropsText(state.drops['drops'] ?? 0));
      expect(step.counting!.target !== null).toBe('aim' in state.typed);
    } else expect(then[0]).not.toMatch(HAND_BUSY);
    const goesOn = step.card !== undefined || step === steps.at(-1) || /^new-/.test(step.key);
    expect(goesOn, `${then[0]} goes on at ${step.key}`).toBe(true);
    const asked = new Map(
      steps.flatMap(({ ask = [], rows = [] }) => [...ask, ...rows]).map((field) => [field.name, field]),
    );
    for (const line of then.slice(2)) {
      const [, name = '', text = ''] = /^([^=]*)=(.*)$/.exec(line)!;
      if (text === '' || !(name in state.typed)) continue; // a preset that was left
      if (!ASKED_NO_MORE.test(name)) expect(asked.has(name), `${name} is asked on today's card`).toBe(true);
      if (asked.has(name)) expect(textOf(state, asked.get(name)!)).toBe(text);
    }
  });
});
