import { v5 } from 'uuid';
import { inOrder } from './json';

const TIME = 13; // signs of an id that tell the time (UUID version 7, RFC 9562)
const MINIM = '7b1b0a3e-5f0e-4c57-9d0b-2f8f6a1c3d11'; // our name space for UUID version 5 (RFC 9562)

/** An id that follows from another one and from what sets it apart: everyone who derives it gets the same. It begins as the other, so that its place in time stays. */
export function derivedId(id: string, from: unknown): string {
  return id.slice(0, TIME) + v5(`${id} ${inOrder(from)}`, MINIM).slice(TIME);
}
