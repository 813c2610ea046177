import * as z from 'zod/mini';
import { amount } from './ranges';
import { envelope, everyOne, onlyLedTo, type Kind } from './record';

const share = z.number().check(z.nonnegative());

const schema = z.lazy(() =>
  z.object({
    ...envelope('vessel'),
    name: z.string(),
    /** What it is and its class, as it was chosen: 'Graduated cylinder, 10 mL, class A'. */
    sort: z.string(),
    capacityMl: amount,
    /** To what a reading can be told, mL to either side. */
    readsMl: amount,
    /** How far a filling may be off: mL anywhere on the scale, or shares as of a syringe. */
    tolerance: z.union([z.object({ mL: amount }), z.object({ halfFull: share, ofCapacity: share, ofVolume: share })]),
  }),
);

/** A vessel with graduations, known by its name. */
export const vessel = {
  kind: 'vessel',
  schema,
  upgrades: [],
  words: { one: 'Vessel', many: 'Vessels' },
  shelf: everyOne,
  descent: () => onlyLedTo(),
  search: () => [],
  label: false,
  edit: true,
  repeat: false,
  page: {
    title: ({ name }) => name,
    line: ({ sort }) => [sort],
    facts: ({ sort, capacityMl, tolerance }) => [
      ['What it is', sort],
      ['Holds', { amount: capacityMl, unit: 'mL' }],
      ['Each filling may be off by', 'mL' in tolerance ? { amount: tolerance.mL, unit: 'mL' } : undefined],
      ['From half full on, off by', 'mL' in tolerance ? undefined : { amount: tolerance.halfFull * 100, unit: '%' }],
    ],
  },
} as const satisfies Kind<Vessel>;
export type Vessel = z.output<typeof schema>;
