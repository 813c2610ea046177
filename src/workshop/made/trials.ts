import type { Batch } from '../../records/kind/batch';
import type { SinceOf } from '../../records/kind/since';
import { list } from '../../records/shelf';
import { trials, type TrialRow } from '../../tables/trials';
import { asideOf } from './bottles';
import { sinceOf } from './since';

/** A trial of a batch with what was found. */
export interface TrialNow {
  readonly trial: SinceOf<'trial'>;
  readonly row: TrialRow | undefined;
  readonly seen: readonly SinceOf<'seen'>[];
  readonly verdict: SinceOf<'verdict'> | undefined;
  /** The day on which it is to be looked at next; null when it has ended, or all days are through. */
  readonly next: string | null;
}

/** The trials of a batch, oldest first. */
export function trialsOf(batch: Batch): TrialNow[] {
  return sinceOf(batch, 'trial').map((trial) => {
    const seen = sinceOf(batch, 'seen').filter((one) => one.trial === trial.id);
    const verdict = sinceOf(batch, 'verdict').findLast((one) => one.trial === trial.id);
    const open = trial.dues.find((day) => !seen.some(({ due }) => due === day));
    return { trial, row: rowOf(trial.sort), seen, verdict, next: verdict ? null : (open ?? null) };
  });
}

/** The row of a sort of trial; undefined for one that this version does not know. */
export function rowOf(sort: string): TrialRow | undefined {
  return trials.find(({ id }) => id === sort);
}

/** The days on which a trial that begins on a day is looked at, YYYY-MM-DD. */
export function duesOf({ days }: TrialRow, begun: string): string[] {
  return days.map((n) => dayLater(begun, n));
}

/** That many days after a day, YYYY-MM-DD. */
export function dayLater(day: string, n: number): string {
  return new Date(Date.parse(day) + n * 86_400_000).toISOString().slice(0, 10);
}

/** Whole days from one day to another. */
export function daysFrom(begun: string, day: string): number {
  return Math.round((Date.parse(day) - Date.parse(begun)) / 86_400_000);
}

/** Something of a batch that is due on a day: a look at a trial, or bottles that were put aside until then. */
export interface DueOfBatch {
  readonly batch: Batch;
  readonly day: string;
  readonly trial?: TrialNow;
  /** Numbers of the bottles that were put aside. */
  readonly bottles?: readonly [from: number, to: number];
}

/** What is due of all batches until a day, soonest first. */
export function duesUntil(day: string): DueOfBatch[] {
  return list('batch')
    .flatMap((batch) => [...trialDues(batch), ...retainedDues(batch)])
    .filter((due) => due.day <= day)
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

function trialDues(batch: Batch): DueOfBatch[] {
  return trialsOf(batch).flatMap((trial) => (trial.next === null ? [] : [{ batch, day: trial.next, trial }]));
}

function retainedDues(batch: Batch): DueOfBatch[] {
  return asideOf(batch).map(({ from, to, until }) => ({ batch, day: until, bottles: [from, to] as const }));
}
