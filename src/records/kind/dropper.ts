import * as z from 'zod/mini';
import { measuredIn } from './quantity';
import { amount, celsius, figure, share, some } from './ranges';
import { envelope, everyOne, onlyLedTo, type Kind } from './record';

const dropperSchema = z.lazy(() =>
  z.object({
    ...envelope('dropper'),
    name: z.string(),
    tip: z.string(),
    /** Where drops fall from: only a square-cut tip lets a drop mass be carried over to another liquid. */
    outlet: z.optional(z.enum(['square tip', 'lip or insert'])),
    box: z.optional(z.string()),
    row: z.optional(z.string()),
  }),
);

const outletWords = { 'square tip': 'a tube cut square', 'lip or insert': 'a bottle lip or a drop insert' } as const;

function factsOf({ tip, outlet }: Dropper): readonly (readonly [string, string | undefined])[] {
  return [
    ['Tip', tip],
    ['Tip of the dropper', outlet && outletWords[outlet]],
  ];
}

/** A dropper or pipette, known by the name written on it. */
export const dropper = {
  kind: 'dropper',
  schema: dropperSchema,
  upgrades: [],
  words: { one: 'Dropper', many: 'Droppers' },
  shelf: everyOne,
  descent: () => onlyLedTo(),
  search: () => [],
  label: false,
  edit: true,
  repeat: false,
  page: { title: ({ name }) => name, line: ({ tip }) => [tip], facts: factsOf },
} as const satisfies Kind<Dropper>;
export type Dropper = z.output<typeof dropperSchema>;

const calibrationSchema = z.lazy(() =>
  z.object({
    ...envelope('calibration'),
    dropper: z.string(),
    /** The liquid weighed: id of a solvent (then it serves its weak dilutions) or of a neat material; of a stronger dilution, g/g in it. */
    liquid: z.object({ id: z.string(), name: z.string(), strength: z.optional(share) }),
    /** Every weighing in order; `out`: the person left it out of the mean. */
    readings: z.array(z.object({ drops: some, massG: figure, out: z.optional(z.literal(true)) })),
    readabilityG: some,
    temperatureC: z.optional(celsius),
    mgPerDrop: measuredIn(some),
    /** Standard deviation of one drop over its mean. */
    spread: amount,
  }),
);

/** Drops weighed once: what one drop of this liquid from this dropper weighs. */
export const calibration = {
  kind: 'calibration',
  schema: calibrationSchema,
  upgrades: [],
  words: { one: 'Calibration', many: 'Calibrations' },
  shelf: null, // what was done is in the Book, and on the page of its dropper
  descent: ({ dropper }) => onlyLedTo(dropper),
  search: () => [],
  label: false,
  edit: false,
  repeat: true,
  page: 'own',
} as const satisfies Kind<Calibration>;
export type Calibration = z.output<typeof calibrationSchema>;
