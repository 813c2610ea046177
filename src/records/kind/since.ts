import * as z from 'zod/mini';
import { measuredSchema } from './quantity';
import { amount, celsius, day, dayOrNone, figure, moment } from './ranges';

/** When it was written down (UTC, ISO 8601), under an id of its own: two devices join what each has. */
const written = { id: z.string(), at: moment };

/** A count of bottles, or the number of one. */
const bottles = z.int().check(z.gte(0), z.lte(100_000));

/** What can be read off a batch. */
const quantity = z.enum(['brix', 'abv', 'acid', 'pH', 'litres', 'gas']);
export type Quantity = z.output<typeof quantity>;

/** A reading as the instrument showed it: °Brix, % ABV, g/L (as citric acid), pH, L, or bar on the gauge at `atC`; `u` is standard. */
const reading = z.object({
  ...written,
  fact: z.literal('reading'),
  of: quantity,
  /** Of °Brix: a refractometer also shows acid and alcohol; a density meter or hydrometer is lowered by alcohol. */
  by: z.optional(z.enum(['refractometer', 'density'])),
  value: figure,
  u: amount,
  atC: z.optional(celsius),
});

/** What was added to correct it, g, and the drink before: what was weighed stands among the weighings of the batch. */
const mended = z.object({
  ...written,
  fact: z.literal('mended'),
  added: z.array(z.object({ id: z.string(), name: z.string(), massG: amount })),
  before: z.object({ litres: measuredSchema, brix: measuredSchema, abv: measuredSchema }),
});

/** Bottles that were filled, numbered from `first` on. */
const filled = z.object({
  ...written,
  fact: z.literal('filled'),
  first: bottles,
  count: bottles,
  ml: amount,
});

/** Bottles put aside: their numbers, where, and until which day (YYYY-MM-DD). */
const retained = z.object({
  ...written,
  fact: z.literal('retained'),
  from: bottles,
  to: bottles,
  where: z.string(),
  until: dayOrNone,
});

/** Bottles that were put aside are no longer there: drunk, tasted or thrown away. */
const gone = z.object({ ...written, fact: z.literal('gone'), of: z.string() });

/** A trial that lasts: which, under what, and the days on which it is looked at. */
const trial = z.object({
  ...written,
  fact: z.literal('trial'),
  sort: z.string(),
  under: z.string(),
  begun: day,
  dues: z.array(day),
});

/** What was found on one of those days. */
const seen = z.object({
  ...written,
  fact: z.literal('seen'),
  trial: z.string(),
  due: z.string(),
  state: z.enum(['as the control', 'slightly off', 'clearly off', 'spoiled']),
  words: z.string(),
});

/** How a trial ended. */
const verdict = z.object({
  ...written,
  fact: z.literal('verdict'),
  trial: z.string(),
  passed: z.boolean(),
  words: z.string(),
});

/** Something that was done to a batch, or found, after it was made. Only ever added. */
export const sinceSchema = z.discriminatedUnion('fact', [
  reading,
  mended,
  filled,
  retained,
  gone,
  trial,
  seen,
  verdict,
]);
export type Since = z.output<typeof sinceSchema>;
export type SinceOf<F extends Since['fact']> = Extract<Since, { fact: F }>;
