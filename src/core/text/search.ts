import { slipsToPrefix } from './editDistance';

/** Something to be found: its texts, each with a weight above 0 that says how much a hit in it counts. */
export interface Searchable {
  readonly id: string;
  readonly texts: readonly (readonly [text: string, weight: number])[];
}

/** Made by `searchIndex`; opaque to everyone else. */
export interface SearchIndex {
  readonly ids: readonly string[];
  readonly words: readonly string[];
  /** Bit set of the letters in each word, to pass over hopeless words quickly. */
  readonly letters: Int32Array;
  /** Per word: entry number and weight, in turn. */
  readonly places: readonly (readonly number[])[];
}

export interface Hit {
  readonly id: string;
  readonly score: number;
}

const GREEK: Readonly<Record<string, string>> = { α: 'alpha', β: 'beta', γ: 'gamma', δ: 'delta', ω: 'omega' };
const JOINED = 0.8; // our choice: a hit across the hyphens of a name counts a little less than one in a word of it
const DECIMAL = /^\d+[.,]\d+$/;
const LONGEST_JOIN = 4; // words; our choice: longer texts are sentences, not names
const EXACT = 1; // our choice, as all qualities here: exact before beginning before inside before misspelled
const BEGINNING = 0.8;
const INSIDE = 0.5;
const MISSPELLED = 0.45;
const PER_SLIP = 0.12;

/**
 * Words of a text as they are compared: small letters, no accents, Greek letters by name. A number with hyphens (CAS) is one
 * word of digits, and so is a number with a point or comma; a name with hyphens gives its parts. Any text. Our choice.
 */
export function wordsOf(text: string): string[] {
  return folded(text)
    .flatMap((chunk) => {
      if (/^[\d-]+$/.test(chunk)) return [chunk.replace(/-/g, '')];
      return DECIMAL.test(chunk) ? [chunk.replace(',', '.')] : chunk.split(/[^\p{L}\p{N}]+/u);
    })
    .filter(Boolean);
}

