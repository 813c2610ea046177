import { Refusal } from '../text/refusal';

/**
 * A day (YYYY-MM-DD) that many months later; a day that the month does not have becomes its last one (31 January + 1 month is
 * 28 or 29 February; our choice). Whole months, any sign. Proleptic Gregorian calendar, no time zone.
 * @throws Refusal for what is no day
 */
export function monthsLater(day: string, months: number): string {
  const [year, month, date] = partsOf(day);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return `${first.toISOString().slice(0, 8)}${String(Math.min(date, last)).padStart(2, '0')}`;
}

/**
 * Whole days from one day to another, both YYYY-MM-DD; negative when the second is earlier. Calendar arithmetic.
 * @throws Refusal for what is no day
 */
export function daysBetween(from: string, to: string): number {
  const [a, b] = [partsOf(from), partsOf(to)].map(([year, month, date]) => Date.UTC(year, month - 1, date));
  return Math.round((b! - a!) / 86_400_000); // ms in a day
}

/**
 * Whether a text is a day that a calendar has: YYYY-MM-DD, of the years 1900 to 2200 (our choice: what is on a label or a page of
 * a notebook). Gregorian calendar.
 */
export function isDay(text: string): boolean {
  const at = /^(19|20|21)\d{2}-\d{2}-\d{2}$|^2200-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : NaN;
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text); // 30 February is read as 2 March
}

function partsOf(day: string): [number, number, number] {
  if (!isDay(day)) throw new Refusal('“{day}” is not a day', { day });
  const [year, month, date] = day.split('-').map(Number);
  return [year!, month!, date!];
}
