import type { Run } from './kind/run';
import { readRuns } from './shelf';
import { storedEndedRuns, storedEnds } from './store/ends';

/** When a run ended, was discarded, or, where no one knows, was begun; ISO 8601. */
export function endOf({ discarded, endedAt, made }: Run): string {
  return discarded ?? endedAt ?? made;
}

/** Ended and discarded runs, the one that ended last first: all of them, read in portions between which a tap is answered. */
export async function endedRuns(): Promise<Run[]> {
  const found: { end: string; run: Run }[] = [];
  for await (const page of storedEndedRuns())
    for (const run of readRuns(page)) if (isOver(run)) found.push({ end: `${endOf(run)} ${run.id}`, run });
  return found.sort((a, b) => (a.end < b.end ? 1 : -1)).map(({ run }) => run);
}

/** The first of them, at most so many; nothing else is read. */
export async function lastRuns(most: number): Promise<Run[]> {
  return readRuns(await storedEnds(most)).filter(isOver);
}

/** One that another device went on with is over here only when it ended here, too. */
function isOver({ open, goesOn, discarded, endedAt }: Run): boolean {
  return open !== 1 && !(goesOn && !discarded && !endedAt);
}
