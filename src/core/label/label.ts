/**
 * Where everything stands on a printed label. All lengths are in mm from the top left corner.
 *
 * Code and strength are the largest things on it. Text flows down the left side and keeps clear of the square code and the
 * flame at the right. What finds no room in letters of 1.2 mm is left out by a stated order (labelOrder.ts) and named; a
 * name loses its end first. What stands there then grows to fill the label.
 */
import { blocksFor, placeRings, type Blocks, type PlacedBar } from './labelBlocks';
import type { LabelContent, LabelFrame, LabelSpan, PlacedText } from './labelContent';
import { rankOf } from './labelOrder';
import { CAP_HEIGHT, LEAST_TEXT, setText, wordsOf, type LabelWord, type TextSizes } from './labelText';
import { Refusal } from '../text/refusal';

/** A label ready to be drawn. `leftOut` names, in words, what found no room, the least important first. */
export interface LabelLayout extends Pick<Blocks, 'code' | 'flame'>, TextSizes {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly PlacedText[];
  readonly rings: readonly PlacedBar[];
  readonly leftOut: readonly string[];
}

/** The smallest label, mm; our choice: code, strength and grade still stand on it. */
export const SMALLEST_LABEL = { widthMm: 15, heightMm: 6 } as const;

/** Text size in mm whose letters are 1.2 mm high without tails: Reg. (EU) 2024/2865 asks for them on what is sold (x-height 0.50, measured). */
export const EASY_TEXT = 2.4;

const AT_ARMS_LENGTH = 3 / CAP_HEIGHT; // size of code and strength, mm: other text is left out for its sake, not it made smaller
const HEAD_SHARE = 0.2; // of the label's height are enough for a line of them on one that is lower than 15 mm
const BESIDE_CODE = 1.8 / CAP_HEIGHT; // the smallest for whose sake flame and square code stay
const LARGEST_HEAD = 8 / CAP_HEIGHT; // our choice
const LARGEST_TEXT = 4; // mm, our choice
const TEXTS = [LEAST_TEXT, EASY_TEXT]; // mm, tried before code and strength grow
const LARGER = 1.25; // code and strength over the other text, at least
const STEP = 0.1; // mm
const SHORTEST = 8; // letters that a name keeps, our choice
const LAST_DAY = rankOf('the day it was opened'); // for what is up to here a name loses its end

/**
 * A label laid out. The widths that the frame hands in must be those of the typeface that draws. The code's modules
 * are whole dots of the printer, and its corner lies on a dot. mm and dots per inch.
 * Source: our own way of setting text; the sizes and their sources are beside them here and in labelBlocks and labelText.
 * @throws Refusal for a label smaller than 15 × 6 mm, or whose code, strength and bar find no room in letters of 1.2 mm
 */
export function layoutLabel(content: LabelContent, frame: LabelFrame): LabelLayout {
  const { widthMm, heightMm } = frame;
  if (!(widthMm >= SMALLEST_LABEL.widthMm && heightMm >= SMALLEST_LABEL.heightMm))
    throw new Refusal(
      'a label is at least {leastWidth} mm wide and {leastHeight} mm high, not {widthMm} × {heightMm} mm',
      { leastWidth: SMALLEST_LABEL.widthMm, leastHeight: SMALLEST_LABEL.heightMm, widthMm, heightMm },
    );
  for (const less of [{}, { flame: false }, { flame: false, codeModules: null }]) {
    const ways = blocksFor({ ...content, ...less }, frame);
    const paper = { content, frame, ways, least: smallestOf(ways) };
    const bare = ways.every(({ code, flame }) => !code && !flame);
    const headMm = largest(bare ? LEAST_TEXT : BESIDE_CODE, headFor(heightMm), (size) =>
      waysFor(mustOf(content), { headMm: size, textMm: LEAST_TEXT }, paper, paper.least),
    )?.size;
    if (headMm !== undefined) return filled({ headMm, textMm: LEAST_TEXT }, paper);
  }
  throw new Refusal('code, strength and grade find no room on a label of {widthMm} × {heightMm} mm', {
    widthMm,
    heightMm,
  });
}

function headFor(heightMm: number): number {
  return Math.min(AT_ARMS_LENGTH, Math.max(BESIDE_CODE, (HEAD_SHARE * heightMm) / CAP_HEIGHT));
}

interface Paper {
  readonly content: LabelContent;
  readonly frame: LabelFrame;
  readonly ways: readonly Blocks[];
  /** Those of them that leave most room. */
  readonly least: readonly Blocks[];
}

