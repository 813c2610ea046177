import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import type { LabelFace } from '../src/core/label/labelContent';

/** What a font file says of itself, over the size of its em: height of its capitals, and how wide a text is (without kerning). */
export interface FontFile {
  readonly capHeight: number;
  readonly widthOf: (text: string) => number;
}

/** The Latin part of an installed typeface, 'next-latin-400'. Source: WOFF 1.0 and OpenType (OS/2, head, hhea, hmtx, cmap format 4). */
export function fontFile(name: string): FontFile {
  const family = name.split('-')[0]!;
  const file = `node_modules/@fontsource/atkinson-hyperlegible-${family}/files/atkinson-hyperlegible-${name}-normal.woff`;
  const table = tablesOf(readFileSync(file));
  const em = table('head').readUInt16BE(18);
  const glyphOf = glyphs(table('cmap'));
  const [advances, full] = [table('hmtx'), table('hhea').readUInt16BE(34)];
  const advance = (sign: string) => advances.readUInt16BE(4 * Math.min(glyphOf(sign.codePointAt(0)!), full - 1)) / em;
  return {
    capHeight: table('OS/2').readInt16BE(88) / em,
    widthOf: (text) => [...text].reduce((sum, sign) => sum + advance(sign), 0),
  };
}

function tablesOf(file: Buffer): (tag: string) => Buffer {
  return (tag) => {
    for (let at = 44; ; at += 20) {
      if (file.toString('latin1', at, at + 4) !== tag) continue;
      const [from, packed, length] = [4, 8, 12].map((more) => file.readUInt32BE(at + more)) as [number, number, number];
      const bytes = file.subarray(from, from + packed);
      return packed < length ? inflateSync(bytes) : bytes;
    }
  };
}

/** The glyph of a character; 0 for one that the font does not have. */
function glyphs(cmap: Buffer): (code: number) => number {
  const tables = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + 8 * i));
  const t = cmap.subarray(tables.find((from) => cmap.readUInt16BE(from) === 4)!);
  const twice = t.readUInt16BE(6);
  const word = (row: number, i: number) => t.readUInt16BE(14 + row * twice + (row > 0 ? 2 : 0) + 2 * i);
  return (code) => {
    for (let i = 0; i < twice / 2; i++) {
      if (code > word(0, i)) continue;
      const [start, delta, range] = [word(1, i), word(2, i), word(3, i)];
      if (code < start) return 0;
      if (range === 0) return (code + delta) & 0xffff;
      return t.readUInt16BE(14 + 3 * twice + 2 + 2 * i + range + 2 * (code - start));
    }
    return 0;
  };
}

const files: Record<LabelFace, FontFile> = {
  plain: fontFile('next-latin-400'),
  bold: fontFile('next-latin-700'),
  badge: fontFile('next-latin-700'),
  code: fontFile('mono-latin-700'),
};

/** Cap height of the face of a label over its size. */
export function capHeightOf(face: LabelFace): number {
  return files[face].capHeight;
}

const known = new Map<string, number>();

/** How wide a text of a label is, in mm at a size of 1 mm, by the font that draws it. */
export function widthInFont(text: string, face: LabelFace): number {
  const key = `${face} ${text}`;
  if (!known.has(key)) known.set(key, files[face].widthOf(text));
  return known.get(key)!;
}
