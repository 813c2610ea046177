import { withQuiet, type Blocks } from './labelBlocks';
import type { LabelFace, LabelFrame, LabelSpan, PlacedText } from './labelContent';

const MARGIN = 0.8; // mm left, right and above; our choice: label printers miss by half a millimetre
const FOOT = 0.4; // mm under the longest tails
const LINE = 1.2; // line pitch over size (Reg. (EU) 2024/2865: line spacing 120 %)
const ASCENT = 0.76; // top of a line to its baseline over size (tallest letters of Atkinson Hyperlegible Next: 0.72, measured)
const DEPTH = 0.96; // top of a line to the foot of its longest tails over size
const SMALLEST = 1.5; // mm, our choice: letters without tails are then 6 dots high at 203 dpi
const LARGEST = 4; // mm, our choice
const BESIDE = 0.4; // mm between text and flame
const STEP = 0.1; // mm

/** White-on-black text: how far the black reaches beyond the text at each side, over the text's size. */
export const BADGE_PAD = 0.15;

interface Word {
  readonly text: string;
  readonly face: LabelFace;
  readonly scale: number;
}

type Sized = Omit<PlacedText, 'x' | 'y' | 'width'>;

/** Where text is set: the label, what stands on it already, and whether a word too long for a line may be broken. */
export interface TextFrame extends LabelFrame, Blocks {
  readonly breaking: boolean;
}

/**
 * Paragraphs set in the largest size, mm (halving the steps between), at which all stand on the label clear of the
 * blocks; null when none will do. Source: our own; line pitch after Reg. (EU) 2024/2865.
 */
export function setText(
  paragraphs: readonly (readonly LabelSpan[])[],
  frame: TextFrame,
): { texts: PlacedText[]; textMm: number } | null {
  const words = paragraphs.map((spans) => wordsOf(spans, frame.breaking));
  const tried = (step: number) => {
    const textMm = SMALLEST + step * STEP;
    const texts = setAt(textMm, words, frame);
    return texts && { texts, textMm };
  };
  let fits = tried(0);
  let [low, high] = [0, Math.round((LARGEST - SMALLEST) / STEP) + 1]; // fits at low, not known to fit at high
  while (fits && high - low > 1) {
    const middle = (low + high) >> 1;
    const larger = tried(middle);
    fits = larger ?? fits;
    [low, high] = larger ? [middle, high] : [low, middle];
  }
  return fits;
}

/** Words end at spaces; at no-break spaces only where nothing else will do. */
function wordsOf(spans: readonly LabelSpan[], breaking: boolean): Word[] {
  return spans.flatMap(({ text, face, scale }) =>
    (face === 'badge' ? [text] : text.split(breaking ? /[ \u00a0]+/ : / +/))
      .filter(Boolean)
      .map((word) => ({ text: word, face, scale })),
  );
}

/** All paragraphs in one size, line by line. */
function setAt(size: number, paragraphs: readonly Word[][], frame: TextFrame): PlacedText[] | null {
  const placed: PlacedText[] = [];
  let top = MARGIN;
  for (const words of paragraphs) {
    for (let rest: readonly Word[] = words; rest.length > 0;) {
      const most = size * Math.max(...rest.map(({ scale }) => scale));
      const line = setLine(rest, size, { ...frame, room: roomAt(top, top + most * DEPTH, frame) });
      if (!line) return null;
      const tall = Math.max(...line.texts.map((text) => text.size));
      if (top + tall * DEPTH > frame.heightMm - FOOT) return null;
      placed.push(...line.texts.map((text) => ({ ...text, y: top + tall * ASCENT })));
      top += tall * LINE;
      rest = line.rest;
    }
  }
  return placed;
}

/** Width free for text between two heights, mm. */
function roomAt(top: number, foot: number, { widthMm, code, flame }: TextFrame): number {
  const blocks = [code && withQuiet(code), flame && { ...flame, x: flame.x - BESIDE }].flatMap((block) => block ?? []);
  const edges = blocks.filter(({ y, side }) => y < foot && y + side > top).map(({ x }) => x);
  return Math.min(widthMm - MARGIN, ...edges) - MARGIN;
}

/** As many words as stand on one line, and the rest. Null when not even the first does. */
function setLine(words: readonly Word[], size: number, frame: TextFrame & { room: number }) {
  const texts: Omit<PlacedText, 'y'>[] = [];
  let end = MARGIN;
  for (const [i, word] of words.entries()) {
    const own = { text: word.text, face: word.face, size: size * word.scale };
    const pad = word.face === 'badge' ? BADGE_PAD * own.size : 0;
    const gap = i === 0 ? 0 : frame.widthOf(' ', word.face) * own.size;
    const width = frame.widthOf(own.text, own.face) * own.size;
    if (end + gap + width + 2 * pad > MARGIN + frame.room) {
      if (i > 0) return { texts, rest: words.slice(i) };
      return frame.breaking && pad === 0 ? brokenLine(words, own, frame) : null;
    }
    append(texts, { ...own, x: end + gap + pad, width }, gap);
    end += gap + width + 2 * pad;
  }
  return { texts, rest: [] };
}

/** Joins a word to the text before it where both look the same. */
function append(texts: Omit<PlacedText, 'y'>[], next: Omit<PlacedText, 'y'>, gap: number): void {
  const last = texts.at(-1);
  if (last && last.face === next.face && last.size === next.size && next.face !== 'badge')
    texts[texts.length - 1] = {
      ...last,
      text: `${last.text} ${next.text}`,
      width: last.width + gap + next.width,
    };
  else texts.push(next);
}

/** A line that holds as many letters of its first word as there is room for. */
function brokenLine(words: readonly Word[], own: Sized, frame: TextFrame & { room: number }) {
  const letters = [...own.text];
  const width = (kept: number) => frame.widthOf(letters.slice(0, kept).join(''), own.face) * own.size;
  let kept = letters.length - 1;
  while (kept > 0 && width(kept) > frame.room) kept--;
  if (kept === 0) return null;
  const rest = [{ ...words[0]!, text: letters.slice(kept).join('') }, ...words.slice(1)];
  return { texts: [{ ...own, text: letters.slice(0, kept).join(''), x: MARGIN, width: width(kept) }], rest };
}
