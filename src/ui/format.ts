import { isDay } from '../core/number/calendar';
import { expanded, type Measured } from '../core/number/measured';
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

/** A moment (ISO 8601) for reading, in the phone's own time. */
export function formatMoment(stored: string): string {
  if (isFile) return stored;
  momentFormat ??= new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' });
  return momentFormat.format(Date.parse(stored));
}

/** A count of things for reading; thousands stand apart from 10,000 on. */
export function formatCount(n: number): string {
  counts ??= new Intl.NumberFormat(language, { useGrouping: 'min2' } as unknown as Intl.NumberFormatOptions); // 9999, 10,000
  return counts.format(n);
}

/** A number as it could be typed, with a point: for what is in a field. At most `digits` significant ones. */
export function formatTyped(x: number, digits = 4): string {
  return String(Number(x.toPrecision(digits)));
}

/** The tag, or English where it is none: WebKitGTK without a locale calls its language 'C'. */
function usable(tag: string | undefined): string {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? 'en-US';
  } catch {
    return 'en-US';
  }
}

/** A number for reading, without trailing zeros and without a unit: at most `digits` significant ones. */
export function formatPlain(x: number, digits = 4): string {
  return Number.isFinite(x) ? withLocalSign(formatTyped(x, digits).replace('-', '−')) : '–';
}

/** A number as it was given: all its digits, for reading. */
export function formatGiven(x: number): string {
  return formatPlain(x, 15);
}

/** A number with a fixed count of decimals. */
export function formatFixed(x: number, decimals: number): string {
  return withLocalSign(x.toFixed(decimals).replace('-', '−'));
}

/** A number with a fixed count of significant digits, zeros at the end included. */
export function formatFigures(x: number, figures: number): string {
  return withLocalSign(x.toPrecision(figures).replace('-', '−'));
}

/** Decimals that show two significant digits of an uncertainty, 0 to 6. */
function decimalsFor(uncertainty: number): number {
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
}

/** A measured number and its ± at k = 2, both to two significant digits of the ±: { value: '1.04', uncertainty: '0.11' }. */
export function formatMeasured(a: Measured): { value: string; uncertainty: string } {
  const uncertainty = expanded(a);
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty)) return { value: formatPlain(a.value), uncertainty: '' };
  const decimals = decimalsFor(uncertainty);
  return { value: formatFixed(a.value, decimals), uncertainty: formatFixed(uncertainty, decimals) };
}

/** '1.04 ± 0.11 %'; a measured number on one line. */
export function measuredText(a: Measured, unit: string): string {
  const { value, uncertainty } = formatMeasured(a);
  return `${value}${uncertainty && ` ± ${uncertainty}`} ${unit}`;
}

/** 'now', 'in 12 min', 'in 3 h' of a moment to come; both in ms since 1970. */
export function until(then: number, now: number): string {
  const minutes = Math.ceil((then - now) / 60_000);
  if (minutes <= 0) return 'now';
  return minutes < 90 ? `in ${minutes} min` : `in ${Math.round(minutes / 60)} h`;
}

/** '12 min ago', '3 h ago', '2 days ago'; both in ms since 1970. */
export function ago(then: number, now: number): string {
  const minutes = Math.max(0, Math.round((now - then) / 60_000));
  if (minutes < 1) return 'just now';
  if (minutes < 60) return `${minutes} min ago`;
  const hours = Math.round(minutes / 60);
  if (hours < 48) return `${hours} h ago`;
  return `${Math.round(hours / 24)} days ago`;
}
