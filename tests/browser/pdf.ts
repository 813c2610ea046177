import { inflateSync } from 'node:zlib';

/** A page of a printed file: its size in mm, and its text as set, one string per stretch. */
export interface PrintedPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly text: string;
}

const POINT = 25.4 / 72; // mm

type Objects = ReadonlyMap<number, { head: string; stream: Buffer | null }>;

/** Reads what Chromium prints: plain objects, streams packed with Flate, fonts with a table back to Unicode (PDF 1.4). */
export function readPdf(pdf: Buffer): PrintedPage[] {
  const objects = objectsOf(pdf);
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b(?!s)/.test(head));
  return pages.map(({ head }) => {
    const [left, top, right, foot] = numbers(/\/MediaBox\s*\[([^\]]+)\]/.exec(head)![1]!);
    const contents = [...(/\/Contents\s*(\[[^\]]*\]|\d+ 0 R)/.exec(head)?.[1] ?? '').matchAll(/(\d+) 0 R/g)];
    const drawn = contents.map(([, id]) => objects.get(Number(id))!.stream!.toString('latin1')).join('\n');
    return {
      widthMm: (right! - left!) * POINT,
      heightMm: (foot! - top!) * POINT,
      text: textIn(drawn, fontsOf(head, objects)),
    };
  });
}

function objectsOf(pdf: Buffer): Objects {
  const text = pdf.toString('latin1');
  const objects = new Map<number, { head: string; stream: Buffer | null }>();
  for (const match of text.matchAll(/(\d+) 0 obj\s/g)) {
    const start = match.index + match[0].length;
    const end = text.indexOf('endobj', start);
    const at = text.indexOf('stream', start);
    const streamed = at > 0 && at < end;
    const head = text.slice(start, streamed ? at : end);
    objects.set(Number(match[1]), { head, stream: streamed ? streamAt(pdf, text, { at, head }) : null });
  }
  return objects;
}

function streamAt(pdf: Buffer, text: string, { at, head }: { at: number; head: string }): Buffer {
  const begin = at + 'stream'.length + (text[at + 6] === '\r' ? 2 : 1);
  const raw = pdf.subarray(begin, begin + Number(/\/Length (\d+)/.exec(head)![1]));
  return /FlateDecode/.test(head) ? inflateSync(raw) : raw;
}

/** Name of a font in the page → glyph number → letters. Fonts stand in the page's resources, there or by reference. */
function fontsOf(page: string, objects: Objects): Map<string, Map<number, string>> {
  const referred = /\/Resources\s+(\d+) 0 R/.exec(page);
  const resources = referred ? objects.get(Number(referred[1]))!.head : page;
  const fonts = /\/Font\s*<<([^>]*)>>/.exec(resources)?.[1] ?? '';
  return new Map(
    [...fonts.matchAll(/\/(\w+) (\d+) 0 R/g)].map(([, name, id]) => {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(id))!.head)?.[1];
      return [name!, lettersOf(table ? objects.get(Number(table))!.stream!.toString('latin1') : '')];
    }),
  );
}

function lettersOf(table: string): Map<number, string> {
  const letters = new Map<number, string>();
  const put = (glyph: number, hex: string, add = 0) => {
    const units = hex.match(/.{4}/g)!.map((unit) => parseInt(unit, 16));
    letters.set(glyph, String.fromCharCode(...units.slice(0, -1), units.at(-1)! + add));
  };
  for (const [, block] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, glyph, hex] of block!.matchAll(/<(\w+)>\s*<(\w+)>/g)) put(parseInt(glyph!, 16), hex!);
  for (const [, block] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, to, hex] of block!.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g))
      for (let glyph = parseInt(from!, 16); glyph <= parseInt(to!, 16); glyph++)
        put(glyph, hex!, glyph - parseInt(from!, 16));
  return letters;
}

/** Stretches of text in the order in which they are drawn. */
function textIn(drawn: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): string {
  let letters: ReadonlyMap<number, string> = new Map();
  const said: string[] = [];
  for (const [token, name] of drawn.matchAll(/\/(\w+) [\d.]+ Tf|\[[^\]]*\]\s*TJ|<[0-9A-Fa-f]*>\s*Tj|\bET\b/g)) {
    if (name) letters = fonts.get(name) ?? new Map();
    else if (token === 'ET') said.push(' ');
    else
      for (const [, hex] of token.matchAll(/<([0-9A-Fa-f]*)>/g))
        said.push(...(hex!.match(/.{4}/g) ?? []).map((glyph) => letters.get(parseInt(glyph, 16)) ?? '?'));
  }
  return said.join('').replaceAll('\u00a0', ' ').replace(/ +/g, ' ');
}

function numbers(text: string): number[] {
  return text.trim().split(/\s+/).map(Number);
}
