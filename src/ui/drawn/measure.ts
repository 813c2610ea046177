/** Width of a letter of the label over its size: of the monospaced face in use, taken a little wide. */
const LETTER = 0.62;
const LEAST_PX = 8; // letters smaller than this are not read; our choice

/** How full, 0 to 1; what is not a number is empty. */
export function clampLevel(level: number): number {
  return Number.isFinite(level) ? Math.min(1, Math.max(0, level)) : level === Infinity ? 1 : 0;
}

/**
 * Where the surface stands between the bottom and the full mark (y, downwards). A small rest stays visible, as in a real
 * vial; null when there is none.
 */
export function surfaceAt(level: number, { bottom, full, least }: { bottom: number; full: number; least: number }) {
  const share = clampLevel(level);
  return share === 0 ? null : bottom - Math.max(least, share * (bottom - full));
}

const MOST_RINGS = 4;

/**
 * Rings around a label, one for each tenfold step below 10 %: 1 % has one, 0.1 % two, 0.01 % three; what is between goes with
 * the nearer step, so that 1.07 % and 0.85 % are both 1 %. `share` is the share of neat material, as on the label; undefined
 * where it says nothing, as for a trial.
 */
export function ringsOf(share: number | undefined): number {
  if (share === undefined || !(share > 0)) return 0;
  return Math.min(MOST_RINGS, Math.max(0, Math.round(-Math.log10(share)) - 1));
}

/** One line of a label: text and size, in units of the drawing. */
export interface FittedLine {
  readonly text: string;
  readonly size: number;
}

/**
 * The lines of a label in the room that there is, in whole: the code, then the strength in one line or in two ('250',
 * 'mg/kg'). Empty when a line would be smaller than can be read at `pxPerUnit`: code and strength are never cut.
 */
export function fitLines(
  { code, strength }: { code: string; strength: string },
  { width, height, pxPerUnit }: { width: number; height: number; pxPerUnit: number },
): readonly FittedLine[] {
  const whole = fitted([code, strength].filter(Boolean), width, height);
  const parted = fitted([code, ...parts(strength)].filter(Boolean), width, height);
  const best = least(parted) > 1.25 * least(whole) ? parted : whole;
  return least(best) * pxPerUnit >= LEAST_PX ? best : [];
}

/** '250 mg/kg' as '250' and 'mg/kg'; a percent sign stays with its number. */
function parts(strength: string): string[] {
  const [, number, unit] = /^(.+) ([^ %]+)$/.exec(strength) ?? [];
  return number && unit ? [number, unit] : [strength];
}

const LEADING = 1.12;
const SECOND = 0.86; // the strength is a little smaller than the code

function fitted(lines: readonly string[], width: number, height: number): FittedLine[] {
  const share = lines.reduce((sum, _, i) => sum + (i === 0 ? 1 : SECOND), 0);
  const tall = height / (LEADING * share);
  return lines.map((text, i) => ({
    text,
    size: Math.min(i === 0 ? tall : SECOND * tall, width / (LETTER * [...text].length)),
  }));
}

function least(lines: readonly FittedLine[]): number {
  return lines.length === 0 ? 0 : Math.min(...lines.map(({ size }) => size));
}

/** The largest size at which a text is as wide as `width`, at most `most`; 0 when it could not be read at `pxPerUnit`. */
export function fitText(text: string, width: number, most: number, pxPerUnit: number): number {
  const size = Math.min(most, width / (LETTER * Math.max(1, [...text].length)));
  return size * pxPerUnit >= LEAST_PX ? size : 0;
}
