import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { hasWords, wordsIn } from '../../src/words/texts';
import { ALSO_SHOWN, sources } from '../../src/words/translation';

const said = sources()
  .flatMap((path) => wordsIn(path, readFileSync(`src/${path}`, 'utf8')).texts.map(({ pattern }) => pattern))
  .filter(hasWords);

/** Without its holes: their names are not read. */
const texts = [...new Set([...said, ...ALSO_SHOWN])].map((text) => ({ text, read: text.replace(/\{\w+\}/g, '…') }));

interface Retired {
  /** What is said in its place. */
  readonly say: string;
  readonly words: RegExp;
  /** Texts that may keep it, each with why. */
  readonly but?: Readonly<Record<string, string>>;
}

const PLOT = 'the line that a plot draws';
const ENDS = 'a task ends here, or an instruction with nothing to answer';

const retired: readonly Retired[] = [
  { say: 'dilute', words: /\bthin(s|ned|ning)?\b/i },
  { say: 'target', words: /\bwish(es|ed)?\b|\bwanted\b|\basked for\b/i },
  { say: 'series of glasses', words: /\b(ladder|rung|climb\w*)s?\b/i },
  {
    say: 'ingredient or material; entry of a copy',
    words: /\blines?\b/i,
    but: {
      'Line and band: the mean, {0}.{1}': PLOT,
      'It has changed more than chance allows: the newest counts, {0} (line and band).': PLOT,
      'Alike as chance allows: they count together, {0} (line and band).': PLOT,
    },
  },
  { say: 'is, is used, is shown', words: /\b(stands?|stood)\b/i },
  { say: 'no one, someone, anyone', words: /\b(no|some|any)body\b/i },
  { say: 'readability of a scale', words: /\bsteps? of (the|a|your) scale\b/i },
  { say: 'drops are counted or added', words: /^drop in\b|\b(fall|falls|fallen|falling)\b/i },
  { say: 'continue, next', words: /\b(go|goes|gone|going|went) on\b/i },
  { say: 'database, second copy', words: /\b(the|its) (store|journal)\b/i },
  { say: 'again, re-', words: /\banew\b/i },
  { say: 'will, is to', words: /\bshall\b/i },
  { say: 'Optional', words: /\bstay empty\b/i },
  { say: 'shown, detected', words: /\btold\b/i },
  { say: 'as many, what', words: /\b(whatever|so many)\b/i },
  { say: 'uncertainty', words: /\bdoubts?\b/i },
  { say: 'according to your records', words: /\bby the book\b/i },
  { say: 'archived', words: /\bput away\b/i },
  { say: 'your currency', words: /\byour money\b/i },
  { say: 'smell only', words: /\bfor the nose\b/i },
  { say: 'met, exceeded', words: /\b(ABV|limit).*\b(kept|broken)\b/i },
  { say: 'weighing; smell note', words: /\breadings?\b/i },
  { say: 'session', words: /\bsittings?\b/i },
  { say: 'deducted from stock', words: /\bcounted off\b/i },
  { say: 'past its use-by date', words: /\bpast its day\b/i },
  { say: 'worst ingredient', words: /\bworst line\b/i },
  { say: 'Better:', words: /\bbetter so\b/i },
  { say: 'linked to', words: /\b(speaks of|has to do with)\b/i },
  {
    say: 'Next, Save, or the next movement of the hand',
    words: /^(Done|Keep|In|Seen|Mixed|Tasted)$/,
    but: { Done: ENDS, Keep: 'a verdict on a layering' },
  },
  {
    say: 'a curved apostrophe or quotation mark',
    words: /'/,
    but: {
      "proposal to allow 'alcohol-free' to 0.5 % and '0.0 %' to 0.05 %": 'quoted as in the source',
      "only with the words 'contains less than 0.5 percent (or .5%) alcohol by volume'": 'quoted as in the source',
    },
  },
];

describe('retired words', () => {
  test.each(retired)('$words are not said any more: $say', ({ words, but = {} }) => {
    expect(texts.filter(({ text, read }) => words.test(read) && !(text in but)).map(({ text }) => text)).toEqual([]);
    expect(Object.keys(but).filter((text) => !texts.some((one) => one.text === text))).toEqual([]); // no longer said
  });

  test('are looked for in what is shown, not in the names of holes', () => {
    const read = texts.map((one) => one.read).join('\n');
    expect(read).not.toMatch(/\{\w+\}/);
    expect(texts.some(({ text }) => /\{line\}/.test(text))).toBe(true);
  });
});
