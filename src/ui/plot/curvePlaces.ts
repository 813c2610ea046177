/** A point of a curve, in the units of its axes. */
export interface CurveAt {
  readonly x: number;
  readonly y: number;
}

/** What is drawn: the curve, a level that it is held against, and the point where one is. */
export interface CurveNumbers {
  readonly points: readonly CurveAt[];
  readonly line?: { readonly y: number; readonly words: string };
  readonly here?: CurveAt;
}

/** Places of a curve in its picture, CSS px. */
export interface CurvePlaces {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly letters: number;
  readonly across: readonly number[];
  readonly upward: readonly number[];
  readonly decimals: { readonly x: number; readonly y: number };
  x(value: number): number;
  y(value: number): number;
}

const LETTERS = 12; // CSS px at the usual size
const WIDE = 0.58; // width of a letter over its size, taken wide

/** A small picture over the whole range of its numbers, with round numbers along both axes that leave each other room. */
export function curvePlaces(
  { points, line, here }: CurveNumbers,
  { room, scale }: { room: number; scale: number },
): CurvePlaces {
  const letters = LETTERS * scale;
  const height = 70 + 70 * scale;
  const all = [...points, ...(here ? [here] : [])];
  const xs = all.map(({ x }) => x);
  const ys = [...all.map(({ y }) => y), ...(line ? [line.y] : [])];
  const spare = 0.12 * (Math.max(...ys) - Math.min(...ys)) || 1;
  const [low, high] = [Math.min(...ys) - spare, Math.max(...ys) + spare];
  const upward = roundNumbers(low, high, Math.max(2, Math.floor(height / (2.2 * letters)) - 1));
  const widest = Math.max(...upward.ticks.map((tick) => tick.toFixed(upward.decimals).length));
  const [left, right, top, bottom] = [(widest * WIDE + 0.8) * letters, room - letters, 8, height - 1.8 * letters];
  const [least, most] = [Math.min(...xs), Math.max(...xs)];
  const across = roundNumbers(least, most, Math.max(2, Math.floor((right - left) / (4 * letters))));
  return {
    width: room,
    height,
    left,
    right,
    bottom,
    letters,
    across: across.ticks,
    upward: upward.ticks,
    decimals: { x: across.decimals, y: upward.decimals },
    x: (value) => left + ((value - least) / (most - least || 1)) * (right - left),
    y: (value) => top + ((high - value) / (high - low)) * (bottom - top),
  };
}

/** At most so many round numbers in a range, and the decimals that they need. */
function roundNumbers(low: number, high: number, count: number): { ticks: number[]; decimals: number } {
  const power = Math.floor(Math.log10(high - low || 1));
  const sizes = [0.1, 0.2, 0.5, 1, 2, 5, 10].map((size) => size * 10 ** power);
  const step = sizes.find((size) => Math.floor(high / size) - Math.ceil(low / size) < count) ?? sizes.at(-1)!;
  const first = Math.ceil(low / step - 1e-9);
  const ticks = Array.from({ length: Math.max(0, Math.floor(high / step + 1e-9) - first + 1) }, (_, i) => (first + i) * step); // prettier-ignore
  return { ticks, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}
