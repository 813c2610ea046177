import { commitMany } from '../store/bulk';
import type { Change } from '../store/change';
import { compareCopies } from './compare';
import { commit, remember, remembered, storedState } from '../store/database';
import { erase, openHoldings, rewrite, writeLine, type Holdings } from './holdings';
import { appendBatch } from './journalFile';
import { batchOf } from './journalRead';
import type { Answer, Ask, Question, Told } from './journalTalk';
import { joinedWords, lookedWords, putBackWords, refilledWords } from './journalWords';
import { batchesFor, fillStore, lookThrough, whatStoreLacks } from './mend';
import type { State } from '../store/state';

const day = 86_400_000; // ms
let own: Holdings | null = null;
/** Why the journal does not hold everything, '' when it does. */
let why = '';

const fine: Omit<Told, 'why'> = { mended: [], refilled: '', possible: true };

const elsewhere =
  'The database is empty here and another window of Minim holds the second copy. Close the other window and open this one again.';

/** Questions are worked off one after the other; what takes long goes on beside them. */
let queue = Promise.resolve();
addEventListener('message', ({ data }: MessageEvent<Question>) => {
  queue = queue.then(async () => {
    const given = data.do === 'commit' ? await commitBoth(data.changes) : { told: await answer(data).catch(unable) };
    postMessage({ ask: data.ask, ...given } satisfies Answer);
  });
});

function unable(error: unknown): Told {
  return { ...fine, why: said(error) };
}

/** Into the store, and when it is on the disk there, into the journal; what the journal cannot take is stored nevertheless. */
async function commitBoth(changes: readonly Change[]): Promise<Omit<Answer, 'ask'>> {
  let state: State;
  try {
    state = await commit(changes);
  } catch (error) {
    const { name, message } = error instanceof Error ? error : new Error(String(error));
    return { failed: { name, message }, told: { ...fine, why, possible: own !== null } };
  }
  return { state, told: own ? await append(own, state, changes).catch(unable) : { ...fine, why, possible: false } };
}

async function answer(question: Exclude<Ask, { do: 'commit' }>): Promise<Told> {
  if (question.do === 'start') return alone(start);
  if (!own) return { ...fine, why, possible: false };
  switch (question.do) {
    case 'rewrite':
      await rewrite(own);
      return { ...fine, why: (why = '') };
    case 'look through':
      return look(own);
    case 'erase':
      await erase(own);
      return { ...fine, why };
  }
}

/** One window at a time opens and compares; one that hangs is waited for only so long. */
async function alone(work: () => Promise<Told>): Promise<Told> {
  if (!navigator.locks) return work();
  try {
    return await navigator.locks.request('minim-start', { signal: AbortSignal.timeout(5000) }, work);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'TimeoutError') return work();
    throw error;
  }
}

async function start(): Promise<Told> {
  const state = await storedState();
  try {
    own = await openHoldings(state ? 400 : 5000); // ms; an empty store is not believed before the journal was read
  } catch (error) {
    why = 'This browser has no second place to write to: what you do is kept once.';
    return { ...fine, why, possible: false, mended: [`(${said(error)})`] };
  }
  if (own.held > 0 && !state) return { ...fine, why: (why = elsewhere) };
  if (own.held > 0) return { ...fine, why }; // the window that holds them has compared
  const told = await mend(own, compareCopies(state, own.files));
  if (told.why === '' && own.files.length > 1) inBackground(rewrite(own));
  else if (told.why === '') setTimeout(() => own && void lookWhenDue(own), 5000);
  return told;
}

async function mend(own: Holdings, mending: ReturnType<typeof compareCopies>): Promise<Told> {
  switch (mending.do) {
    case 'nothing':
      return { ...fine, why };
    case 'top up the second copy':
      for (const batch of await batchesFor(mending.writes)) appendBatch(own.main!, batch);
      return { ...fine, why, mended: [`The second copy lacked the last ${mending.writes.length} and has them now.`] };
    case 'rewrite the second copy':
      why = 'The second copy was incomplete and is being rewritten.';
      inBackground(rewrite(own));
      return { ...fine, why, mended: ['The second copy was incomplete and is being rewritten from the database.'] };
    case 'fill the database': {
      const filled = await fillStore(own.files, mending.after);
      if (filled.damagedLines > 0 || own.files.some((file) => file.damaged)) inBackground(rewrite(own));
      const words = refilledWords(filled);
      return { ...fine, why, refilled: filled.state ? words : '', mended: [words] };
    }
    case 'join':
      return join(own);
  }
}

/** The journal is of a store that was lost: what today's store has not comes back, then one journal of both is written. */
async function join(own: Holdings): Promise<Told> {
  const changes = await whatStoreLacks(own.files);
  if (changes.length > 0) await commitMany({ changes });
  why = 'The second copy is being rewritten.';
  inBackground(rewrite(own));
  const records = changes.filter((change) => 'record' in change).length;
  const words = joinedWords(records);
  return { ...fine, why, refilled: changes.length > 0 ? words : '', mended: [words] };
}

async function append(own: Holdings, { store, n }: State, changes: readonly Change[]): Promise<Told> {
  const other = own.main?.head && own.main.head.store !== store;
  if (other && !own.since) return join(own); // the store was thrown away while the window was open
  try {
    await writeLine(own, store, batchOf(n, changes));
    if (!own.since) why = '';
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    why = full
      ? 'This phone has no room left for the second copy: what you do now is kept once.'
      : `The second copy cannot be written (${said(error)}): what you do now is kept once.`;
  }
  return { ...fine, why };
}

/** Once a day both copies are compared line by line. */
async function lookWhenDue(own: Holdings): Promise<void> {
  const last = Number((await remembered('looked')) ?? 0);
  const now = Date.now();
  if (now - last > day || last > now) postMessage({ told: await look(own) } satisfies Answer);
}

async function look(own: Holdings): Promise<Told> {
  const looked = await lookThrough(own.files);
  await remember('looked', Date.now());
  if (looked.journalStale || own.files.length > 1) await rewrite(own);
  return { ...fine, why, mended: lookedWords(looked), refilled: putBackWords(looked.putBack) };
}

function inBackground(work: Promise<void>): void {
  void work.then(
    () => {
      why = '';
      postMessage({ told: { ...fine, why } } satisfies Answer);
    },
    (error: unknown) => {
      why = `The second copy cannot be rewritten (${said(error)}): what you do now is kept once.`;
      postMessage({ told: { ...fine, why } } satisfies Answer);
    },
  );
}

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
