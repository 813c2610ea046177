/** A number in a scatter: what it is called, and its ± where it has one of its own. */
export interface ScatterPoint {
  readonly name: string;
  readonly value: number;
  readonly uncertainty?: number;
  /** Lies far from the others: drawn hollow. */
  readonly odd?: boolean;
}

/** Numbers in their order, and the band (value ± uncertainty) that they make. */
export interface ScatterNumbers {
  readonly points: readonly ScatterPoint[];
  readonly band: { readonly value: number; readonly uncertainty: number };
}

/** The places of a scatter in its picture, CSS px. */
export interface ScatterScale {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly letters: number;
  /** Round numbers of the axis, rising. */
  readonly ticks: readonly number[];
  readonly decimals: number;
  /** Places of points that have their name under them. */
  readonly named: readonly number[];
  x(place: number): number;
  y(value: number): number;
}

const LETTERS = 12; // CSS px at the usual size
const WIDE = 0.58; // width of a letter over its size, taken wide

/** Points evenly across in their order, values upwards over the whole range of points, their ± and the band. */
export function scatterScale(
  { points, band }: ScatterNumbers,
  { room, scale }: { room: number; scale: number },
): ScatterScale {
  const letters = LETTERS * scale;
  const height = 80 + 60 * scale;
  const ends = [...points, band].flatMap(({ value, uncertainty: uncertainty = 0 }) => [
    value - uncertainty,
    value + uncertainty,
  ]);
  const spare = Math.max(0.08 * (Math.max(...ends) - Math.min(...ends)), 0.002 * band.value);
  const [low, high] = [Math.min(...ends) - spare, Math.max(...ends) + spare];
  const { ticks, decimals } = roundNumbers(low, high);
  const left = (Math.max(...ticks.map((tick) => tick.toFixed(decimals).length)) * WIDE + 0.8) * letters;
  const [right, top, bottom] = [room - 6, 6, height - 1.8 * letters];
  const step = (right - left) / points.length;
  const longest = Math.max(...points.map(({ name }) => name.length)) * WIDE * letters;
  return {
    width: room,
    height,
    left,
    right,
    letters,
    ticks,
    decimals,
    named: namedPlaces(points.length, Math.ceil((longest + letters) / step)),
    x: (place) => left + (place + 0.5) * step,
    y: (value) => top + ((high - value) / (high - low)) * (bottom - top),
  };
}

/** Every so-many-th place, so that the names stand apart; the last always, and those before it that leave it room. */
function namedPlaces(count: number, every: number): number[] {
  return Array.from({ length: count }, (_, i) => count - 1 - i).filter((_, i) => i % Math.max(1, every) === 0);
}

/** Two to five round numbers in a range, and the decimals that they need. */
function roundNumbers(low: number, high: number): { ticks: number[]; decimals: number } {
  const power = Math.floor(Math.log10(high - low));
  const steps = [5, 2, 1, 0.5, 0.2].map((size) => size * 10 ** power);
  const step = steps.find((size) => Math.floor(high / size) - Math.ceil(low / size) >= 1)!;
  const first = Math.ceil(low / step);
  const ticks = Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step);
  return { ticks, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}
