import { list } from '../../records/shelf';
import { descriptorFamilies } from '../../tables/descriptors';
import type { RunState } from '../engine/fold';
import { familyOf } from './families';
import { inFan } from './strips';
import { noteOf, notesWritten } from './notes';

/** 'green, sharp' as its words, in the person's own spelling. */
export function wordsIn(text: string): string[] {
  return text
    .split(/[,;\n]/)
    .map((word) => word.trim())
    .filter(Boolean);
}

/** The text with the word in it, or without it when it is there already. */
export function toggleWord(text: string, word: string): string {
  const words = wordsIn(text);
  const kept = words.filter((one) => !same(one, word));
  return (kept.length < words.length ? kept : [...words, word]).join(', ');
}

/** Whether a word stands in the text. */
export function hasWord(text: string, word: string): boolean {
  return wordsIn(text).some((one) => same(one, word));
}

/** The person's own list: every word of a note before or now, most used first. It grows by being used; the note of number `but` is passed over. */
export function ownWords(run: RunState, but: number | null): string[] {
  const before = list('layering').flatMap(({ readings }) => readings);
  const now = notesWritten(run).flatMap(({ n, note }) => (n === but ? [] : [note]));
  const found = new Map<string, { word: string; times: number }>();
  for (const word of [...now, ...before].flatMap(({ words }) => wordsIn(words))) {
    const key = word.toLowerCase();
    found.set(key, { word: found.get(key)?.word ?? word, times: (found.get(key)?.times ?? 0) + 1 });
  }
  return [...found.values()].sort((a, b) => b.times - a.times).map(({ word }) => word);
}

const ON_FAN = 6; // words beside those chosen; our choice: a row or two

/** The words that are offered beside the fan: those in the note of that number first, then the most used, then the trade's for its strips. */
export function shownWords(run: RunState, n: number | null): { word: string; chosen: boolean }[] {
  const chosen = n === null ? [] : wordsIn(noteOf(run, n).words);
  const families = new Set(inFan(run).map(({ vial }) => familyOf(run, vial.id)));
  const own = ownWords(run, n);
  const trade = [...families].flatMap((family) => tradeWords(family, own).slice(0, 2));
  const others = [...own, ...trade].filter((word) => !chosen.some((one) => same(one, word))).slice(0, ON_FAN);
  return [...chosen.map((word) => ({ word, chosen: true })), ...others.map((word) => ({ word, chosen: false }))];
}

/** Trade words of a family that are not in the own list yet. */
export function tradeWords(family: string, own: readonly string[]): string[] {
  const words = descriptorFamilies.find(({ id }) => id === family)?.words ?? [];
  return words.filter((word) => !own.some((one) => same(one, word)));
}

function same(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
