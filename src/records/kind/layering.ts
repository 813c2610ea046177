import * as z from 'zod/mini';
import { envelope, onlyLedTo, type Kind } from './record';

const reading = z.object({
  at: z.string(),
  /** Minutes after the dip, null for "now". */
  minute: z.nullable(z.number()),
  vials: z.array(z.string()),
  words: z.string(),
  /** 0 to 10. */
  intensity: z.nullable(z.number()),
  /** 1 dislike extremely to 9 like extremely. */
  liking: z.nullable(z.number()),
  note: z.string(),
  /** The vials of it whose strips were not dry yet; left out where there were none, and before that was recorded. */
  wet: z.optional(z.array(z.string())),
});

const schema = z.lazy(() =>
  z.object({
    ...envelope('layering'),
    name: z.string(),
    strips: z.array(
      z.object({
        vial: z.string(),
        code: z.string(),
        dips: z.number(),
        dippedAt: z.nullable(z.string()),
        takenOutAt: z.nullable(z.string()),
        /** When the person called it dry, if they did: their own drying time. */
        driedAt: z.optional(z.string()),
        /** The colour family the person gave it. */
        family: z.optional(z.string()),
      }),
    ),
    /** Room temperature, °C, where it was noted. */
    roomC: z.optional(z.number()),
    readings: z.array(reading),
    /** `vials`: which of the strips it is about; left out, it is about the fan. `wet`: they were never smelled together dry. */
    verdict: z.object({
      liking: z.nullable(z.number()),
      decision: z.string(),
      words: z.string(),
      vials: z.optional(z.array(z.string())),
      wet: z.optional(z.literal(true)),
    }),
  }),
);

/** Strips smelled together, what was written down, and the verdict. */
export const layering = {
  kind: 'layering',
  schema,
  upgrades: [],
  words: { one: 'Layering', many: 'Layerings' },
  shelf: null, // what was done is in the Book
  descent: ({ strips }) => onlyLedTo(...strips.map(({ vial }) => vial)),
  search: ({ readings, verdict }) => [
    [readings.map(({ words, note }) => `${words} ${note}`).join(' '), 'word'],
    [verdict.words, 'word'],
  ],
  label: false,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Layering>;
export type Layering = z.output<typeof schema>;