/** What of the content is on the label: its spans as they are shown, and its rings. */
interface Chosen {
  readonly shown: ReadonlyMap<LabelSpan, LabelSpan>;
  readonly rings: number;
}

function mustOf({ paragraphs }: LabelContent): Chosen {
  const must = paragraphs.flat().filter(({ rank }) => rank === 0);
  return { shown: new Map(must.map((span) => [span, span])), rings: 0 };
}

/** All that finds room in the smallest letters, the most important first, and then as large as it will go. */
function filled(sizes: TextSizes, paper: Paper): LabelLayout {
  const leftOut: string[] = [];
  const room = sizes.headMm >= LARGER * LEAST_TEXT - 1e-9; // else other text would be as large as the code
  const fits = (one: Chosen) => room && waysFor(one, sizes, paper, paper.least) !== null;
  const parts = partsOf(paper.content);
  let chosen = mustOf(paper.content);
  for (const [i, part] of parts.entries()) {
    const more = withPart(chosen, part, { next: parts.slice(i + 1).filter(({ rank }) => rank <= LAST_DAY), fits });
    if (!more) leftOut.unshift(part.what);
    else if ('text' in part && more.shown.get(part) !== part) leftOut.unshift(`the end of ${part.what}`);
    chosen = more ?? chosen;
  }
  const { widthMm, heightMm } = paper.frame;
  const { blocks, texts, ...grownTo } = grown(chosen, sizes, paper);
  const { code, flame } = blocks;
  if (paper.content.flame && !flame) leftOut.push('the flame');
  if (paper.content.codeModules !== null && !code) leftOut.push('the QR code');
  return { widthMm, heightMm, code, flame, texts, rings: placeRings(blocks, paper.frame), ...grownTo, leftOut };
}

interface Rings {
  readonly rings: number;
  readonly rank: number;
  readonly what: string;
}

/** All that may be left out, the most important first. */
function partsOf({ paragraphs, rings }: LabelContent): (LabelSpan | Rings)[] {
  const what = 'the rings';
  const parts = [...paragraphs.flat(), ...(rings > 0 ? [{ rings, rank: rankOf(what), what }] : [])];
  return parts.filter(({ rank }) => rank > 0).sort((a, b) => a.rank - b.rank);
}

interface Room {
  /** What is less important, but for which a name loses its end. */
  readonly next: readonly (LabelSpan | Rings)[];
  readonly fits: (chosen: Chosen) => boolean;
}

/** What is there and one more part of the label; null when that finds no room. */
function withPart(chosen: Chosen, part: LabelSpan | Rings, { next, fits }: Room): Chosen | null {
  const added = (shown: LabelSpan): Chosen => ({
    ...chosen,
    shown: new Map([...chosen.shown, [part as LabelSpan, shown]]),
  });
  const whole = 'text' in part ? added(part) : { ...chosen, rings: part.rings };
  const letters = 'text' in part && part.mayShorten ? [...part.text] : [];
  if (!('text' in part) || letters.length <= SHORTEST) return fits(whole) ? whole : null;
  const cut = (kept: number) =>
    kept < letters.length ? added({ ...part, text: `${letters.slice(0, kept).join('').trimEnd()}…` }) : whole;
  const beside = (one: Chosen) => {
    const all = next.reduce((sum, other) => withPart(sum, other, { next: [], fits }) ?? sum, one);
    return all.shown.size + all.rings;
  };
  const most = beside(cut(SHORTEST));
  const holds = (one: Chosen) => fits(one) && beside(one) === most;
  return largest(SHORTEST, letters.length, (kept) => (holds(cut(kept)) ? cut(kept) : null), 1)?.found ?? null;
}

/** The largest size in steps between two at which something is found, and that; null when not even at the least. */
function largest<T>(least: number, most: number, at: (size: number) => T | null, step = STEP) {
  const sizeAt = (steps: number) => Math.min(most, least + steps * step);
  let found = at(least);
  let [low, high] = [0, Math.ceil((most - least) / step - 1e-9) + 1]; // found at low, not known to be found at high
  while (found !== null && high - low > 1) {
    const middle = (low + high) >> 1;
    const larger = at(sizeAt(middle));
    found = larger ?? found;
    [low, high] = larger === null ? [low, middle] : [middle, high];
  }
  return found === null ? null : { size: sizeAt(low), found };
}

