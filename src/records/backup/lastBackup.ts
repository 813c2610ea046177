import { remember, remembered, storedState } from '../store/database';

/** When the last backup was made, and how much had been written by then. */
interface LastBackup {
  readonly at: number;
  readonly records: number;
}

/** Notes that a backup was made now. */
export async function noteBackup(): Promise<void> {
  const state = await storedState();
  await remember('backup', { at: Date.now(), records: state?.records ?? 0 } satisfies LastBackup);
}

/** Notes that that many records came out of a backup made at a time (ms since 1970): they are no new work. */
export async function noteRestored(records: number, made: number): Promise<void> {
  const last = (await remembered('backup')) as LastBackup | undefined;
  const at = Number.isNaN(made) ? Date.now() : made;
  await remember('backup', { at: last?.at ?? at, records: (last?.records ?? 0) + records } satisfies LastBackup);
}

/** What is not in any backup: records written since the last one, and the days since; null days when there was none. */
export async function sinceBackup(): Promise<{ records: number; days: number | null }> {
  const [state, last] = [await storedState(), (await remembered('backup')) as LastBackup | undefined];
  const days = last ? Math.max(0, (Date.now() - last.at) / 86_400_000) : null; // a clock that was set back counts as today
  return { records: Math.max(0, (state?.records ?? 0) - (last?.records ?? 0)), days };
}

/** Whether a backup is worth a word: after 14 days with anything new, or after 60 records, whichever is first (our choice). */
export function isBackupDue({ records, days }: { records: number; days: number | null }): boolean {
  if (days === null) return records >= 20;
  return records >= 60 || (records > 0 && days >= 14);
}
