import { planMerge } from '../../../src/records/backup/merge';
import type { BackupContent } from '../../../src/records/backup/backupFile';
import { stampsKept, type Stored } from '../../../src/records/kind/record';
import type { RunEvent } from '../../../src/records/kind/run';

export type Any = Stored & Record<string, any>;

/** A device as far as a merge knows it: what is stored on it, and a clock that all share. */
export interface Device {
  records: Map<string, Any>;
  events: RunEvent[];
}

export const clock = {
  minute: 0,
  now: () => new Date(Date.UTC(2026, 0, 1, 0, clock.minute++)).toISOString(),
};

export function device(records: readonly Any[] = []): Device {
  return { records: new Map(records.map((one) => [one.id, one])), events: [] };
}

/** Stores as the shelf does: with when it was written, and when before. */
export function write(on: Device, id: string, change: object, written = clock.now()): void {
  const before = on.records.get(id) as Any;
  const earlier = [...(before?.['earlier'] ?? []), ...(before?.['written'] ? [before['written']] : [])];
  on.records.set(id, {
    ...before,
    ...change,
    written,
    ...(earlier.length > 0 && { earlier: earlier.slice(-stampsKept) }),
  });
}

export function backupOf({ records, events }: Device): BackupContent {
  return structuredClone({ made: '', records: [...records.values()], events, missing: 0 });
}

/** Restores a file; gives the plan. */
export function bring(file: BackupContent, to: Device) {
  const plan = planMerge(file, to);
  for (const change of plan.changes) {
    if ('record' in change) to.records.set(change.record.id, change.record as Any);
    if ('event' in change) {
      if (to.events.some(({ run, seq }) => run === change.event.run && seq === change.event.seq))
        throw new Error('a step was stored over another one');
      to.events.push(change.event);
    }
  }
  return plan;
}

export const bottle = (id: string, more: object = {}): Any => ({
  id,
  kind: 'bottle',
  v: 1,
  made: '2026-01-01T00:00:00.000Z',
  from: [],
  material: 'm',
  supplier: '',
  lot: `L-${id}`,
  grade: 'fit for drinks',
  amountG: 20,
  written: '2025-01-01T00:00:00.000Z',
  ...more,
});
