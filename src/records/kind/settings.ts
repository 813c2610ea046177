import * as z from 'zod/mini';
import { amount, whole } from './ranges';
import { envelope, type Kind } from './record';

const keyAction = z.enum(['drop', 'undo', 'next']);
/** What a key of a foot switch or remote does: counts a drop, takes the last one back, goes on to the next step. */
export type KeyAction = z.output<typeof keyAction>;

const lineShape = z.object({ length: whole, decimals: whole, unit: z.string(), filled: z.boolean() });

const schema = z.object({
  ...envelope('settings'),
  made: z.string(), // '' where they were never changed
  theme: z.enum(['system', 'light', 'dark']),
  hand: z.enum(['right', 'left']),
  /** Basis of strengths where none was chosen. */
  basis: z.string(),
  /** Temperature of the room in °C, 5 to 40; 20 where it was never set. */
  roomC: z.optional(z.number().check(z.gte(5), z.lte(40))),
  /** Whose rules drinks are held to; EU where it was never set. */
  jurisdiction: z.optional(z.enum(['EU', 'US'])),
  /** Prices of what has no bottle on the Shelf, by the id it is weighed under: of a kg, in the person's own money; of a filled bottle each. */
  prices: z.optional(z.record(z.string(), amount)),
  /** How labels were last printed: texts of the label page by name. */
  labels: z.optional(z.record(z.string(), z.string())),
  /** Steps and counts are spoken. Off where it was never set, as the three after it. */
  speech: z.optional(z.boolean()),
  /** A tick is heard for each drop. */
  tick: z.optional(z.boolean()),
  /** Keys of a foot switch or remote count. */
  remote: z.optional(z.boolean()),
  /** Buttons of headphones count; silence is played in a run, so that the phone passes them on. */
  mediaKeys: z.optional(z.boolean()),
  /** What helps wet hands was offered on a pad, and looked at or refused. */
  handsOffered: z.optional(z.boolean()),
  /** Keys that were taught, by the browser's name for them. */
  keys: z.optional(z.record(z.string(), keyAction)),
  /** Shapes of the lines of scales that type, as they were confirmed: a shorter line was cut on the way. */
  lineShapes: z.optional(z.array(lineShape)),
});

/** How the person likes Minim. One record, id "settings". */
export const settings = {
  kind: 'settings',
  schema,
  upgrades: [],
  words: { one: 'Settings', many: 'Settings' },
  shelf: null,
  descent: null,
  search: null,
  label: false,
  edit: false,
  repeat: false,
  page: { title: () => 'Settings', line: () => [], facts: () => [] },
} as const satisfies Kind<Settings>;
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
