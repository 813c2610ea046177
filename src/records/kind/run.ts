import * as z from 'zod/mini';
import { moment, whole } from './ranges';
import { envelope, type Kind } from './record';

const schema = z.object({
  ...envelope('run'),
  task: z.string(),
  /** 1 while the run can be resumed; gone when it has ended (the database finds open runs by it). */
  open: z.optional(z.literal(1)),
  endedAt: z.optional(moment),
  /** When it was discarded, UTC, ISO 8601: off the Bench, and resumed from its page in the Book. */
  discarded: z.optional(moment),
  /** Another device went on with it, as the run of that id, when it had that many steps. */
  goesOn: z.optional(z.object({ run: z.string(), steps: whole })),
  /** It was parted from that run: two went on with it under one id. */
  partOf: z.optional(z.string()),
  /** What it ended in. */
  kept: z.array(z.string()),
  /** Title when last written, for the lists. */
  title: z.string(),
});

/** One walk through a task; what happened in it is its list of events. */
export const run = {
  kind: 'run',
  schema,
  upgrades: [],
  words: { one: 'Run', many: 'Runs' },
  shelf: null, // runs stand in the Book
  descent: null, // how a thing was made, not what of
  search: null,
  label: false,
  edit: false,
  repeat: true,
  page: {
    title: ({ title }) => title,
    line: ({ endedAt, discarded }) => [discarded ? 'discarded' : endedAt ? 'finished' : 'paused'],
    facts: () => [],
  },
} as const satisfies Kind<Run>;
export type Run = z.output<typeof schema>;

/** One thing that happened in a run. `seq` counts from 0 without a gap; `at` is UTC, ISO 8601. */
export const runEvent = z.object({
  run: z.string(),
  seq: z.number(),
  at: z.string(),
  /** go: show step `key`, `text` names the step left as done, if any · typed: field `key` holds `text` · preset: nothing was typed in
   *  field `key`, and `text` was in it when its screen was left · drop, count, undo: tap pad `key` · mark, unmark: the moment `key` happened. */
  type: z.enum(['go', 'typed', 'preset', 'drop', 'count', 'undo', 'mark', 'unmark']),
  key: z.string(),
  text: z.optional(z.string()),
  by: z.optional(whole),
  /** The device that it happened on; steps of older versions do not say. */
  who: z.optional(z.string()),
  /** Of a step left as done: how the Book tells it, with what was answered and counted by then. */
  told: z.optional(z.object({ say: z.string(), answers: z.array(z.tuple([z.string(), z.string()])) })),
});
export type RunEvent = z.output<typeof runEvent>;

/** The steps of a run with a time each: one whose own is none is as late as the step before it. What is stored stays as it is. */
export function withTimes(events: readonly RunEvent[], made: string): RunEvent[] {
  let last = made;
  return events.map((event) => {
    const isTime = moment.safeParse(event.at).success;
    last = isTime ? event.at : last;
    return isTime ? event : { ...event, at: last };
  });
}
