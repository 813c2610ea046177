import * as z from 'zod/mini';
import { densitySchema, smellOnlyMark } from './quantity';
import { celsius, share } from './ranges';
import { envelope, everyOne, madeOf, type Kind } from './record';

/** What a task needs to know of a solvent; a vial keeps a copy, so that it stays true when the solvent is edited. */
export const solventFacts = {
  name: z.string(),
  density: densitySchema,
  /** Food grade, by the word of the bottle. */
  food: z.boolean(),
  /** Flash point in °C, where known. */
  flashC: z.optional(celsius),
  /** Alcohol by volume, mL/mL at 20 °C; 0 where there is none. Of a solvent of one's own left out where it is not known. */
  abv: z.optional(share),
  cas: z.optional(z.string()),
  /** How it behaves on a strip. */
  dryOff: z.enum(['minutes', 'hours', 'stays wet', 'unknown']),
};

const schema = z.lazy(() => z.object({ ...envelope('solvent'), ...solventFacts, ...smellOnlyMark }));

/** A solvent of the person's own, beside the usual ones. */
export const solvent = {
  kind: 'solvent',
  schema,
  upgrades: [],
  words: { one: 'Solvent', many: 'Own solvents' },
  shelf: everyOne,
  descent: () => madeOf(),
  search: () => [],
  label: false,
  edit: true,
  repeat: false,
  page: 'own',
} as const satisfies Kind<Solvent>;
export type Solvent = z.output<typeof schema>;
/** The copy of a solvent that a vial keeps. */
export const solventCopy = z.object({ id: z.string(), ...solventFacts });
export type SolventCopy = z.output<typeof solventCopy>;
