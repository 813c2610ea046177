import { signal } from '@preact/signals';
import { isCutShort, readScaleLine, sameShape, type LineShape, type NoWeight } from '../../core/text/scaleLine';
import { formatTypedText } from '../format';

/** What a line was taken for, with one thing to do about it. */
export interface LineNotice {
  readonly words: string;
  readonly button?: { readonly words: string; readonly does: () => unknown };
}

/** What is said of the line that came last, wherever it was taken; null when something else was done since. */
export const lineNotice = signal<LineNotice | null>(null);

/** The shapes of lines that the person confirmed, and how another one is stored: whoever keeps them sets it. */
interface Shapes {
  known: () => readonly LineShape[];
  keep: (shape: LineShape) => unknown;
}
export const scaleShapes: Shapes = { known: () => [], keep: () => {} };

/** Whether a scale that types was heard and confirmed on this phone: then a field for a weight needs no keyboard on the screen. */
export function isScaleHeard(): boolean {
  return scaleShapes.known().length > 0;
}

/** A line as a field for a weight takes it: at once, after a question, or not. `text` goes into the field, `words` are said. */
export type LineVerdict =
  | { readonly is: 'taken' | 'asked'; readonly text: string; readonly words: string; readonly shape: LineShape }
  | { readonly is: 'refused'; readonly words: string };

/** Of a line that was refused as cut short: the same shape again is another scale, and the person is asked. */
let refusedAs: LineShape | null = null;

/** What becomes of a line in a field that takes weights; `wrong` says why the field does not take a number. */
export function verdictOn(line: string, wrong: (text: string) => string | undefined): LineVerdict {
  const read = readScaleLine(line);
  if (read.kind === 'refused') return refused(noWeightWords(read.why, line, read));
  const { shape, text } = read;
  const shown = `${formatTypedText(text)} g`;
  if (read.settled === 'no') return refused(`${shown}, still moving: send it again.`);
  const known = scaleShapes.known();
  const again = refusedAs !== null && sameShape(refusedAs, shape);
  refusedAs = null;
  if (!again && isCutShort(shape, known)) {
    refusedAs = shape;
    return refused(CUT);
  }
  const why = wrong(text);
  if (why !== undefined) return refused(why);
  const from = `${shown}, from the scale${read.unverified ? '; its last digit is finer than verified' : ''}`;
  const isKnown = known.some((one) => sameShape(one, shape));
  return { is: isKnown ? 'taken' : 'asked', text, words: `${from}.`, shape };
}

const refused = (words: string): LineVerdict => ({ is: 'refused', words });
const CUT = 'The weight was cut short: send it again.';

function noWeightWords(why: NoWeight, line: string, { unit = '', g = 0 }: { unit?: string; g?: number }): string {
  const words: Record<NoWeight, string> = {
    empty: 'The scale sent nothing: send it again.',
    unit: `“${unit}” is another unit: set the scale to g, and send it again.`,
    overload: `The scale shows no weight (“${line.trim()}”): there may be too much on it.`,
    minus: `${formatTypedText(String(g))} g, less than nothing: was the vial taken off? Put it back, and send it again.`,
    cut: CUT,
    several: 'The scale sent more than one number: let it send the weight alone.',
    unreadable: 'What the scale sent cannot be read: send it again.',
  };
  return words[why];
}

/** The field that a weight is wanted in now: the one that has the focus, else the first empty one, else the first; null where there is none. */
export function fieldForWeight(): HTMLInputElement | null {
  const within = document.querySelector('dialog[open]') ?? document;
  const fields = [...within.querySelectorAll<HTMLInputElement>('input[data-weighed]')];
  return (
    fields.find((one) => one === document.activeElement) ??
    fields.find(({ value }) => value === '') ??
    fields[0] ??
    null
  );
}

/** What a field for a weight hears when a line comes through a cable; its `detail` is the line. */
export const CABLE_LINE = 'cableline';

/** A line came through a cable: the field that wants a weight takes it. */
export function lineCame(line: string): void {
  const field = fieldForWeight();
  if (field) field.dispatchEvent(new CustomEvent(CABLE_LINE, { detail: line }));
  else lineNotice.value = { words: NOT_WANTED };
}

/** Said where a scale types and no weight is wanted. */
export const NOT_WANTED = 'A scale is typing: nothing is counted. Take its weight where one is needed.';
