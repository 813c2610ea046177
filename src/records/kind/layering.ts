import * as z from 'zod/mini';
import { amount, celsius, figure, liking, moment } from './ranges';
import { envelope, onlyLedTo, type Kind } from './record';

const reading = z.object({
  at: moment,
  /** Minutes after the dip, null for "now". */
  minute: z.nullable(figure),
  vials: z.array(z.string()),
  words: z.string(),
  /** 0 to 10. */
  intensity: z.nullable(figure),
  /** 1 dislike extremely to 9 like extremely. */
  liking: z.nullable(liking),
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
        dips: amount,
        dippedAt: z.nullable(moment),
        takenOutAt: z.nullable(moment),
        /** When the person called it dry, if they did: their own drying time. */
        driedAt: z.optional(moment),
        /** The colour family the person gave it. */
        family: z.optional(z.string()),
      }),
    ),
    /** Room temperature, °C, where it was noted. */
    roomC: z.optional(celsius),
    readings: z.array(reading),
    /** `vials`: which of the strips it is about; left out, it is about the fan. `wet`: they were never smelled together dry. */
    verdict: z.object({
      liking: z.nullable(liking),
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
