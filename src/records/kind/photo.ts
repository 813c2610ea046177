import * as z from 'zod/mini';
import { amount, moment, some } from './ranges';
import { envelope, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('photo'),
    /** Id of the thing or the run that it shows. */
    of: z.string(),
    /** UTC, ISO 8601. */
    taken: moment,
    /** Of the stored picture, in pixels. */
    width: some,
    height: some,
    /** Bytes of the stored picture. */
    bytes: amount,
    /** Id of the picture itself, a record of its own: this one is on hand at all times, and so has to be small. */
    picture: z.string(),
  }),
);

/** That there is a photo of a thing or a run. */
export const photo = {
  kind: 'photo',
  schema,
  upgrades: [],
  words: { one: 'Photo', many: 'Photos' },
  shelf: null, // photos are on the page of what they show
  descent: null,
  search: null,
  label: false,
  edit: false,
  repeat: false,
  page: { title: () => 'Photo', line: ({ taken }) => [{ day: taken }], facts: () => [] },
} as const satisfies Kind<Photo>;
export type Photo = z.output<typeof schema>;
