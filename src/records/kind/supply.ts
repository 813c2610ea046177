import * as z from 'zod/mini';
import { gradeSchema, searchOfLot, smellOnlyMark, standing } from './quantity';
import { amount, day } from './ranges';
import { envelope, everyOne, madeOf, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('supply'),
    name: z.string(),
    sort: z.enum(['solvent', 'strips', 'vials', 'other']),
    /** For a solvent: its id in the table or among the person's own; what vials took of it is counted off. */
    solvent: z.optional(z.string()),
    /** Of a solvent: whether this bottle of it may go into a drink; left out where no one has read its label. */
    grade: z.optional(gradeSchema),
    ...smellOnlyMark,
    unit: z.enum(['g', 'pieces']),
    /** What there was when it was put on the Shelf, in `unit`. */
    amount,
    supplier: z.string(),
    lot: z.string(),
    useBy: z.optional(day),
    ...standing,
  }),
);

/** What the bench uses up beside materials: a bottle of solvent, a pack of strips, a box of vials. */
export const supply = {
  kind: 'supply',
  schema,
  upgrades: [],
  words: { one: 'Supply', many: 'Solvents, strips, glass' },
  shelf: everyOne,
  descent: ({ solvent }) => madeOf(...(solvent ? [solvent] : [])),
  search: (supply) => searchOfLot(supply),
  label: false,
  edit: true,
  repeat: true,
  page: {
    title: ({ name }) => name,
    line: ({ supplier, lot }) => [supplier, lot && `lot ${lot}`],
    facts: ({ supplier, lot, amount, unit, useBy }) => [
      ['Supplier', supplier],
      ['Lot', lot],
      ['Amount', { amount, unit }],
      ['Use by', { day: useBy }],
    ],
  },
} as const satisfies Kind<Supply>;
export type Supply = z.output<typeof schema>;
