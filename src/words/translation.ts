import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative, resolve, sep } from 'node:path';
import type { Plugin } from 'vite';
import { hasWords, wordsIn, type Text } from './texts.ts';

/** English pattern → pattern in the other language. */
export type Words = Readonly<Record<string, string>>;

const src = resolve(import.meta.dirname, '..');
const html = resolve(src, '../index.html');
const DESCRIPTION = /(?<=<meta name="description" content=")[^"]*/;

/** Small words that are shown and that nothing in the sources tells from names and values. */
export const ALSO_SHOWN = `
  FIT FOR DRINKS, OVER A LIMIT, SMELL ONLY, above, archived, below, blank, citric acid, clear, demo, density, dilute spirit, dissolves,
  exact, exceeded, expansion, faint, fatty oil, fifth, finished, first, flavouring, fourth, glass, heavy drinker, hours, keep, kept, label,
  labels, measured, met, minutes, natural, neat, neat oil, next, nothing, now, once, opened,
  overpowering, paused, poured, rejected, rule of thumb, second, sheet, sheets, sixth, small child, strong, substance, sugar, sweetener, third, today, try again, twice, typical, under, unknown,
  viscous, weak, weighed, wet, work, yesterday`
  .trim()
  .split(/,\s+/);

/** Whether a file holds words; a made-up workshop and this folder do not. */
function isRead(path: string): boolean {
  return /\.tsx?$/.test(path) && !/^(words|app\/demo)\//.test(path);
}

/** Files that hold words, seen from src. */
export function sources(): string[] {
  return readdirSync(src, { recursive: true, encoding: 'utf8' })
    .map((path) => path.split(sep).join('/'))
    .filter(isRead);
}

/** Everything that people read: `written` is replaced where it stands in the sources, `data` where it is shown; a word may be both. */
export function allWords(): { written: string[]; data: string[] } {
  const read = sources().map((path) => ({ path, ...wordsIn(path, readFileSync(join(src, path), 'utf8')) }));
  const asked = new Set(read.flatMap(({ data }) => data));
  const written = new Set<string>([DESCRIPTION.exec(readFileSync(html, 'utf8'))![0]]);
  const data = new Set<string>(ALSO_SHOWN);
  for (const { path, texts } of read)
    for (const { pattern } of texts.filter((text) => hasWords(text.pattern)))
      (asked.has(pattern) || path.startsWith('tables/') ? data : written).add(pattern);
  return { written: [...written].filter((text) => !asked.has(text)), data: [...data] };
}

/** A source with its words replaced; a pattern that `words` does not have stays. @throws Error where holes are missing or made up */
export function translated(path: string, source: string, words: Words): string {
  let shows = false;
  const { texts } = wordsIn(path, source);
  const within = (start: number, end: number): string => {
    const inside = texts.filter(
      (text) => text.start >= start && text.end <= end && (text.pattern in words || !hasWords(text.pattern)),
    );
    let out = '';
    let at = start;
    for (const text of inside) {
      if (text.start < at) continue; // in a hole of the one before
      out += source.slice(at, text.start) + say(text);
      at = text.end;
    }
    return out + source.slice(at, end);
  };
  const say = ({ pattern, holes, form }: Text): string => {
    const filled = holes.map((hole) => within(hole.start, hole.end));
    shows ||= form === 'template' || form.startsWith('list');
    if (form.startsWith('list'))
      return `${filled[0]}${form.slice(4)}.map(shownHere).join(${JSON.stringify(words[pattern] ?? pattern)})`;
    return filledIn(splitAtHoles(pattern, words[pattern] ?? pattern), filled, form);
  };
  const out = within(0, source.length);
  return shows ? `import { shown as shownHere } from 'virtual:words';\n${out}` : out;
}

/** 'Drop in ', 0, ' of ', 1, '.' */
function splitAtHoles(pattern: string, said: string): (string | number)[] {
  const parts = said.split(/\{(\d+)\}/).map((part, i) => (i % 2 === 1 ? Number(part) : part));
  const numbers = (text: string) => [...new Set(text.match(/\{\w+\}/g) ?? [])].sort().join();
  if (numbers(said) !== numbers(pattern)) throw new Error(`“${said}” has other holes than “${pattern}”`);
  return parts;
}

function filledIn(parts: readonly (string | number)[], holes: readonly string[], form: Text['form']): string {
  if (form === 'template') {
    const plain = (text: string) => text.replace(/[`\\]|\$(?=\{)/g, '\\$&');
    return `\`${parts.map((part) => (typeof part === 'string' ? plain(part) : `\${shownHere(${holes[part]})}`)).join('')}\``;
  }
  const inBraces = parts.map((part) => (typeof part === 'string' ? part && `{${JSON.stringify(part)}}` : holes[part]));
  if (form === 'children') return inBraces.join('');
  return form === 'attribute' ? inBraces.join('') : JSON.stringify(parts.join(''));
}

/** 'de' of src/words/de.json. */
export function languageOf(file: string | undefined): string {
  return basename(file ?? 'en.json', '.json');
}

/** A value with every text in it replaced. */
export function inWords<T>(value: T, file: string | undefined): T {
  const words = file ? (JSON.parse(readFileSync(file, 'utf8')) as Words) : {};
  return JSON.parse(JSON.stringify(value), (_, each) => (typeof each === 'string' ? (words[each] ?? each) : each)) as T;
}

/** The script that puts words of the data into the other language where they are shown, and only there: what is stored stays. */
function shownModule(words: Words): string {
  return `const words = new Map(Object.entries(${JSON.stringify(words)}));
    export const shown = (value) => words.get(value) ?? value;`;
}

/** Builds Minim in the language of a file like en.json, or leaves everything as it is where none is named. */
export function translation(file: string | undefined): Plugin | false {
  if (!file) return false;
  const words = JSON.parse(readFileSync(file, 'utf8')) as Words;
  const { written, data } = allWords();
  const pick = (keys: readonly string[]) =>
    Object.fromEntries(keys.flatMap((key) => (key in words ? [[key, words[key]!]] : [])));
  const here = pick(written);
  const draws = `import ${JSON.stringify(resolve(src, 'words/drawn.ts'))};\n`;
  const all = [...new Set([...written, ...data])];
  const missing = all.filter((key) => !(key in words)).length;
  console.info(`${basename(file)}: ${missing} of ${all.length} texts stay English`);
  return {
    name: 'translation',
    enforce: 'pre',
    resolveId: (id) => (id === 'virtual:words' ? id : null),
    load: (id) => (id === 'virtual:words' ? shownModule(pick(data)) : null),
    transform(source, id) {
      const path = relative(src, id.split('?')[0]!).split(sep).join('/');
      if (path.startsWith('..') || !isRead(path)) return null;
      const code = translated(path, source, here);
      return { code: path === 'main.tsx' ? draws + code : code, map: null };
    },
    transformIndexHtml: {
      order: 'pre',
      handler: (page) =>
        page.replace('lang="en"', `lang="${languageOf(file)}"`).replace(DESCRIPTION, (text) => here[text] ?? text),
    },
  };
}
