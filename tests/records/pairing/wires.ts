import type { Refusal } from '../../../src/core/text/refusal';
import type { Wire } from '../../../src/records/pairing/exchange';

/** Two ends of a wire in one place, that breaks after so many messages; a message arrives later, never at once. */
export function wirePair(breaksAfter = Infinity): [Wire, Wire] {
  let left = breaksAfter;
  const hears: (((message: Uint8Array) => void) | null)[] = [null, null];
  const early: Uint8Array[][] = [[], []];
  let end!: (why: Refusal | null) => void;
  const ended = new Promise<Refusal | null>((resolve) => (end = resolve));
  let closed = false;
  const close = () => {
    closed = true;
    end(null);
  };
  const wire = (own: 0 | 1): Wire => ({
    async send(message) {
      if (left-- <= 0) close();
      if (closed) throw new DOMException('', 'InvalidStateError');
      await Promise.resolve();
      const hear = hears[1 - own];
      if (hear) hear(message);
      else early[1 - own]!.push(message);
    },
    listen(hear) {
      hears[own] = hear;
      early[own]!.splice(0).forEach(hear);
    },
    ended,
    close,
  });
  return [wire(0), wire(1)];
}
