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
  if (!/^((19|20|21)\d{2}|2200)-\d{2}-\d{2}$/.test(text)) return false;
  const [year, month, date] = [Number(text.slice(0, 4)), Number(text.slice(5, 7)), Number(text.slice(8))];
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return date >= 1 && date <= (month === 2 && isLeap ? 29 : (DAYS_OF[month - 1] ?? 0));
}

const DAYS_OF = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function partsOf(day: string): [number, number, number] {
  if (!isDay(day)) throw new Refusal('“{day}” is not a day', { day });
  const [year, month, date] = day.split('-').map(Number);
  return [year!, month!, date!];
}
