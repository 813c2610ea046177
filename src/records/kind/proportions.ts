import * as z from 'zod/mini';
import { useSchema } from './quantity';
import { envelope, onlyLedTo, type Kind } from './record';

/** Drops of each vial, in the order of `vials`, and what share of the blend each of them is by mass, 0 to 1. */
const blend = z.object({ drops: z.array(z.number()), shares: z.array(z.number()) });

const schema = z.lazy(() =>
  z.object({
    ...envelope('proportions'),
    name: z.string(),
    /** What was blended; `mgPerDrop` as known then. */
    vials: z.array(z.object({ id: z.string(), code: z.string(), mgPerDrop: z.number() })),
    /** The least and the most share of each vial that was allowed, 0 to 1. */
    bounds: z.array(z.object({ least: z.number(), most: z.number() })),
    /** What was asked of each blend; '' for how it is liked. */
    question: z.string(),
    /** Each blend on a strip, or in an empty vial. */
    on: z.enum(['strip', 'vial']),
    /** Drops asked for in each blend. */
    total: z.number(),
    /** Every blend judged, in the order of judging; those of an earlier search that it went on from come first. */
    blends: z.array(
      z.extend(blend, {
        /** 1 to 9. */
        liking: z.number(),
        at: z.string(),
        /** Code that it was judged under, where codes hid what is what. */
        code: z.optional(z.number()),
      }),
    ),
    /** The blend that is expected to be best, points of liking with their standard uncertainty; the one that comes after it. */
    best: z.extend(blend, { expected: z.number(), uncertainty: z.number() }),
    runnerUp: z.nullable(z.extend(blend, { expected: z.number(), uncertainty: z.number() })),
    /** Whether the two differ by at least twice the standard uncertainty of their difference. */
    toldApart: z.boolean(),
    uses: z.array(useSchema),
  }),
);

/** How much of each: blends of a few vials, each liked or not, and the one that is expected to be best. */
export const proportions = {
  kind: 'proportions',
  schema,
  upgrades: [],
  words: { one: 'Proportions', many: 'Proportions' },
  shelf: null, // what was done is in the Book
  descent: ({ vials }) => onlyLedTo(...vials.map(({ id }) => id)),
  search: ({ question }) => [[question, 'word']],
  label: false,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Proportions>;
export type Proportions = z.output<typeof schema>;
