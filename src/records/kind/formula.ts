import * as z from 'zod/mini';
import { envelope, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope,
    name: z.string(),
    /** Id of the first version; all versions share it. */
    root: z.string(),
    version: z.number(),
    /** Shares are parts by mass of neat material; only their ratios count. */
    lines: z.array(z.object({ material: z.string(), name: z.string(), share: z.number() })),
    notes: z.string(),
  }),
);

/** A formula, never edited in place: a change is a new version. */
export const formula = { kind: 'formula', schema, upgrades: [] } satisfies Kind;
export type Formula = z.output<typeof schema>;
