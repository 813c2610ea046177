import { randomFrom } from '../../core/number/randomFrom';
import { blindCodes } from '../../core/sensory/blindCodes';
import { rankingOrders, servingOrders, type TwoSampleTest } from '../../core/sensory/servingOrder';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { expectedOrder, fields, isAlone } from './fields';
import { dropsInCup, levelsOf, unitOf, type DropsInCup } from './ladder';
import { methodOf, type Method } from './methods';
import { samplesOfRun } from './samples';

/** One cup: the code that it goes by, and which sample it holds (place in the samples' names). */
export interface Cup {
  readonly code: number;
  readonly sample: number;
}

/** One set of cups, in the order to be served; a duo-trio's reference is its first and carries no question. */
export interface CupSet {
  readonly cups: readonly Cup[];
  /** Strength of the sample asked for, on a threshold ladder, in the unit of the ladder. */
  readonly level?: number;
  /** Code under the card on which the set stands, where cards are shuffled; its cups then go by their place from the left. */
  readonly card?: number;
}

/** What a taster alone shuffles so as not to know: whole sets, each in order on a card; or the cups of each set. */
export type Shuffle = 'none' | 'cards' | 'cups';

/** What is needed to say what came out. */
export interface Design {
  readonly method: Method;
  readonly samples: readonly string[];
  readonly sets: readonly CupSet[];
  readonly risk: number;
  /** Strengths of the threshold ladder, rising, and their unit. */
  readonly levels: readonly number[];
  readonly unit: string;
  /** What turns drops of the ladder into mg/kg. */
  readonly drops: DropsInCup | null;
  /** Places of the samples in the order expected before the first sip, lowest first. */
  readonly expected: readonly number[] | null;
  readonly shuffle: Shuffle;
}

const FEWEST_CARDS = 4; // our choice: among fewer a card is easily known again

/** The design of a run, or null until all is known. @throws Refusal for a ladder that cannot be made */
export function designOf(run: RunState): Design | null {
  const method = methodOf(run);
  const seed = answer(run, fields.seed);
  const samples = samplesOfRun(run)?.map(({ name }) => name);
  const tries = answer(run, fields.tries(method?.id ?? ''));
  if (!method || seed === null || !samples || tries === null) return null;
  const levels = method.id === 'threshold' ? levelsOf(run) : [];
  if (!levels) return null;
  const shuffle = shuffleOf(method, tries, isAlone(run));
  const planned = laidOut({ method, tries, samples: samples.length, levels, seed: Number(seed), shuffle });
  return {
    method,
    samples,
    levels,
    shuffle,
    sets: shuffle === 'cards' ? asTaken(planned, run) : planned,
    risk: Number(answer(run, fields.risk) ?? '0.05'),
    unit: unitOf(run),
    drops: method.id === 'threshold' ? dropsInCup(run) : null,
    expected: method.id === 'ranking' ? expectedOrder(run, samples.length) : null,
  };
}

/** A ladder is climbed in order and a few cards are known again: there only the cups of each set can be shuffled. */
export function shuffleOf(method: Method, tries: number, alone: boolean): Shuffle {
  if (!alone) return 'none';
  return method.id === 'threshold' || tries < FEWEST_CARDS ? 'cups' : 'cards';
}

interface Asked {
  readonly method: Method;
  readonly tries: number;
  readonly samples: number;
  readonly levels: readonly number[];
  readonly seed: number;
  readonly shuffle: Shuffle;
}

let last: { key: string; sets: CupSet[] } | null = null;

/** The sets as planned. A run asks for the same again and again, so the last are kept. */
function laidOut(asked: Asked): CupSet[] {
  const key = JSON.stringify({ ...asked, method: asked.method.id });
  if (last?.key !== key) last = { key, sets: setsOf(asked) };
  return last.sets;
}

function setsOf(asked: Asked): CupSet[] {
  const { method, levels, seed, shuffle } = asked;
  const orders = ordersOf(asked);
  const cards = shuffle === 'cards';
  const codes = blindCodes(cards ? orders.length : orders.flat().length, randomFrom(seed));
  const first = method.id === 'duo-trio' ? 0 : 1; // the reference is no place to choose
  let used = 0;
  return orders.map((order, i) => ({
    ...(cards ? { card: codes[i]! } : {}),
    cups: order.map((sample, k) => ({ code: cards ? first + k : codes[used++]!, sample })),
    ...(levels.length > 0 ? { level: levels[i % levels.length]! } : {}),
  }));
}

/** The sets in the order in which their cards were taken, those not taken yet after them. */
function asTaken(sets: readonly CupSet[], run: RunState): CupSet[] {
  const taken = sets.flatMap((_, i) => sets.find(({ card }) => String(card) === answer(run, fields.card(i))) ?? []);
  return [...taken, ...sets.filter((set) => !taken.includes(set))];
}

/** Samples of every set in serving order. */
function ordersOf({ method, tries, samples, levels, seed }: Asked): number[][] {
  const random = randomFrom(seed ^ 0x5bd1e995);
  if (method.id === 'ranking' || method.id === 'hedonic') return rankingOrders(samples, tries, random);
  const count = method.id === 'threshold' ? tries * levels.length : tries;
  const words = servingOrders(twoSampleTest(method), count, random);
  return words.map((word) => [...word].map((letter) => letter.charCodeAt(0) - 65));
}

/** The test of two samples whose serving orders a method takes. */
export function twoSampleTest({ id }: Method): TwoSampleTest {
  const kinds: Readonly<Record<string, TwoSampleTest>> = { preference: 'paired', threshold: '3-AFC' };
  return kinds[id] ?? (id as TwoSampleTest);
}

/** The sample that is the right answer of a set: the odd one, the one like the reference, the one with more; null for no right answer. */
export function rightSample(design: Pick<Design, 'method'>, { cups }: CupSet): number | null {
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
export function askedCups({ method }: Pick<Design, 'method'>, { cups }: CupSet): readonly Cup[] {
  return method.id === 'duo-trio' ? cups.slice(1) : cups;
}
