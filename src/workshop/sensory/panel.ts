import { friedman, ranks } from '../../core/sensory/ranking';
import { panelResult, type NoseCount, type PanelResult } from '../../core/sensory/panel';
import type { Test } from '../../records/kind/test';
import { list } from '../../records/shelf';

/** The sessions of one nose in a panel. */
export interface Nose {
  readonly id: string;
  readonly sessions: readonly Test[];
}

/** What a panel of noses shows: of tests with right answers, or of an order or liking. */
export type PanelOutcome =
  | {
      readonly kind: 'told';
      readonly noses: readonly (Nose & NoseCount)[];
      readonly result: PanelResult;
      /** Share right by guessing, and the risk that the test was planned with. */
      readonly guess: number;
      readonly risk: number;
    }
  | {
      readonly kind: 'ordered';
      readonly noses: readonly Nose[];
      readonly samples: readonly string[];
      /** Mean rank (1 the least) or mean liking of each sample over the noses. */
      readonly means: readonly number[];
      /** Chance of so much by chance alone, each nose one row (Friedman). */
      readonly p: number;
    };

/** Share right by guessing, of the methods that have right answers. */
const GUESS: Readonly<Record<string, number>> = { triangle: 1 / 3, 'duo-trio': 1 / 2, paired: 1 / 2 };

/** All noses of the panel that a test belongs to: those with an id, of the same method and samples. */
export function panelOf(test: Test): Nose[] {
  const noses = new Map<string, Test[]>();
  for (const one of list('test').reverse())
    if (one.assessor !== undefined && keyOf(one) === keyOf(test))
      noses.set(one.assessor, [...(noses.get(one.assessor) ?? []), one]);
  return [...noses].map(([id, sessions]) => ({ id, sessions }));
}

/** What the panel of a test shows; null where it has no id, or its method has no panel. */
export function panelOutcome(test: Test): PanelOutcome | null {
  const noses = test.assessor === undefined ? [] : panelOf(test);
  if (noses.length === 0) return null;
  const guess = GUESS[test.test];
  if (guess !== undefined) {
    const counted = noses.map((nose) => ({ ...nose, ...countOf(nose) }));
    return { kind: 'told', noses: counted, result: panelResult(counted, guess), guess, risk: test.risk };
  }
  if (test.test !== 'ranking' && test.test !== 'hedonic') return null;
  const rows = noses.map(({ sessions }) => meansOf(sessions, test));
  const { exact, chiSquared } = friedman(rows);
  const means = test.samples.map((_, i) => rows.reduce((sum, row) => sum + row[i]!, 0) / rows.length);
  return { kind: 'ordered', noses, samples: test.samples, means, p: exact ?? chiSquared };
}

/** Method and samples; of a paired test also of what there is more, and in which order. */
function keyOf({ test, samples, attribute = '' }: Test): string {
  const names = test === 'paired' ? samples : [...samples].sort();
  return JSON.stringify([test, names, attribute]);
}

function countOf({ sessions }: Nose): NoseCount {
  const sets = sessions.flatMap((session) => session.sets.map((set) => isRight(session, set)));
  return { right: sets.filter(Boolean).length, tries: sets.length };
}

/** Whether the code named is the right one: the odd cup, the one like the reference, or the second sample. */
function isRight({ test }: Test, { cups, answer }: Test['sets'][number]): boolean {
  const asked = test === 'duo-trio' ? cups.slice(1) : cups;
  const sample = asked.find(({ code }) => code === answer[0])?.sample;
  if (sample === undefined) return false;
  if (test === 'paired') return sample === 1;
  if (test === 'duo-trio') return sample === cups[0]!.sample;
  return asked.filter((cup) => cup.sample === sample).length === 1;
}

/** Mean rank or liking of each sample of the test over all sets of one nose: one row, however often it tried. */
function meansOf(sessions: readonly Test[], { samples }: Test): number[] {
  const rows = sessions.flatMap((session) => session.sets.map((set) => rowOf(session, set)));
  return samples.map((name) => rows.reduce((sum, row) => sum + (row.get(name) ?? 0), 0) / rows.length);
}

function rowOf({ samples }: Test, { cups, answer, liking }: Test['sets'][number]): Map<string, number> {
  const scores = liking ?? ranks(answer.map((_, k) => k));
  const nameOf = (code: number) => samples[cups.find((cup) => cup.code === code)?.sample ?? -1] ?? '';
  return new Map(answer.map((code, k) => [nameOf(code), scores[k]!]));
}