interface Way {
  readonly blocks: Blocks;
  readonly words: readonly (readonly LabelWord[])[];
  readonly tight: boolean;
}

/** Of all ways to place code and flame those with the smallest of both: where they leave no room, none does. */
function smallestOf(ways: readonly Blocks[]): Blocks[] {
  const least = (sides: number[]) => Math.min(...sides);
  const code = least(ways.map((way) => way.code?.side ?? 0));
  const flame = least(ways.map((way) => way.flame?.side ?? 0));
  return ways.filter((way) => (way.code?.side ?? 0) === code && (way.flame?.side ?? 0) === flame);
}

/** Those of the ways in which what was chosen stands there in given sizes: paragraphs apart if they will, tight only if it must be. */
function waysFor(chosen: Chosen, sizes: TextSizes, { content, frame }: Paper, ways: readonly Blocks[]): Way[] | null {
  const { shown, rings } = chosen;
  const apart = content.paragraphs
    .map((spans) => spans.flatMap((span) => shown.get(span) ?? []))
    .filter((spans) => spans.length > 0);
  for (const tight of [false, true])
    for (const paragraphs of [apart, runOn(apart)]) {
      const words = paragraphs.map((spans) => wordsOf(spans, tight, frame.widthOf));
      const found = ways
        .map((way) => ({ blocks: { ...way, rings }, words, tight }))
        .filter(({ blocks }) => setText(words, sizes, { ...frame, ...blocks, tight }));
      if (found.length > 0) return found;
    }
  return null;
}

/** The same text without the white between its plain paragraphs; what is not plain keeps lines of its own. */
function runOn(paragraphs: LabelContent['paragraphs']): LabelContent['paragraphs'] {
  const plain = (spans: readonly LabelSpan[]) => spans[0]!.face === 'plain';
  const first = paragraphs.findIndex(plain);
  if (first < 0) return paragraphs;
  const others = paragraphs.slice(first).filter((spans) => !plain(spans));
  return [...paragraphs.slice(0, first), paragraphs.filter(plain).flat(), ...others];
}

type Grown = TextSizes & { readonly blocks: Blocks; readonly texts: readonly PlacedText[] };

/** The way that makes most of the label; one that could not even with the room of the smallest code and flame is not tried. */
function grown(chosen: Chosen, sizes: TextSizes, paper: Paper): Grown {
  const tries = (ways: readonly Blocks[]) =>
    waysFor(chosen, sizes, paper, ways)!.flatMap((way) => TEXTS.map((most) => ({ ...way, most })));
  const most = tries(paper.least).map((one) => grownIn(one, sizes, paper.frame));
  const textMm = Math.max(...most.map((one) => one.textMm));
  const headMm = Math.max(...most.map((one) => one.headMm));
  return tries(paper.ways).reduce<Grown>((best, one) => {
    if (worth({ textMm, headMm, blocks: one.blocks }) <= worth(best)) return best;
    const other = grownIn(one, sizes, paper.frame);
    return worth(other) > worth(best) ? other : best;
  }, most[0]!);
}

/** Text up to a size first, then code and strength, then the text again. */
function grownIn(way: Way & { most: number }, { headMm: least, textMm: from }: TextSizes, frame: LabelFrame): Grown {
  const { blocks, words, tight } = way;
  const set = (headMm: number, textMm: number) => setText(words, { headMm, textMm }, { ...frame, ...blocks, tight });
  const textTo = (headMm: number, smallest: number, largestText: number) =>
    largest(smallest, Math.max(smallest, Math.min(largestText, headMm / LARGER)), (textMm) => set(headMm, textMm))!;
  const first = textTo(least, from, way.most).size;
  const headMm = largest(least, LARGEST_HEAD, (size) => set(size, first))!.size;
  const { size: textMm, found: texts } = textTo(headMm, first, LARGEST_TEXT);
  return { headMm, textMm, blocks, texts };
}

const READ_FAR = 6 / CAP_HEIGHT; // size of code and strength, mm, that more is not worth much

/** Weighs the size of the text up to the easy one, of code and strength, of the square code's modules and of the flame; the weights are our choice. */
function worth({ textMm, headMm, blocks: { code, flame } }: Omit<Grown, 'texts'>): number {
  return (
    0.7 * Math.min(1, textMm / EASY_TEXT) +
    Math.min(1, headMm / READ_FAR) +
    0.3 * ((code?.module ?? 0) / 0.5) +
    0.2 * ((flame?.side ?? 0) / 10)
  );
}
