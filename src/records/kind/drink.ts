import * as z from 'zod/mini';
import { measuredIn, useSchema } from './quantity';
import { amount, figure, gPerMl, liking, percent, some } from './ranges';
import { envelope, madeOf, type Kind } from './record';

const baseFacts = {
  name: z.string(),
  volumeMl: some,
  /** g of sucrose per 100 g. */
  brix: percent,
  /** Alcohol by volume, %. */
  abv: percent,
  densityGPerMl: gPerMl,
  pH: z.optional(figure),
  carbonation: z.optional(z.string()),
};
const baseSchema = z.lazy(() => z.object({ ...envelope('base'), ...baseFacts }));

/** A drink before it is flavoured. */
export const base = {
  kind: 'base',
  schema: baseSchema,
  upgrades: [],
  words: { one: 'Drink base', many: 'Drink bases' },
  shelf: null, // chosen where a drink is dosed
  descent: () => madeOf(),
  search: () => [],
  label: false,
  edit: false,
  repeat: false,
  page: 'own',
} as const satisfies Kind<Base>;
export type Base = z.output<typeof baseSchema>;

const tastingSchema = z.lazy(() =>
  z.object({
    ...envelope('tasting'),
    base: z.object(baseFacts),
    doses: z.array(
      z.object({ vial: z.string(), code: z.string(), drops: z.nullable(amount), massG: measuredIn(amount) }),
    ),
    reached: z.array(
      z.object({
        material: z.string(),
        name: z.string(),
        mgPerKg: measuredIn(amount),
        /** mg per litre of the finished drink. */
        mgPerL: z.optional(measuredIn(amount)),
      }),
    ),
    /** Alcohol of the whole, % ABV. */
    abv: z.optional(measuredIn(percent)),
    /** One glass of a series: its code, whether that was blind, whether it was the best, and how the blank beside it was. */
    glass: z.optional(
      z.object({
        code: z.string(),
        blind: z.boolean(),
        best: z.boolean(),
        /** The glass without the material: with drops of which solvent, if any. */
        blank: z.optional(
          z.object({
            code: z.string(),
            solvent: z.optional(z.string()),
            drops: z.optional(amount),
            verdict: z.string(),
            liking: z.nullable(liking),
          }),
        ),
      }),
    ),
    /** Why it was kept although it is over a limit. */
    although: z.optional(z.string()),
    verdict: z.string(),
    liking: z.nullable(liking),
    uses: z.array(useSchema),
  }),
);

/** A drink as dosed and tasted. */
export const tasting = {
  kind: 'tasting',
  schema: tastingSchema,
  upgrades: [],
  words: { one: 'Drink', many: 'Drinks' },
  shelf: null, // what was done is in the Book
  descent: ({ doses }) => ({ isIn: doses.map(({ vial, massG }) => ({ id: vial, grams: massG })), ledTo: [] }),
  search: ({ reached, verdict }) => [
    [reached.map(({ name }) => name).join(' '), 'other'],
    [verdict, 'word'],
  ],
  label: false,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Tasting>;
export type Tasting = z.output<typeof tastingSchema>;
