import { isDay } from '../core/number/calendar';
import { expanded, measured, scaled, type Measured } from '../core/number/measured';
import { withoutGuard } from '../core/number/typed';

/** The language that numbers and days are written in: the phone's; outside of a browser English. */
const language = usable(typeof document === 'undefined' ? undefined : navigator.language);
const days = new Map<string, string>();
// Made when first used: the first of them costs a slow phone 150 ms.
let hasComma: boolean | undefined;
let counts: Intl.NumberFormat | undefined;
let dayFormat: Intl.DateTimeFormat | undefined;
let dayOfYearFormat: Intl.DateTimeFormat | undefined;
let momentFormat: Intl.DateTimeFormat | undefined;
let timeFormat: Intl.DateTimeFormat | undefined;
let isFile = false;

/** Does what ends in a file or in the store: there numbers have a point and days are YYYY-MM-DD, whatever the phone. */
export function forFile<T>(work: () => T): T {
  const before = isFile;
  isFile = true;
  try {
    return work();
  } finally {
    isFile = before;
  }
}

/** A number that is written with a point, as the phone writes it; what is typed may have either. */
export function withLocalSign(number: string): string {
  if (isFile || !number.includes('.')) return number;
  hasComma ??= new Intl.NumberFormat(language)
    .formatToParts(0.5)
    .some(({ type, value }) => type === 'decimal' && value === ',');
  return hasComma ? number.replace('.', ',') : number;
}

/** A number as it was typed, for reading: as the phone writes it, but as it is where more than a decimal point is in it. */
export function formatTypedText(text: string): string {
  return /^[+-]?\d*\.\d*$/.test(text) ? withLocalSign(withoutGuard(text)) : text;
}

/** A stored day (YYYY-MM-DD, or a moment that begins so) for reading; '' for none. */
export function formatDay(stored = ''): string {
  const day = stored.slice(0, 10);
  if (isFile || !isDay(day)) return day;
  dayFormat ??= new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' });
  if (!days.has(day)) days.set(day, dayFormat.format(Date.parse(day)));
  return days.get(day)!;
}

