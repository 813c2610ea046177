import { signal } from '@preact/signals';
import type { Change } from '../store/change';
import { commit } from '../store/database';
import { idle } from '../store/idle';
import type { Answer, Ask, Question } from './journalTalk';
import type { State } from '../store/state';

/** How the two copies stand, for the screens. */
export interface Copies {
  /** One sentence on what the second copy lacks; '' when both hold everything. */
  readonly why: string;
  /** False where this browser has no place for a second copy. */
  readonly possible: boolean;
  /** What was mended since the start, in the order in which it was. */
  readonly mended: readonly string[];
  /** What the store had lost and got back since the start, in one sentence; '' when nothing. */
  readonly refilled: string;
}

/** The second copy: an append-only journal in the origin private file system, written by a worker. */
export const copies = signal<Copies>({ why: '', possible: true, mended: [], refilled: '' });

const patience = { start: 120_000, commit: 15_000, rewrite: 600_000, 'look through': 600_000, erase: 10_000 }; // ms

let worker: Worker | null = null;
let opened: Promise<void> = Promise.resolve();
let asked = 0;
const waiting = new Map<number, { resolve: (answer: Answer) => void; until: number }>();

interface Opening {
  /** Starts the worker. */
  spawn: () => Worker;
  /** The worker is started some time after this: the first look at the store comes first. */
  after: Promise<unknown>;
  /** Called when the store was mended. */
  onRefilled: () => void;
}

/** Opens the journal and compares it with the store; the door waits for it. */
export function openJournal({ spawn, after, onRefilled }: Opening): void {
  // Lets the first screen be painted first; a write that waits for the journal cuts that short.
  opened = after
    .then(() => Promise.race([wanted, idle(1500)]))
    .then(async () => {
      try {
        worker = spawn();
        worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => hear(data, onRefilled));
        worker.addEventListener('error', giveUp);
        await ask({ do: 'start' });
      } catch {
        giveUp();
      }
    });
}

let want: () => void;
const wanted = new Promise<void>((resolve) => (want = resolve));

/** Resolves when both copies are compared, and does not let that wait any longer. */
export function journalOpened(): Promise<void> {
  want();
  return opened;
}

/**
 * One write into both copies; resolves when it is on the disk in both, or when `copies` says that the second lacks it.
 * Rejects when nothing was stored. Without the worker the page writes the store itself.
 */
export async function commitToBoth(changes: readonly Change[]): Promise<State> {
  if (!worker) return commit(changes);
  const { state, failed } = await ask({ do: 'commit', changes });
  if (!state) throw new DOMException(failed?.message ?? 'the database does not answer', failed?.name ?? 'UnknownError');
  return state;
}

/** Writes the journal again from the store. */
export async function rewriteJournal(): Promise<void> {
  if (worker) await ask({ do: 'rewrite' });
}

/** Compares both copies line by line. */
export async function lookThroughCopies(): Promise<void> {
  if (worker) await ask({ do: 'look through' });
}

/** Removes the journal's files. */
export async function eraseJournal(): Promise<void> {
  if (worker) await ask({ do: 'erase' });
}

/** Ends the worker, so that another window can have its files. */
export function closeJournal(): void {
  worker?.terminate();
  worker = null;
}

function ask(question: Ask): Promise<Answer> {
  const number = ++asked;
  return new Promise((resolve) => {
    waiting.set(number, { resolve, until: performance.now() + patience[question.do] });
    watch();
    worker!.postMessage({ ...question, ask: number } satisfies Question);
  });
}

let watching = false;

/** One clock for all that is waited for: setting one for each tap costs more than it is worth. */
function watch(): void {
  if (watching) return;
  watching = true;
  setTimeout(() => {
    watching = false;
    const now = performance.now(); // the clock of the phone may be set
    if ([...waiting.values()].some(({ until }) => until < now)) giveUp();
    else if (waiting.size > 0) watch();
  }, 5000);
}

function hear(answer: Answer, onRefilled: () => void = () => {}): void {
  const { ask: number, told } = answer;
  const { why, possible, mended, refilled } = copies.peek();
  const fresh = told.mended.length > 0;
  if (told.why !== why || told.possible !== possible || fresh)
    copies.value = {
      why: told.why,
      possible: told.possible,
      mended: [...new Set([...mended, ...told.mended])],
      refilled: told.refilled || refilled,
    };
  if (told.refilled) onRefilled();
  if (number === undefined) return;
  waiting.get(number)?.resolve(answer);
  waiting.delete(number);
}

/** Without the worker there is one copy, and the screen says so; what it was asked last may be stored or not: the disk is read again. */
function giveUp(): void {
  closeJournal();
  const why = 'The second copy cannot be written in this browser: what you do is kept once.';
  const told = { why, mended: [], refilled: '', possible: false };
  hear({ told });
  for (const { resolve } of waiting.values()) resolve({ told });
  waiting.clear();
}
