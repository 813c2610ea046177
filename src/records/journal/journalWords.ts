import type { Refilled } from './journalRead';

const recordsText = (n: number) => (n === 1 ? '1 record' : `${n} records`);
const stepsText = (n: number) => (n === 1 ? '1 step' : `${n} steps`);

/** What came back when the store was filled from the journal. */
export function refilledWords({ state, records, events, missing, damagedLines }: Refilled): string {
  if (!state) return 'The database is empty and the second copy cannot be read.';
  const back = `The browser had lost what was stored. Minim put back ${recordsText(records)} and ${stepsText(events)} from the second copy.`;
  const parts = missing > 0 ? missing : damagedLines;
  if (parts === 0) return `${back} Nothing is missing.`;
  return parts === 1
    ? `${back} 1 entry of it was damaged and may be missing.`
    : `${back} ${parts} entries of it were damaged and may be missing.`;
}

/** What came back from the journal of a store that was lost. */
export function joinedWords(records: number): string {
  return `The browser had lost what was stored. Minim put back ${recordsText(records)} from the second copy. Nothing is missing.`;
}

/** What came back into the store when both copies were compared; '' when nothing did. */
export function putBackWords(putBack: number): string {
  if (putBack === 0) return '';
  return putBack === 1
    ? '1 entry was missing from the database and has been restored.'
    : `${putBack} entries were missing from the database and have been restored.`;
}

/** What was found when both copies were compared, a sentence each. */
export function lookedWords(looked: {
  records: number;
  events: number;
  putBack: number;
  damagedLines: number;
}): string[] {
  const { records, events, putBack, damagedLines } = looked;
  const damaged =
    damagedLines === 1
      ? '1 entry of the second copy was damaged; it is being rewritten.'
      : `${damagedLines} entries of the second copy were damaged; it is being rewritten.`;
  return [
    `Compared ${recordsText(records)} and ${stepsText(events)} in both copies.`,
    putBackWords(putBack),
    damagedLines > 0 ? damaged : '',
  ].filter(Boolean);
}
