import * as z from 'zod/mini';
import { amount, liking, share, whole } from './ranges';
import { envelope, onlyLedTo, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('test'),
    name: z.string(),
    /** Which method: triangle, duo-trio, paired, preference, ranking, threshold, hedonic. */
    test: z.string(),
    /** alone: codes hidden, shuffled by hand; served: somebody else handed the cups over in the order planned. */
    served: z.enum(['alone', 'served']),
    samples: z.array(z.string()),
    /** Whose nose it was: an id of a panel, no name; left out of a test outside of a panel. */
    assessor: z.optional(z.string()),
    /** Of what one has more, where that was asked. */
    attribute: z.optional(z.string()),
    /** Ids of the vials, tastings or batches that the samples are, by place; null for one that was only named. */
    sources: z.optional(z.array(z.nullable(z.string()))),
    /** Places of the samples in the order that was expected before the first sip, lowest first. */
    expected: z.optional(z.array(whole)),
    /** Risk of calling a difference that is not there. */
    risk: share,
    /** Strengths of a threshold ladder, in `unit`. */
    steps: z.optional(z.array(amount)),
    unit: z.optional(z.string()),
    sets: z.array(
      z.object({
        /** Code and place in `samples`, in the order planned. */
        cups: z.array(z.object({ code: whole, sample: whole })),
        /** Code under the card of the set, where cards were shuffled; the codes of its cups are then their places. */
        card: z.optional(whole),
        /** Codes as answered: the one named, or all in order. */
        answer: z.array(whole),
        /** Liking of each code of the answer, 1 to 9. */
        liking: z.optional(z.array(liking)),
      }),
    ),
    /** What came out, in plain words. */
    outcome: z.string(),
    /** Chance of as much by guessing alone, where the method gives one. */
    p: z.nullable(share),
  }),
);

/** A blind test: its design, codes, answers and what came out. */
export const test = {
  kind: 'test',
  schema,
  upgrades: [],
  words: { one: 'Blind test', many: 'Blind tests' },
  shelf: null, // what was done is in the Book
  descent: ({ sources = [] }) => onlyLedTo(...sources.flatMap((id) => id ?? [])),
  search: () => [],
  label: false,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Test>;
export type Test = z.output<typeof schema>;
