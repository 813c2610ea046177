/** A point of the curve: drops, and the error of its worst line as a fraction. */
export interface CurvePoint {
  readonly drops: number;
  readonly objective: number;
}

/** The places of a curve in its picture, in CSS px. */
export interface CurveScale {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly letters: number;
  readonly errors: readonly number[];
  readonly ticks: readonly number[];
  x(drops: number): number;
  y(error: number): number;
}

const ERRORS = [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01]; // lines of the grid: fractions of the target
const LETTERS = 12; // CSS px at the usual size
const WIDE = 0.58; // width of a bold letter over its size, taken wide

/** Drops across, evenly; errors upwards, each halving as far as the last. Above the curve a line of words has room. */
export function curveScale(all: readonly CurvePoint[], { room, scale }: { room: number; scale: number }): CurveScale {
  const letters = LETTERS * scale;
  const height = 90 + 70 * scale;
  const [left, right, top, bottom] = [3.4 * letters, room - 14, 2.6 * letters, height - 2 * letters];
  const [least, most] = [all[0]!.drops, all.at(-1)!.drops * 1.05];
  const [high, low] = [all[0]!.objective * 1.1, Math.max(1e-4, all.at(-1)!.objective * 0.9)];
  const y = (error: number) =>
    Math.round(top + (Math.log(high / Math.max(low, error)) / Math.log(high / low)) * (bottom - top));
  const x = (drops: number) =>
    Math.round(left + 8 + ((drops - least) / Math.max(1, most - least)) * (right - left - 8));
  const inside = ERRORS.filter((error) => error <= high && error >= low);
  return {
    width: room,
    height,
    left,
    right,
    bottom,
    letters,
    x,
    y,
    errors: apart(inside, y, 1.3 * letters),
    ticks: apart(roundDrops(most), x, 3 * letters).filter((drops) => drops >= least),
  };
}

/** What stands at least so far, px, from the one before. */
function apart(values: readonly number[], at: (value: number) => number, least: number): number[] {
  return values.reduce<number[]>((kept, value) => {
    const last = kept.at(-1);
    return last === undefined || Math.abs(at(value) - at(last)) >= least ? [...kept, value] : kept;
  }, []);
}

/** Round numbers of drops, at most five. */
function roundDrops(most: number): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100].find((size) => most / size <= 5) ?? 200;
  return Array.from({ length: Math.floor(most / step) }, (_, i) => (i + 1) * step);
}

/** A place for words: their left end and foot, px. */
export interface WordsPlace {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Where the words of a point stand: above it to the right, where the stairs leave room; at the right end farther up. */
export function placeWords(
  texts: readonly [long: string, short: string],
  point: CurvePoint,
  all: readonly CurvePoint[],
  scale: CurveScale,
): WordsPlace {
  const widthOf = (text: string) => text.length * WIDE * scale.letters;
  const text = widthOf(texts[0]) <= scale.right - scale.left - 8 ? texts[0] : texts[1];
  const width = widthOf(text);
  const x = Math.min(scale.x(point.drops) + 10, scale.right - width);
  const over = all.filter(({ drops }) => scale.x(drops) <= x - 8); // the stairs above the left end of the words
  const top = Math.min(scale.y((over.at(-1) ?? all[0]!).objective), scale.y(point.objective));
  return { text, x, y: top - 10, width };
}