/** The same without its year: '5 May'. */
export function formatDayOfYear(stored: string): string {
  const at = Date.parse(stored.slice(0, 10));
  if (isFile || Number.isNaN(at)) return formatDay(stored);
  dayOfYearFormat ??= new Intl.DateTimeFormat(language, { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return dayOfYearFormat.format(at);
}

/** A moment (ISO 8601) for reading, in the phone's own time; what is none as it is. */
export function formatMoment(stored: string): string {
  if (isFile || Number.isNaN(Date.parse(stored))) return stored;
  momentFormat ??= new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' });
  return momentFormat.format(Date.parse(stored));
}

/** The day of a moment as the head of a page of the Book: 'Monday 30 November', with its year where that is not this one. */
export function formatDayHead(stored: string, now = new Date()): string {
  const at = new Date(stored);
  const year = at.getFullYear() === now.getFullYear() ? {} : ({ year: 'numeric' } as const);
  return at.toLocaleDateString(language, { weekday: 'long', day: 'numeric', month: 'long', ...year });
}

/** The time of day of a moment, in the phone's own time: '10:52'; what is none as it is. */
export function formatTime(stored: string): string {
  timeFormat ??= new Intl.DateTimeFormat(language, { timeStyle: 'short' });
  return Number.isNaN(Date.parse(stored)) ? stored : timeFormat.format(Date.parse(stored));
}

/** A count of things for reading; thousands stand apart from 10,000 on. */
export function formatCount(n: number): string {
  counts ??= new Intl.NumberFormat(language, { useGrouping: 'min2' } as unknown as Intl.NumberFormatOptions); // 9999, 10,000
  return counts.format(n);
}

/** A number as it could be typed, with a point: for what is in a field. At most `digits` significant ones. */
export function formatTyped(x: number, digits = 4): string {
  return withoutExponent(Number(x.toPrecision(digits)));
}

/** The tag, or English where it is none: WebKitGTK without a locale calls its language 'C'. */
function usable(tag: string | undefined): string {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? 'en-US';
  } catch {
    return 'en-US';
  }
}

/** A plain number for reading (a target, a count, a figure of a table), without trailing zeros: at most `digits` significant ones. */
export function formatPlain(x: number, digits = 4): string {
  return Number.isFinite(x) ? shown(formatTyped(x, digits)) : '–';
}

/** A number as it was given: all its digits, for reading, without the noise of binary fractions. */
export function formatGiven(x: number): string {
  return formatPlain(x, 12);
}

/** A number with a fixed count of decimals, 0 to 12. */
export function formatFixed(x: number, decimals: number): string {
  return shown(x.toFixed(decimals));
}

/** A number with a fixed count of significant digits, zeros at the end included. */
export function formatFigures(x: number, figures: number): string {
  return formatAt(x, lastPlace(x, figures));
}

/** A share, g/g or of all, as a percentage with at most `digits` significant digits: '12.5 %'. */
export function formatShare(share: number, digits = 3): string {
  return `${formatPlain(share * 100, digits)} %`;
}

/** A share of an uncertainty, of all of it: '37 %', '< 0.1 %'. */
export function formatPart(share: number): string {
  return share > 0 && share < 0.001 ? `< ${formatPlain(0.1)} %` : formatShare(share, 2);
}

/** A chance, 0 to 1, to two digits: '0.26', '< 0.001'. */
export function formatChance(p: number): string {
  return p < 0.001 ? `< ${formatPlain(0.001)}` : formatPlain(p, 2);
}

/** A planned amount as a scale of this step (g, say) can show it: '12.3' on 0.1, '16643' on 1. */
export function formatOnScale(x: number, step: number): string {
  return shown(typedOnScale(x, step));
}

/** The same as it could be typed, with a point. */
export function typedOnScale(x: number, step: number): string {
  return step > 0 ? digitsAt(x, placeOfStep(step)) : formatTyped(x);
}

/** True where a scale of this step would show nothing of it: then it is not weighed but diluted first, or refused. */
export function showsNothing(x: number, step: number): boolean {
  return step > 0 && Number(typedOnScale(x, step)) === 0;
}

/** Grams to weigh on a scale of this step, g: '0.12 g', 'less than 0.01 g'. */
export function gramsText(grams: number, step: number): string {
  return showsNothing(grams, step) ? `less than ${formatGiven(step)} g` : `${formatOnScale(grams, step)} g`;
}

/** How many digits a number with a ± may have: `most` significant ones, and none finer than `step`. */
export interface DigitLimits {
  readonly most?: number;
  readonly step?: number;
}

/** Three digits are shown beside a limit, and beside what is compared with one. Our choice. */
export const BESIDE_LIMIT: DigitLimits = { most: 3 };
const MOST = 4; // our choice: the ± does not hold everything, so that a fifth digit is never earned

/**
 * A measured number and its ± at k = 2, both to the last digit that the ± leaves: { value: '1.04', uncertainty: '0.11' }. The ±
 * has one significant digit, or two where the first is 1 or 2, since rounding those to one could change them by a third. Where
 * `limits` allow fewer digits, the ± is at least one in the last place: rounded up. GUM 7.2.6 (at most two digits; round up
 * rather than down); when one and when two is common practice.
 */
export function formatMeasured(a: Measured, limits: DigitLimits = {}): { value: string; uncertainty: string } {
  const uncertainty = expanded(a);
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty))
    return { value: formatPlain(a.value, limits.most ?? MOST), uncertainty: '' };
  const place = placeOf(a.value, uncertainty, limits);
  return { value: formatAt(a.value, place), uncertainty: formatAt(Math.max(uncertainty, 10 ** place), place) };
}

