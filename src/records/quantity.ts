import * as z from 'zod/mini';

/** core/measured.ts as stored: a value with its sources of doubt, all in one unit, told by the field's name. */
export const measuredSchema = z.object({
  value: z.number(),
  sources: z.readonly(z.array(z.object({ id: z.string(), words: z.string(), u: z.number() }))),
});

/** A density in g/mL, at a temperature in °C, with where it was read. */
export const densitySchema = z.object({ gPerMl: z.number().check(z.positive()), atC: z.number(), source: z.string() });

/** Smell only: thinned with what must never be swallowed. Fit for drinks: every part of it may be. */
export const gradeSchema = z.enum(['smell only', 'fit for drinks']);
export type Grade = z.output<typeof gradeSchema>;

/** Grams taken out of a bottle or vial. */
export const useSchema = z.object({ id: z.string(), massG: z.number() });
