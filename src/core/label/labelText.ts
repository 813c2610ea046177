import { ringsHeight, withQuiet, type Blocks, type PlacedSquare } from './labelBlocks';
import type { LabelFace, LabelFrame, LabelSpan, PlacedText } from './labelContent';

/** Height of a capital or a digit over the size of its text: all three faces (Atkinson Hyperlegible Next and Mono; OS/2 table, sCapHeight 668 of 1000). */
export const CAP_HEIGHT = 0.668;

/** Least size of any text, em, mm: its capitals are 1.2 mm high. */
export const LEAST_TEXT = 1.8;

/** White-on-black text: how far the black reaches above its baseline and in all, over the text's size. */
export const BAR = { above: 0.86, height: 1.06 } as const;

const MARGIN = 0.8; // mm left and right; our choice: label printers miss by half a millimetre
const TOP = 0.4; // mm above the tallest letters, nearly
const FOOT = 0.3; // mm under the longest tails
const LINE = 1.2; // line pitch over size (Reg. (EU) 2024/2865: line spacing 120 %)
const TIGHT = 0.94; // the same of code and strength, which are mostly capitals and digits
const ASCENT = 0.74; // top of a line to its baseline over size (tallest letters of Atkinson Hyperlegible Next: 0.72, measured)
const TAILS = 0.2; // baseline to the foot of the longest tails over size
const BAR_TEXT = 1.25; // size of white on black over that of the text, where there is room: black runs into thin strokes
const BAR_PAD = 0.2; // black at least left and right of its text, over its size
const APART = 2; // spaces between two things said on one line
const BESIDE = 0.4; // mm between text and flame

/** Sizes of a label's text, em, mm: of code and strength, and of all else. */
export interface TextSizes {
  readonly headMm: number;
  readonly textMm: number;
}

/** Where text is set: the label, what stands on it already, and whether room is short: then the bar is no larger than the text. */
export interface TextFrame extends LabelFrame, Blocks {
  readonly tight: boolean;
}

/** A word of a label; its width and that of the space before it at a size of 1 mm; the first of its span is apart from what is before it. */
export interface LabelWord {
  readonly text: string;
  readonly face: LabelFace;
  readonly large: boolean;
  readonly breaks: boolean;
  readonly first: boolean;
  readonly width: number;
  readonly space: number;
}

type Sized = Omit<PlacedText, 'x' | 'y' | 'width'>;
type OnLine = Omit<PlacedText, 'y'>;

/**
 * The words of spans. They end at spaces; where room is short (`tight`) a strength may have its unit on the next line, though a
 * percent sign stays with its number, and words of a name may be broken. Widths by `widthOf`, at a size of 1 mm. Our own.
 */
export function wordsOf(
  spans: readonly LabelSpan[],
  tight: boolean,
  widthOf: LabelFrame['widthOf'],
): readonly LabelWord[] {
  return spans.flatMap(({ text, face, large, mayShorten = false }) => {
    const space = widthOf(' ', face);
    const words = face === 'badge' ? [text] : text.split(tight && large ? / +|\u00a0(?!%)/ : / +/).filter(Boolean);
    return words.map((word, i) => ({
      text: word,
      face,
      large,
      breaks: tight && mayShorten,
      width: widthOf(word, face),
      first: i === 0,
      space: i === 0 && !large ? APART * space : space,
    }));
  });
}

/**
 * Paragraphs set in given sizes, line by line, clear of the blocks and the rings; null when they do not all stand on the
 * label. Lengths in mm. Source: our own; line pitch after Reg. (EU) 2024/2865.
 */
