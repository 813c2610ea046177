import { blindCodes } from '../../core/blindCodes';
import { rankingOrders, servingOrders, type TwoSampleTest } from '../../core/servingOrder';
import { ladder } from '../../core/threshold';
import { valueOf } from '../fields';
import type { RunState } from '../fold';
import { fields, methodOf, sampleNames, type Method } from './fields';

/** One cup: the code on it, and which sample it holds (place in the samples' names). */
export interface Cup {
  readonly code: number;
  readonly sample: number;
}

/** One set of cups, in the order to be served; a duo-trio's reference is its first and carries no question. */
export interface CupSet {
  readonly cups: readonly Cup[];
  /** Strength of the sample asked for, on a threshold ladder, mg/kg. */
  readonly level?: number;
}

/** A whole test, laid out before the first sip. It follows from the answers to its questions and the number drawn for it. */
export interface Design {
  readonly method: Method;
  readonly samples: readonly string[];
  readonly sets: readonly CupSet[];
  readonly risk: number;
  /** Strengths of the threshold ladder, rising, mg/kg. */
  readonly levels: readonly number[];
}

/** The design of a run, or null until all is known. @throws RangeError for a ladder that does not rise */
export function designOf(run: RunState): Design | null {
  const method = methodOf(run);
  const seed = Number(run.typed['seed']);
  const samples = sampleNames(run);
  const tries = valueOf(run, fields.tries(method?.id ?? ''));
  if (!method || run.typed['seed'] === undefined || !samples || tries === null) return null;
  const levels = method.id === 'threshold' ? levelsOf(run) : [];
  if (!levels) return null;
  const orders = ordersOf({ method, tries, samples: samples.length, levels: levels.length, seed });
  const codes = blindCodes(orders.flat().length, randomFrom(seed));
  let used = 0;
  const sets = orders.map((order, i) => ({
    cups: order.map((sample) => ({ code: codes[used++]!, sample })),
    ...(levels.length > 0 ? { level: levels[i % levels.length]! } : {}),
  }));
  return { method, samples, sets, risk: Number(valueOf(run, fields.risk) ?? '0.05'), levels };
}

function levelsOf(run: RunState): number[] | null {
  const top = valueOf(run, fields.top);
  const factor = valueOf(run, fields.factor);
  const count = valueOf(run, fields.levels);
  return top === null || factor === null || count === null ? null : ladder(top, Number(factor), count);
}

interface Asked {
  readonly method: Method;
  readonly tries: number;
  readonly samples: number;
  readonly levels: number;
  readonly seed: number;
}

/** Samples of every set in serving order. */
function ordersOf({ method, tries, samples, levels, seed }: Asked): number[][] {
  const random = randomFrom(seed ^ 0x5bd1e995);
  if (method.id === 'ranking' || method.id === 'hedonic') return rankingOrders(samples, tries, random);
  const kinds: Readonly<Record<string, TwoSampleTest>> = { preference: 'paired', threshold: '3-AFC' };
  const kind = kinds[method.id] ?? (method.id as TwoSampleTest);
  const words = servingOrders(kind, method.id === 'threshold' ? tries * levels : tries, random);
  return words.map((word) => [...word].map((letter) => letter.charCodeAt(0) - 65));
}

/**
 * Numbers from 0 up to, not including, 1, the same for the same seed (32 bits): the mulberry32 generator, public domain.
 * The seed itself is drawn from the phone's own source of chance.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The sample that is the right answer of a set: the odd one, the one like the reference, the one with more; null for no right answer. */
export function rightSample(design: Design, { cups }: CupSet): number | null {
  switch (design.method.id) {
    case 'triangle': {
      const ones = cups.filter(({ sample }) => sample === 1).length;
      return ones === 1 ? 1 : 0;
    }
    case 'duo-trio':
      return cups[0]!.sample;
    case 'paired':
    case 'threshold':
      return 1;
    default:
      return null;
  }
}

/** The cups that can be named in an answer: all but a duo-trio's reference. */
export function askedCups({ method }: Design, { cups }: CupSet): readonly Cup[] {
  return method.id === 'duo-trio' ? cups.slice(1) : cups;
}
