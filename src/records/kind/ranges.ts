import * as z from 'zod/mini';
import { isDay } from '../../core/number/calendar';

/**
 * What a stored number or time can be at all. What is not in its range is no slip that can be guessed at: the record is kept as it
 * is and shown so. The ranges are those of the thing where it has any (a share, %, pH), else wider than any bench (our choice).
 */
const MOST = 1e9;
const NO_DAY = 'no day that a calendar has';

/** A number of any sign. */
export const figure = z.number().check(z.gte(-MOST), z.lte(MOST));
/** Grams, mL, pieces, drops, mg/kg, a price, an uncertainty: 0 or more. */
export const amount = z.number().check(z.gte(0), z.lte(MOST));
/** What is divided by: more than 0. */
export const some = z.number().check(z.gte(1e-9), z.lte(MOST));
/** g/g, mL/mL or a chance, 0 to 1; rounding may have taken it past either end. */
export const share = z.number().check(z.gte(-1e-6), z.lte(1 + 1e-6));
/** g per 100 g, or mL per 100 mL; the same of rounding. */
export const percent = z.number().check(z.gte(-0.001), z.lte(100.001));
/** °C; what is done at a bench, from dry ice to what boils last. */
export const celsius = z.number().check(z.gte(-273.15), z.lte(2000));
/** g/mL, from a gas to the densest metal. */
export const gPerMl = z.number().check(z.gte(1e-4), z.lte(25));
/** How something is liked: 1, dislike extremely, to 9, like extremely. */
export const liking = z.number().check(z.gte(1), z.lte(9));
/** g/g of what its name says; what is not there at all is no material. */
export const purity = z.number().check(z.gte(1e-6), z.lte(1));
/** A whole number, from 0: a place in a list, a code, a version. */
export const whole = z.int().check(z.gte(0), z.lte(MOST));

/** A day that a calendar has, YYYY-MM-DD. */
export const day = z.string().check(z.refine(isDay, { error: NO_DAY }));
/** The same, or '' for none. */
export const dayOrNone = z.string().check(z.refine((text) => text === '' || isDay(text), { error: NO_DAY }));
/** A moment, UTC, ISO 8601, of a day that a calendar has; of the first versions the day alone. */
export const moment = z.string().check(z.refine(isMoment, { error: NO_DAY }));

function isMoment(text: string): boolean {
  return isDay(text.slice(0, 10)) && text.length <= 30 && !Number.isNaN(Date.parse(text));
}

/** The same, or '' where it was not noted. */
export const momentOrNone = z.string().check(z.refine((text) => text === '' || isMoment(text), { error: NO_DAY }));

/** Of a list with one entry for each of another, that both are as long. */
export function asMany(list: readonly unknown[], ...others: readonly (readonly unknown[])[]): boolean {
  return others.every(({ length }) => length === list.length);
}
