import * as z from 'zod/mini';
import { Refusal } from '../../core/text/refusal';
import type { Parcel } from '../union/summary';

/** What two devices say to each other, and in which order; another number means that they do not understand each other. */
export const PROTOCOL = 1;

const introduction = z.object({
  protocol: z.number(),
  /** Id of the device. */
  device: z.string(),
  /** What its owner calls it. */
  name: z.string(),
  /** The version in which it writes each kind of record. */
  kinds: z.record(z.string(), z.number()),
});
/** What a device says of itself. */
export type Introduction = z.output<typeof introduction>;

const parcel = z.object({
  records: z.array(z.looseObject({ id: z.string(), kind: z.string(), v: z.number() })),
  events: z.array(z.looseObject({ run: z.string(), seq: z.number() })), // looked into when they are joined
});
const message = z.discriminatedUnion('is', [
  z.object({ is: z.literal('hello'), hello: introduction }),
  z.object({
    is: z.literal('summary'),
    summary: z.object({ version: z.literal(1), has: z.readonly(z.array(z.string())) }),
  }),
  /** How many parcels follow, and how many records and steps are in them. */
  z.object({ is: z.literal('plan'), parcels: z.number(), items: z.number() }),
  z.object({ is: z.literal('parcel'), parcel }),
  /** The oldest parcel not yet answered is stored. */
  z.object({ is: z.literal('stored') }),
  z.object({ is: z.literal('stop') }),
]);
export type Message = Exclude<z.output<typeof message>, { is: 'parcel' }> | { is: 'parcel'; parcel: Parcel };

/** A message as bytes. */
export function messageOf(said: Message): Uint8Array {
  return new TextEncoder().encode(JSON.stringify(said));
}

/** What bytes say; refused where they say nothing that this version knows. */
export function messageFrom(bytes: Uint8Array): Message {
  const read = message.safeParse(JSON.parse(new TextDecoder().decode(bytes)));
  if (!read.success)
    throw new Refusal('The other device says something that this version of Minim does not understand.');
  return read.data as Message;
}
