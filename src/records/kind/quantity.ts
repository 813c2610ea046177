import * as z from 'zod/mini';
import { exact, measured } from '../../core/number/measured';
import { shortIdOf } from './shortId';
import { amount, celsius, figure, gPerMl, moment, some } from './ranges';
import type { Part, SearchText } from './record';

/** core/measured.ts as stored: a value with its sources of uncertainty, all in one unit, given by the field's name. */
export const measuredSchema = z.object({
  value: figure,
  sources: z.readonly(z.array(z.object({ id: z.string(), words: z.string(), u: figure }))),
});
/** The same of what cannot be less than none, in a range. */
export function measuredIn(range: typeof amount) {
  return z.extend(measuredSchema, { value: range });
}

/** A density in g/mL, at a temperature in °C, with where it was read, and half the width of what sources or lots give. */
export const densitySchema = z.object({
  gPerMl,
  atC: celsius,
  source: z.string(),
  halfWidth: z.optional(amount),
});

/** A number with where it was read; its unit is given by the field's name. */
export const citedSchema = z.object({ value: figure, source: z.string() });

/** The source of a value that the person typed. */
export const AS_TYPED = 'as typed by hand';

/** Smell only: diluted with what must never be swallowed. Fit for drinks: every part of it may be. */
export const gradeSchema = z.enum(['smell only', 'fit for drinks']);
export type Grade = z.output<typeof gradeSchema>;

/** The write that it came with, as in the envelope; marks and weighings of older versions do not say. */
const signedBy = z.optional(z.string());

/**
 * That a thing was marked smell only after it was made or bought, when (UTC, ISO 8601) and why, in the person's words. It is never
 * taken out again: `keep` carries it over, and of two copies the one that has it wins.
 */
export const smellOnlyMark = { smellOnly: z.optional(z.object({ at: moment, why: z.string(), by: signedBy })) };

/**
 * Grams taken out of a bottle or vial, and what was known of it then; of a solvent without a bottle, its own id. Records of the first
 * version have id and grams only. What it was called is history: grade and limits are those of the thing itself, today.
 */
export const useSchema = z.object({
  id: z.string(),
  massG: amount,
  /** How the grams are known. */
  how: z.optional(z.enum(['counted', 'weighed', 'poured'])),
  /** Standard uncertainty of the grams. */
  u: z.optional(amount),
  drops: z.optional(amount),
  ml: z.optional(amount),
  code: z.optional(z.string()),
  name: z.optional(z.string()),
  /** As on its label, such as '1 % w/v'; 'neat' from a bottle. */
  strength: z.optional(z.string()),
  lot: z.optional(z.string()),
  supplier: z.optional(z.string()),
  dropper: z.optional(z.object({ id: z.string(), name: z.string() })),
});
export type Use = z.output<typeof useSchema>;

/** What was taken as a part of what it went into, with its uncertainty where that was written down. */
export function partOf({ id, massG, u = 0 }: Use): Part {
  const source = { id: `taken:${id}`, words: 'what was taken' };
  return { id, grams: u > 0 ? measured(massG, u, source) : exact(massG) };
}

/** Where a thing stands on the shelf, and how its amount is watched. */
export const standing = {
  box: z.optional(z.string()),
  row: z.optional(z.string()),
  /** Mass of the empty glass with its cap, g. */
  emptyG: z.optional(amount),
  /** What was found to be left by weighing (g) or counting; nothing of it is ever taken out. */
  weighed: z.optional(
    z.array(
      z.object({
        at: moment,
        left: measuredSchema,
        /** What the scale showed with glass and cap, g: the next time it tells what is missing without an empty glass. */
        wholeG: z.optional(amount),
        /** Times by which a vial got stronger, where the person said that what is missing has evaporated. */
        stronger: z.optional(measuredIn(some)),
        by: signedBy,
      }),
    ),
  ),
  /** At this many g or pieces it is time for more. */
  lowAt: z.optional(amount),
  /** Put on the shopping list by hand. */
  buy: z.optional(z.boolean()),
};

/** What a bottle or pack is found by: its lot, who sold it, its box and the short id of its label. */
export function searchOfLot(lot: {
  id: string;
  lot: string;
  supplier: string;
  box?: string | undefined;
}): SearchText[] {
  return [
    [lot.lot, 'number'],
    [`${lot.supplier} ${lot.box ?? ''} ${shortIdOf(lot.id)}`, 'other'],
  ];
}
