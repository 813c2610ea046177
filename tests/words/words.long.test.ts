import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { hasWords, wordsIn, type Text } from '../../src/words/texts';
import { ALSO_SHOWN, allWords, sources, translated } from '../../src/words/translation';
import { inBrackets } from './inBrackets';

const { written, data } = allWords();
const all = [...new Set([...written, ...data])].sort();

describe('the words of Minim', () => {
  test('are listed by one command, as a file to translate', () => {
    const list = execFileSync(process.execPath, ['--import', 'tsx', 'src/words/list.ts'], { encoding: 'utf8' });
    expect(Object.entries(JSON.parse(list))).toEqual(all.map((text) => [text, text]));
    expect(all.length).toBeGreaterThan(2000);
  });

  test('have holes numbered from 0, each once', () => {
    const holes = (text: string) => [...text.matchAll(/\{(\d+)\}/g)].map(([, n]) => Number(n)).sort((a, b) => a - b);
    expect(all.filter((text) => holes(text).some((n, i) => n !== i))).toEqual([]);
  });

  test('hold texts of every kind, and words of the data apart', () => {
    expect(written).toEqual(expect.arrayContaining(['Add ‹{0}› of {1}.', 'Remove the demo', 'Close', ' and ']));
    expect(data).toEqual(expect.arrayContaining(['fit for drinks', 'smell only', 'stays wet', 'floral']));
    expect(written).not.toContain('fit for drinks');
  });

  test('hold no word that nothing says any more', () => {
    const said = sources().map((path) => readFileSync(`src/${path}`, 'utf8').toLowerCase());
    const gone = ALSO_SHOWN.filter((word) => !said.some((source) => source.includes(`'${word.toLowerCase()}'`)));
    expect(gone).toEqual([]);
  });

  test('hold nothing that is for the machine', () => {
    expect(all.filter((text) => /^(Shift|Alt|Tab|Escape)$|^#|[\d%}]px|^\.\w|var\(|^@|=>/.test(text))).toEqual([]);
  });
});

describe('a translation', () => {
  test('replaces every text of every source, and nothing else', () => {
    const brackets = inBrackets(written);
    for (const path of sources()) {
      const source = readFileSync(`src/${path}`, 'utf8');
      const pieces = (texts: readonly Text[], say: (pattern: string) => string) =>
        texts
          .filter(({ form }) => !form.startsWith('list'))
          .flatMap(({ pattern }) => say(pattern).split(/\{\w+\}/))
          .filter(hasWords)
          .sort();
      const before = pieces(wordsIn(path, source).texts, (pattern) => brackets[pattern] ?? pattern);
      const said = translated(path, source, brackets).replaceAll('shownHere(', '('); // a word in it is no argument
      expect(
        pieces(wordsIn(path, said).texts, (pattern) => pattern),
        path,
      ).toEqual(before);
    }
  });

  const step = 'const say = `Drop in ${n} of ${more ? `${code} more` : liquid}.`;';
  const page = '<p title="Now">\n  Made on <b>{day}</b>, keeps {x}.\n</p>;';

  test('fills the holes in its own order, holes within holes too', () => {
    const said = translated('a.ts', step, { 'Drop in {0} of {1}.': 'Von {1}: {0}.', '{0} more': 'noch `{0}`' });
    expect(said.split('\n')[1]).toBe(
      'const say = `Von ${shownHere(more ? `noch \\`${shownHere(code)}\\`` : liquid)}: ${shownHere(n)}.`;',
    );
    expect(translated('a.tsx', page, { 'Made on {0}, keeps {1}.': '{1} ab {0}', Now: 'Jetzt "da"' })).toBe(
      '<p title={"Jetzt \\"da\\""}>{x}{" ab "}<b>{day}</b></p>;',
    );
  });

  test('leaves English what it has no words for, and refuses holes that are missing or made up', () => {
    expect(translated('a.ts', step, {})).toBe(step);
    expect(() => translated('a.ts', step, { 'Drop in {0} of {1}.': 'Von {1}.' })).toThrow('other holes');
    expect(() => translated('a.ts', step, { 'Drop in {0} of {1}.': '{0} {1} {2}' })).toThrow('other holes');
    const named = "throw new Refusal('not for {t} °C', { t });";
    expect(translated('a.ts', named, { 'not for {t} °C': 'nicht bei {t} °C' })).toContain('nicht bei {t} °C');
    expect(() => translated('a.ts', named, { 'not for {t} °C': 'nicht bei {x} °C' })).toThrow('other holes');
  });
});