/** The same for a table: value and ± as two cells, with a point and a plain minus sign; no ± is an empty cell. */
export function measuredCells(a: Measured, limits: DigitLimits = {}): [value: string | number, uncertainty: string] {
  const { value, uncertainty } = forFile(() => formatMeasured(a, limits));
  return [value.startsWith('−') ? -Number(value.slice(1)) : value, uncertainty]; // a text with a minus sign is taken for a formula
}

/** '1.04 ± 0.11 mg', '(1.04 ± 0.11) % w/v': a measured number on one line. In brackets the ± is in %, not of the value. */
export function measuredText(a: Measured, unit: string, limits: DigitLimits = {}): string {
  const { value, uncertainty } = formatMeasured(a, limits);
  if (!uncertainty) return `${value} ${unit}`.trim();
  const both = `${value} ± ${uncertainty}`;
  return unit.startsWith('%') ? `(${both}) ${unit}` : `${both} ${unit}`.trim();
}

/** A measured number for lists, without its ±: its digits follow the ±, and zeros at the end are left out: '1', '1.07'. */
export function formatKnown(a: Measured, limits: DigitLimits = {}): string {
  const uncertainty = expanded(a);
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty)) return formatPlain(a.value, limits.most ?? MOST);
  return formatPlain(Number(digitsAt(a.value, placeOf(a.value, uncertainty, limits))), 12);
}

/** A figure of a table with the half-width of its source, '0.944 ± 0.009 g/mL'; as it is given where there is none. */
export function citedText(value: number, halfWidth: number | undefined, unit: string): string {
  if (!halfWidth) return `${formatGiven(value)} ${unit}`;
  return measuredText(measured(value, halfWidth / 2, { id: 'cited', words: 'cited' }), unit, { most: 6 });
}

/** A number that is known as well as `like` (as a share of it), for lists: formatKnown of it. */
export function formatLike(x: number, like: Measured, limits: DigitLimits = {}): string {
  return like.value > 0 ? formatKnown(scaled(like, x / like.value), limits) : formatPlain(x, limits.most ?? MOST);
}

/** The power of ten of the last digit that a number with this ± shows. */
function placeOf(value: number, uncertainty: number, { most = MOST, step = 0 }: DigitLimits): number {
  const [first, exponent] = uncertainty.toExponential(1).split('e') as [string, string];
  const own = Number(exponent) - (first < '3' ? 1 : 0);
  return Math.max(own, lastPlace(value, most), step > 0 ? placeOfStep(step) : -Infinity, -FINEST);
}

/** The power of ten of the last of so many significant digits. */
function lastPlace(x: number, figures: number): number {
  return x === 0 ? -Infinity : Number(x.toExponential(figures - 1).split('e')[1]) - figures + 1;
}

/** The power of ten of the last digit of a scale: -2 of 0.01 and of 0.02 g. */
function placeOfStep(step: number): number {
  return Math.floor(Math.log10(step) + 1e-9);
}

const FINEST = 12; // decimals; what is smaller is the noise of binary fractions

/** A number for reading, rounded to a power of ten. */
function formatAt(x: number, place: number): string {
  return shown(digitsAt(x, place));
}

function digitsAt(x: number, place: number): string {
  if (place === -Infinity) return '0';
  if (place <= 0) return x.toFixed(Math.min(FINEST, -place)).replace(/^-(?=[0.]*$)/, '');
  return withoutExponent(Math.round(x / 10 ** place) * 10 ** place);
}

/** All digits of a number: '0.0000001', never '1e-7'; '0' for the noise of binary fractions. */
function withoutExponent(x: number): string {
  const text = String(x);
  if (!text.includes('e')) return text;
  if (Math.abs(x) > 1) return BigInt(x).toString();
  return Math.abs(x) < 10 ** -FINEST ? '0' : x.toFixed(FINEST + 4).replace(/0+$/, '');
}

function shown(digits: string): string {
  return withLocalSign(digits.replace(/^-(?=[0.]*$)/, '').replace('-', '−'));
}
