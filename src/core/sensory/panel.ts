/**
 * One test by several noses. Repeats of one nose are not new noses: what is said of people rests on the scatter between noses, each of them
 * one value however often it tried (cluster means with Student's t). What is said of guessing may count every try, for if no one can tell, every
 * try is a guess whoever makes it (Kunert & Meyners, Food Qual Prefer 10 (1999) 477; from memory).
 */
import { atLeast, clopperPearson } from '../number/binomial';
import { studentCdf, studentFactor95 } from '../number/student';
import { Refusal } from '../text/refusal';

/** Right answers and tries of one nose, over all its sessions. */
export interface NoseCount {
  readonly right: number;
  readonly tries: number;
}

/** What a panel shows. Shares and chances are 0 to 1. */
export interface PanelResult {
  readonly noses: number;
  readonly tries: number;
  readonly right: number;
  /** Chance of as many right in all if every answer of every nose were a guess. */
  readonly byGuessing: number;
  /** Chance of it if people on average only guess, from the scatter between noses; null for one nose. */
  readonly ofPeople: number | null;
  /** Share in which people tell them (right beyond guessing), with 95 % limits from the scatter between noses; null for one nose. */
  readonly share: { readonly value: number; readonly low: number; readonly high: number } | null;
  /** Likeness of the tries of one nose beyond chance, 0 (as if independent) to 1 (each nose always the same). */
  readonly likeness: number;
  /** How many tries of different noses all of it is worth, from the number of noses to that of tries. */
  readonly worth: number;
}

/**
 * The result of a panel, `guess` being the share right by guessing. With one try a nose it is the exact binomial and its limits of the
 * standards (ISO 4120, ISO 10399, ISO 5495); with repeats the mean of the noses' shares and t with one degree of freedom less than there
 * are noses, its error never below that of guessing. Likeness by moments, as in the beta-binomial of Ennis & Bi (J Sens Stud 13 (1998) 389; from memory).
 * @throws Refusal without a nose, or for a count that is impossible
 */
export function panelResult(counts: readonly NoseCount[], guess: number): PanelResult {
  if (counts.length === 0 || counts.some(({ right, tries }) => !(tries > 0 && right >= 0 && right <= tries)))
    throw new Refusal('a panel needs noses with tries, and no more right than tries');
  const [right, tries] = [sum(counts, 'right'), sum(counts, 'tries')];
  const noses = counts.length;
  const likeness = likenessOf(counts);
  const each = tries / noses;
  const isSingle = tries === noses;
  const people = isSingle ? singles(right, tries, guess) : clusters(counts, guess);
  const byGuessing = atLeast(right, tries, guess);
  return {
    noses,
    tries,
    right,
    byGuessing,
    ...(noses > 1 ? people : { ofPeople: null, share: null }),
    likeness,
    worth: noses > 1 ? tries / (1 + (each - 1) * likeness) : 1,
  };
}

/**
 * Chance that a panel of `noses` with `tries` each shows a difference at `risk`, which a `share` of its people always tell while all others guess: then
 * repeats help little, for every nose is of one of two kinds. By normal limits of the cluster means: arithmetic, an estimate. 0 below two noses.
 */
export function panelPower(
  panel: { noses: number; tries: number; guess: number; risk: number },
  share: number,
): number {
  const { noses, tries, guess, risk } = panel;
  if (noses < 2) return 0;
  const mean = guess + (1 - guess) * share;
  const between = share * (1 - share) * (1 - guess) ** 2;
  const within = ((1 - share) * guess * (1 - guess)) / tries;
  const error = Math.sqrt((between + within) / noses);
  let [low, high] = [0, 1e3];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (studentCdf(-middle, noses - 1) > risk) low = middle;
    else high = middle;
  }
  return error === 0 ? 1 : 1 - studentCdf(high - (mean - guess) / error, noses - 1);
}

function sum(counts: readonly NoseCount[], of: keyof NoseCount): number {
  return counts.reduce((total, one) => total + one[of], 0);
}

/** One try a nose: as the standards have it. */
function singles(right: number, tries: number, guess: number): Pick<PanelResult, 'ofPeople' | 'share'> {
  const { low, high } = clopperPearson(right, tries, 0.95);
  return { ofPeople: atLeast(right, tries, guess), share: sharesOf([right / tries, low, high], guess) };
}

function clusters(counts: readonly NoseCount[], guess: number): Pick<PanelResult, 'ofPeople' | 'share'> {
  const shares = counts.map(({ right, tries }) => right / tries);
  const n = shares.length;
  if (n < 2) return { ofPeople: null, share: null };
  const mean = shares.reduce((total, one) => total + one, 0) / n;
  const between = shares.reduce((total, one) => total + (one - mean) ** 2, 0) / (n - 1);
  const guessing = counts.reduce((total, { tries }) => total + (guess * (1 - guess)) / tries, 0) / n;
  const error = Math.sqrt(Math.max(between, guessing) / n);
  const half = studentFactor95(n) * error;
  return {
    ofPeople: 1 - studentCdf((mean - guess) / error, n - 1),
    share: sharesOf([mean, Math.max(0, mean - half), Math.min(1, mean + half)], guess),
  };
}

/** Shares right as shares told: what guessing gives taken off, not below 0. */
function sharesOf([value, low, high]: readonly [number, number, number], guess: number): PanelResult['share'] {
  const told = (x: number) => Math.max(0, (x - guess) / (1 - guess));
  return { value: told(value), low: told(low), high: told(high) };
}

/** Excess of the scatter between noses over that of chance, as a share of the most there could be. */
function likenessOf(counts: readonly NoseCount[]): number {
  const n = counts.length;
  const mean = sum(counts, 'right') / sum(counts, 'tries');
  if (n < 2 || mean === 0 || mean === 1) return 0;
  const shares = counts.map(({ right, tries }) => right / tries);
  const middle = shares.reduce((total, one) => total + one, 0) / n;
  const between = shares.reduce((total, one) => total + (one - middle) ** 2, 0) / (n - 1);
  const most = mean * (1 - mean);
  const chance = counts.reduce((total, { tries }) => total + most / tries, 0) / n;
  return most > chance ? Math.min(1, Math.max(0, (between - chance) / (most - chance))) : 0;
}
