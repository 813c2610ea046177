import * as z from 'zod/mini';
import { envelope, type Kind } from './record';

const schema = z.lazy(() => z.object({ ...envelope('device'), name: z.string() }));

/** A phone, tablet or computer that something was written on, by the name that its owner gave it. Its id is the one in its writes. */
export const device = {
  kind: 'device',
  schema,
  upgrades: [],
  words: { one: 'Device', many: 'Devices' },
  shelf: null, // named in the settings, and beside what was done on it
  descent: null,
  search: null,
  label: false,
  edit: false,
  repeat: false,
  page: { title: ({ name }) => name, line: () => [], facts: () => [] },
} as const satisfies Kind<DeviceRecord>;
export type DeviceRecord = z.output<typeof schema>;
