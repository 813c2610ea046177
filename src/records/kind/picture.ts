import * as z from 'zod/mini';
import { envelope, type Kind } from './record';

const schema = z.lazy(() =>
  z.object({
    ...envelope('picture'),
    type: z.enum(['image/jpeg', 'image/webp']),
    /** The file in base64 (RFC 4648, section 4). */
    data: z.string(),
  }),
);

/** What a photo shows. Too large to be on hand: it is read where it is shown, and nowhere else. */
export const picture = {
  kind: 'picture',
  schema,
  upgrades: [],
  words: { one: 'Picture', many: 'Pictures' },
  shelf: null,
  descent: null,
  search: null,
  label: false,
  edit: false,
  repeat: false,
  page: { title: () => 'Picture', line: () => [], facts: () => [] },
} as const satisfies Kind<Picture>;
export type Picture = z.output<typeof schema>;
