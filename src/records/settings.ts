import * as z from 'zod/mini';
import { envelope, type Kind } from './record';

const schema = z.object({
  ...envelope,
  theme: z.enum(['system', 'light', 'dark']),
  hand: z.enum(['right', 'left']),
  /** Basis of strengths where none was chosen. */
  basis: z.string(),
  /** Temperature of the room in °C, 10 to 30; 20 where it was never set. */
  roomC: z.optional(z.number()),
  /** Whose rules drinks are held to; EU where it was never set. */
  jurisdiction: z.optional(z.enum(['EU', 'US'])),
  /** How labels were last printed: texts of the label page by name. */
  labels: z.optional(z.record(z.string(), z.string())),
});

/** How the person likes Minim. One record, id "settings". */
export const settings = { kind: 'settings', schema, upgrades: [] } satisfies Kind;
export type Settings = z.output<typeof schema>;

export const usualSettings: Settings = {
  id: 'settings',
  kind: 'settings',
  v: 1,
  made: '',
  from: [],
  theme: 'system',
  hand: 'right',
  basis: '% w/v',
};
