/** Which blend to judge next, which is best so far, and when it is enough. */
import { Refusal } from '../text/refusal';
import { beliefAfter, type Belief, type Expected } from './belief';
import type { Shares } from './region';
import { pureError, type Judged } from './scheffe';

/** Our choice: told apart is what differs by twice its standard uncertainty. */
const APART = 2;
/** Points; where no blend has an expected improvement above this, another is not worth a sniff. Our choice, from simulated noses. */
const LITTLE = 0.16;
/** Likings after which it ends in any case. Our choice: beyond it little is gained. */
const MOST = 30;
/** Our choice: blends nearer than this (distance in shares) are neighbours of the best, not rivals. */
const NEIGHBOUR = 0.2;

/** A blend and what is expected of it, points of liking. */
export interface Candidate {
  readonly shares: Shares;
  readonly expected: Expected;
}

/** What the likings so far say. Shares are fractions, likings and uncertainties points. */
export interface Standing {
  readonly best: Candidate;
  /** The best of the blends that are not its neighbours; null where there is none. */
  readonly runnerUp: Candidate | null;
  /** By how much the best is expected to be better than that. */
  readonly lead: Expected | null;
  readonly toldApart: boolean;
  /** What to judge next: where one judgement tells most of a gain; and the expected improvement there. */
  readonly next: Shares;
  readonly gain: number;
  /** Why it may stop; null while another blend is worth it. */
  readonly enough: null | 'clear' | 'little to gain' | 'many';
  readonly belief: Belief;
}

/**
 * Where a search has come to after some likings, 1 to 9 points each, among blends that can be made (shares, fractions). The
 * first of equals is taken, so that the same likings give the same proposal.
 * Source: augmented expected improvement, Huang, Allen, Notz & Zeng, J. Glob. Optim. 34 (2006) 441; when it is enough is our choice.
 * @throws Refusal without likings, or without blends to choose from
 */
export function standing(judged: readonly Judged[], candidates: readonly Shares[]): Standing {
  if (candidates.length === 0) throw new Refusal('there is no blend to choose from');
  const belief = beliefAfter(judged);
  const all = candidates.map((shares) => ({ shares, expected: belief.at(shares) }));
  const next = all.reduce((most, one) => (one.expected.worth > most.expected.worth ? one : most));
  const best = highest(all)!;
  const runnerUp = highest(all.filter(({ shares }) => distance(shares, best.shares) > NEIGHBOUR));
  const lead = runnerUp && belief.between(best.shares, runnerUp.shares);
  const most = Math.max(...all.map(({ expected }) => expected.gain));
  const toldApart = lead !== null && lead.value >= APART * lead.uncertainty;
  const many = judged.length >= MOST;
  return {
    best,
    runnerUp,
    lead,
    toldApart,
    next: next.shares,
    gain: next.expected.gain,
    enough: most < LITTLE ? (toldApart ? 'clear' : 'little to gain') : many ? 'many' : null,
    belief,
  };
}

/**
 * How well the nose repeats: SD of one liking on the scale of the scores, from blends judged more than once; null where none was.
 * Source: pooled variance, arithmetic.
 */
export function repeatability(judged: readonly Judged[]): { readonly sd: number; readonly freedom: number } | null {
  const { squares, freedom } = pureError(judged);
  return freedom === 0 ? null : { sd: Math.sqrt(squares / freedom), freedom };
}

function highest(all: readonly Candidate[]): Candidate | null {
  return all.reduce<Candidate | null>(
    (top, one) => (top === null || one.expected.value > top.expected.value ? one : top),
    null,
  );
}

function distance(one: Shares, other: Shares): number {
  return Math.hypot(...one.map((share, i) => share - other[i]!));
}