function folded(text: string): string[] {
  const small = text.toLowerCase();
  if (/^[\x20-\x7e]*$/.test(small)) return small.split(' ');
  return small
    .replace(/[αβγδω]/g, (letter) => GREEK[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/\s+/);
}

/** "cis-3-hexen-1-ol" also answers to "hexenol", "ethyl butyrate" to "ethylbutyrate": the letters of a name, run together. */
function joinedWords(text: string): string[] {
  const chunks = folded(text);
  const hyphened = chunks.filter((chunk) => /\p{L}[^\p{L}\s]+\p{L}/u.test(chunk));
  const whole = chunks.length > 1 && chunks.length <= LONGEST_JOIN ? [chunks.join('')] : [];
  return [...hyphened, ...whole].map((chunk) => chunk.replace(/[^\p{L}]/gu, '')).filter(Boolean);
}

/** Cuts a text into its words; the same text, as a name in many entries, once. */
type Cut = (text: string) => { readonly words: readonly string[]; readonly joined: readonly string[] };

function cutter(): Cut {
  const known = new Map<string, ReturnType<Cut>>();
  return (text) => {
    const there = known.get(text);
    if (there) return there;
    const cut = { words: wordsOf(text), joined: joinedWords(text) };
    known.set(text, cut);
    return cut;
  };
}

/** Words and weights of entries that were seen before: after a change most of a list is as it was. */
const seen = new WeakMap<Searchable, readonly (readonly [word: string, weight: number])[]>();

function weighedWords(entry: Searchable, cut: Cut): readonly (readonly [string, number])[] {
  const known = seen.get(entry);
  if (known) return known;
  const best = new Map<string, number>();
  const put = (word: string, weight: number) => {
    if (weight > (best.get(word) ?? 0)) best.set(word, weight);
  };
  for (const [text, weight] of entry.texts) {
    const { words, joined } = cut(text);
    for (const word of words) put(word, weight);
    for (const word of joined) put(word, weight * JOINED);
  }
  const words = [...best];
  seen.set(entry, words);
  return words;
}

/**
 * Makes things findable; done once for a list. Entries keep their order where scores are equal. An entry handed in again as the
 * same object costs next to nothing. Our own.
 */
export function searchIndex(entries: readonly Searchable[]): SearchIndex {
  const found = new Map<string, number[]>();
  const cut = cutter();
  entries.forEach((entry, number) => {
    for (const [word, weight] of weighedWords(entry, cut)) {
      const places = found.get(word);
      if (places) places.push(number, weight);
      else found.set(word, [number, weight]);
    }
  });
  const words = [...found.keys()];
  return {
    ids: entries.map(({ id }) => id),
    words,
    letters: Int32Array.from(words, lettersOf),
    places: [...found.values()],
  };
}

/**
 * What fits all words of a query, best first, at most `limit`. A word fits whole, as a beginning, inside (from 3 letters), or, where nothing
 * fits so, misspelled: 1 slip from 4 letters, 2 from 7. Numbers are never guessed at. An empty query finds nothing.
 * Scores and slips: our choice; a score is dimensionless.
 */
export function search(index: SearchIndex, query: string, limit: number): Hit[] {
  const asked = [...new Set(wordsOf(query))];
  if (asked.length === 0) return [];
  const total = new Float64Array(index.ids.length);
  const fits = new Int32Array(index.ids.length);
  for (const word of asked) {
    const best = bestPerEntry(index, word);
    best.forEach((score, entry) => {
      if (score === 0) return;
      total[entry]! += score;
      fits[entry]! += 1;
    });
  }
  const found: number[] = [];
  fits.forEach((count, entry) => count === asked.length && found.push(entry));
  return firstBy(total, found, limit).map((entry) => ({ id: index.ids[entry]!, score: total[entry]! }));
}

/** The `limit` entries of the highest scores, best first, in their order where scores are equal; the rest is never sorted. */
function firstBy(score: Float64Array, entries: readonly number[], limit: number): number[] {
  const scores = Float64Array.from(entries, (entry) => score[entry]!).sort();
  const least = scores[Math.max(0, scores.length - limit)]!;
  const above = entries.filter((entry) => score[entry]! > least).sort((a, b) => score[b]! - score[a]!);
  return [...above, ...entries.filter((entry) => score[entry]! === least)].slice(0, limit);
}

function bestPerEntry(index: SearchIndex, asked: string): Float64Array {
  const slips = /^\p{L}+$/u.test(asked) ? (asked.length >= 7 ? 2 : asked.length >= 4 ? 1 : 0) : 0; // our choice
  return bestWith(index, asked, 0) ?? bestWith(index, asked, slips) ?? new Float64Array(index.ids.length);
}

/** Best score of each entry for one word; null when nothing fits. */
function bestWith(index: SearchIndex, asked: string, slips: number): Float64Array | null {
  const best = new Float64Array(index.ids.length);
  const letters = lettersOf(asked);
  let any = false;
  for (let i = 0; i < index.words.length; i++) {
    const strange = letters & ~index.letters[i]!;
    if (strange !== 0 && bits(strange) > slips) continue; // a slip brings one strange letter at most
    const quality = qualityOf(asked, index.words[i]!, slips);
    if (quality === 0) continue;
    any = true;
    const places = index.places[i]!;
    for (let k = 0; k < places.length; k += 2) {
      const score = quality * places[k + 1]!;
      if (score > best[places[k]!]!) best[places[k]!] = score;
    }
  }
  return any ? best : null;
}

function qualityOf(asked: string, word: string, slips: number): number {
  if (word === asked) return EXACT;
  const closeness = asked.length / Math.max(asked.length, word.length);
  if (word.startsWith(asked)) return BEGINNING + 0.1 * closeness;
  if (asked.length >= 3 && word.includes(asked)) return INSIDE + 0.05 * closeness;
  if (slips === 0) return 0;
  const needed = slipsToPrefix(asked, word, slips);
  return needed > slips ? 0 : MISSPELLED - PER_SLIP * (needed - 1) + 0.05 * closeness;
}

/** Bit set of a word's letters and digits; other signs share bits, which only makes the sieve coarser. */
function lettersOf(word: string): number {
  let set = 0;
  for (let i = 0; i < word.length; i++) set |= 1 << (word.charCodeAt(i) & 31);
  return set;
}

function bits(set: number): number {
  let count = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) count++;
  return count;
}