export function setText(
  paragraphs: readonly (readonly LabelWord[])[],
  sizes: TextSizes,
  frame: TextFrame,
): PlacedText[] | null {
  const placed: PlacedText[] = [];
  const beside = [frame.code && withQuiet(frame.code), frame.flame && { ...frame.flame, x: frame.flame.x - BESIDE }];
  const foot = frame.heightMm - FOOT - ringsHeight(frame.rings);
  let top = TOP;
  for (const words of paragraphs) {
    for (let rest = words; rest.length > 0;) {
      let most = 0;
      for (const word of rest) most = Math.max(most, sizeOf(word, sizes, frame) * (riseOf(word) + TAILS));
      const line = setLine(rest, sizes, { ...frame, room: roomAt(top, top + most, beside, frame.widthMm) });
      if (!line) return null;
      let [rise, tall] = [0, 0];
      for (const text of line.texts) {
        rise = Math.max(rise, text.size * riseOf(text));
        tall = Math.max(tall, text.size);
      }
      if (top + rise + tall * TAILS > foot + 1e-9) return null;
      for (const text of line.texts) placed.push({ ...text, y: top + rise });
      top += Math.max(rise + tall * TAILS, tall * (tall === sizes.headMm ? TIGHT : LINE));
      rest = line.rest;
    }
  }
  return placed;
}

/** From a baseline up to the tallest letters, or to the top of a bar, over the size. */
function riseOf({ face }: Pick<LabelWord, 'face'>): number {
  return face === 'badge' ? BAR.above : ASCENT;
}

function sizeOf({ large, face }: LabelWord, { headMm, textMm }: TextSizes, { tight }: TextFrame): number {
  if (large) return headMm;
  return face === 'badge' && !tight ? BAR_TEXT * textMm : textMm;
}

/** Width free for text between two heights, mm, left of what stands there. */
function roomAt(top: number, foot: number, beside: readonly (PlacedSquare | null)[], widthMm: number): number {
  let edge = widthMm - MARGIN;
  for (const block of beside) if (block && block.y < foot && block.y + block.side > top) edge = Math.min(edge, block.x);
  return edge - MARGIN;
}

/** As many words as stand on one line, and the rest. Null when not even the first does. */
function setLine(words: readonly LabelWord[], sizes: TextSizes, frame: TextFrame & { room: number }) {
  const texts: OnLine[] = [];
  let end = MARGIN;
  for (const [i, word] of words.entries()) {
    const own = { text: word.text, face: word.face, size: sizeOf(word, sizes, frame) };
    const pad = word.face === 'badge' ? BAR_PAD * own.size : 0;
    const gap = i === 0 ? 0 : word.space * own.size;
    const width = word.width * own.size;
    if (end + gap + width + 2 * pad > MARGIN + frame.room + 1e-9) {
      if (i > 0) return { texts, rest: words.slice(i) };
      return word.breaks ? brokenLine(words, own, frame) : null;
    }
    if (word.face === 'badge') {
      texts.push({ ...own, ...inBar(end + gap, width, frame.room) });
      return { texts, rest: words.slice(i + 1) };
    }
    if (word.first) texts.push({ ...own, x: end + gap, width });
    else append(texts, { ...own, x: end + gap, width }, gap);
    end += gap + width;
  }
  return { texts, rest: [] };
}

/** A black bar from there to the end of the line, its words in the middle. */
function inBar(from: number, width: number, room: number) {
  const long = MARGIN + room - from;
  return { x: from + (long - width) / 2, width, bar: { x: from, width: long } };
}

/** Joins a word to the text before it where both look the same. */
function append(texts: OnLine[], next: OnLine, gap: number): void {
  const last = texts.at(-1);
  if (last && last.face === next.face && last.size === next.size)
    texts[texts.length - 1] = {
      ...last,
      text: `${last.text} ${next.text}`,
      width: last.width + gap + next.width,
    };
  else texts.push(next);
}

/** A line that holds as many letters of its first word as there is room for. */
function brokenLine(words: readonly LabelWord[], own: Sized, frame: TextFrame & { room: number }) {
  const letters = [...own.text];
  const width = (kept: number) => frame.widthOf(letters.slice(0, kept).join(''), own.face) * own.size;
  let kept = letters.length - 1;
  while (kept > 0 && width(kept) > frame.room) kept--;
  if (kept === 0) return null;
  const left = letters.slice(kept).join('');
  const rest = [{ ...words[0]!, text: left, width: frame.widthOf(left, own.face) }, ...words.slice(1)];
  return { texts: [{ ...own, text: letters.slice(0, kept).join(''), x: MARGIN, width: width(kept) }], rest };
}
