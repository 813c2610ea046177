import * as z from 'zod/mini';
import { useSchema } from './quantity';
import { amount, asMany, figure, liking, moment, share, some, whole } from './ranges';
import { envelope, onlyLedTo, type Kind } from './record';

/** Drops of each vial, in the order of `vials`, and what share of the blend each of them is by mass, 0 to 1. */
const blend = z.object({ drops: z.array(amount), shares: z.array(share) });

const facts = z.lazy(() =>
  z.object({
    ...envelope('proportions'),
    name: z.string(),
    /** What was blended; `mgPerDrop` as known then. */
    vials: z.array(z.object({ id: z.string(), code: z.string(), mgPerDrop: some })),
    /** The least and the most share of each vial that was allowed, 0 to 1. */
    bounds: z.array(z.object({ least: share, most: share })),
    /** What was asked of each blend; '' for how it is liked. */
    question: z.string(),
    /** Each blend on a strip, or in an empty vial. */
    on: z.enum(['strip', 'vial']),
    /** Drops asked for in each blend. */
    total: z.int().check(z.gte(1), z.lte(1000)),
    /** Every blend judged, in the order of judging; those of an earlier search that it went on from come first. */
    blends: z.array(
      z.extend(blend, {
        /** 1 to 9. */
        liking,
        at: moment,
        /** Code that it was judged under, where codes hid what is what. */
        code: z.optional(whole),
      }),
    ),
    /** The blend that is expected to be best, points of liking with their standard uncertainty; the one that comes after it. */
    best: z.extend(blend, { expected: figure, uncertainty: amount }),
    runnerUp: z.nullable(z.extend(blend, { expected: figure, uncertainty: amount })),
    /** Whether the two differ by at least twice the standard uncertainty of their difference. */
    toldApart: z.boolean(),
    uses: z.array(useSchema),
  }),
);

type Facts = z.output<typeof facts>;

/** Whether every blend has a share and drops of each vial, its shares are all of it, and some blend is within the bounds. */
function fits({ vials, bounds, blends, best, runnerUp }: Facts): boolean {
  const all = [...blends, best, ...(runnerUp ? [runnerUp] : [])];
  const sum = (shares: readonly number[]) => shares.reduce((before, one) => before + one, 0);
  const [least, most] = [sum(bounds.map((one) => one.least)), sum(bounds.map((one) => one.most))];
  return (
    [2, 3, 4].includes(vials.length) &&
    blends.length > 0 &&
    asMany(vials, bounds, ...all.flatMap(({ drops, shares }) => [drops, shares])) &&
    all.every(({ shares }) => Math.abs(sum(shares) - 1) < ROUNDED) &&
    bounds.every((one) => one.least <= one.most) &&
    least <= 1 + ROUNDED &&
    most >= 1 - ROUNDED
  );
}

const ROUNDED = 1e-6; // of a sum of shares
const schema = z.lazy(() => facts.check(z.refine(fits, { path: ['blends'] })));

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
