import * as z from 'zod/mini';
import { amount } from './ranges';
import { envelope, everyOne, onlyLedTo, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('scale'),
    name: z.string(),
    /** Its smallest step, g. */
    readabilityG: z.number().check(z.positive()),
    /** The most that it carries, g. */
    capacityG: z.optional(amount),
    /** What one coin weighed each time it was put on, g: how well the scale repeats. */
    coinG: z.optional(z.array(amount)),
  }),
);

/** A scale, known by its name. */
export const scale = {
  kind: 'scale',
  schema,
  upgrades: [],
  words: { one: 'Scale', many: 'Scales' },
  shelf: everyOne,
  descent: () => onlyLedTo(),
  search: () => [],
  label: false,
  edit: true,
  repeat: false,
  page: {
    title: ({ name }) => name,
    line: ({ readabilityG }) => [{ amount: readabilityG, unit: 'g' }],
    facts: ({ readabilityG, capacityG, coinG = [] }) => [
      ['Smallest step', { amount: readabilityG, unit: 'g' }],
      ['Carries', capacityG === undefined ? undefined : { amount: capacityG, unit: 'g' }],
      ...coinG.map((amount, i) => [`Coin, weighing ${i + 1}`, { amount, unit: 'g' }] as const),
    ],
  },
} as const satisfies Kind<Scale>;
export type Scale = z.output<typeof schema>;
