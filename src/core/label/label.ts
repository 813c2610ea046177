/**
 * Where everything stands on a printed label. All lengths are in mm from the top left corner.
 *
 * Text flows down the left side and keeps clear of the code and the flame at the right. Text shrinks, code and flame
 * shrink, paragraphs run together; what then still finds no room is left out whole and named, never cut off.
 */
import { blocksFor, type Blocks } from './labelBlocks';
import type { LabelContent, LabelFrame, LabelSpan, PlacedText } from './labelContent';
import { setText } from './labelText';
import { Refusal } from '../text/refusal';

/** A label ready to be drawn. `leftOut` names, in words, what found no room, in the order in which it went. */
export interface LabelLayout extends Blocks {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly PlacedText[];
  /** Size of the text, em, mm. */
  readonly textMm: number;
  readonly leftOut: readonly string[];
}

/** The smallest label, mm; our choice: code, strength and grade still stand on it. */
export const SMALLEST_LABEL = { widthMm: 15, heightMm: 6 } as const;

/** Text size in mm whose letters are 1.2 mm high without tails: Reg. (EU) 2024/2865 asks for them on what is sold (x-height 0.50, measured). */
export const EASY_TEXT = 2.4;

/**
 * A label laid out. The widths that the frame hands in must be those of the typeface that draws. The code's modules
 * are whole dots of the printer, and its corner lies on a dot. mm and dots per inch.
 * Source: our own way of setting text; the sizes and their sources are beside them here and in labelBlocks and labelText.
 * @throws Refusal for a label smaller than 15 × 6 mm, or whose code, strength and grade find no room
 */
export function layoutLabel(content: LabelContent, frame: LabelFrame): LabelLayout {
  const { widthMm, heightMm } = frame;
  if (!(widthMm >= SMALLEST_LABEL.widthMm && heightMm >= SMALLEST_LABEL.heightMm))
    throw new Refusal(
      'a label is at least {leastWidth} mm wide and {leastHeight} mm high, not {widthMm} × {heightMm} mm',
      { leastWidth: SMALLEST_LABEL.widthMm, leastHeight: SMALLEST_LABEL.heightMm, widthMm, heightMm },
    );
  const blocks = blocksFor(content, frame);
  const leftOut = [
    ...(content.codeModules !== null && blocks[0]!.code === null ? ['the QR code'] : []),
    ...(content.flame && blocks.every(({ flame }) => flame === null) ? ['the flame'] : []),
  ];
  for (let paragraphs = content.paragraphs; ;) {
    const found = best(paragraphs, blocks, frame) ?? best(runOn(paragraphs), blocks, frame);
    if (found) return { widthMm, heightMm, ...found, leftOut };
    const goes = paragraphs.flat().reduce((most, span) => (span.rank > most.rank ? span : most));
    if (goes.rank === 0) {
      const small = best(
        paragraphs.map((spans) => spans.map(asSmall)),
        blocks,
        frame,
      );
      return small ? { widthMm, heightMm, ...small, leftOut } : withLess(content, frame, blocks[0]!);
    }
    leftOut.push(goes.what);
    paragraphs = paragraphs.map((spans) => spans.filter((span) => span !== goes)).filter((spans) => spans.length > 0);
  }
}

/** No larger than the text around it: what must stand there comes before its size. */
function asSmall(span: LabelSpan): LabelSpan {
  return { ...span, scale: Math.min(1, span.scale) };
}

/** Last of all the flame and then the code make room for what must stand there. */
function withLess(content: LabelContent, frame: LabelFrame, { code, flame }: Blocks): LabelLayout {
  if (!flame && !code)
    throw new Refusal('code, strength and grade find no room on a label of {widthMm} × {heightMm} mm', {
      widthMm: frame.widthMm,
      heightMm: frame.heightMm,
    });
  const less = layoutLabel({ ...content, ...(flame ? { flame: false } : { codeModules: null }) }, frame);
  const lost = [
    ...(content.flame && !less.flame ? ['the flame'] : []),
    ...(content.codeModules !== null && !less.code ? ['the QR code'] : []),
  ];
  return { ...less, leftOut: [...new Set([...lost, ...less.leftOut])] };
}

type Found = Blocks & Pick<LabelLayout, 'texts' | 'textMm'>;

const APART = 2; // paragraphs, code and name, that keep lines of their own

/** The same text without the white after its later paragraphs. */
function runOn(paragraphs: LabelContent['paragraphs']): LabelContent['paragraphs'] {
  return [...paragraphs.slice(0, APART), paragraphs.slice(APART).flat()].filter((spans) => spans.length > 0);
}

/** The way that makes most of the label; words are broken only if they must be. */
function best(paragraphs: LabelContent['paragraphs'], ways: readonly Blocks[], frame: LabelFrame): Found | null {
  for (const breaking of [false, true]) {
    const found = ways.flatMap(({ code, flame }): Found[] => {
      const text = setText(paragraphs, { ...frame, code, flame, breaking });
      return text ? [{ code, flame, ...text }] : [];
    });
    if (found.length > 0) return found.reduce((one, other) => (worth(other) > worth(one) ? other : one));
  }
  return null;
}

/** Weighs text up to the easy size against the code's modules and the flame; the weights are our choice. */
function worth({ textMm, code, flame }: Found): number {
  return Math.min(1, textMm / EASY_TEXT) + 0.3 * ((code?.module ?? 0) / 0.5) + 0.3 * ((flame?.side ?? 0) / 10);
}
