import * as z from 'zod/mini';
import { amount, whole } from './ranges';
import { envelope, onlyLedTo, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('formula'),
    name: z.string(),
    /** Id of the first version; all versions share it. */
    root: z.string(),
    version: whole,
    /** Shares are parts by mass of neat material; only their ratios count. */
    lines: z.array(z.object({ material: z.string(), name: z.string(), share: amount })),
    notes: z.string(),
  }),
);

/** A formula, never edited in place: a change is a new version. */
export const formula = {
  kind: 'formula',
  schema,
  upgrades: [],
  words: { one: 'Formula', many: 'Formulas' },
  /** Its newest version, whose page has the others. */
  shelf: (all) => all.filter((one) => all.every(({ root, version }) => root !== one.root || version <= one.version)),
  descent: () => onlyLedTo(), // from its layering, trial or earlier version
  search: ({ lines, notes }) => [
    [lines.map(({ name }) => name).join(' '), 'other'],
    [notes, 'word'],
  ],
  label: false,
  edit: false,
  repeat: false,
  page: 'own',
} as const satisfies Kind<Formula>;
export type Formula = z.output<typeof schema>;
