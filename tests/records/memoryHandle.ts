import type { Handle } from '../../src/records/journal/journalFile';

/** A file in memory that behaves as a synchronous access handle does; `room` is how many bytes it may grow to. */
export function memoryHandle(
  start: Uint8Array = new Uint8Array(0),
  room = Infinity,
): Handle & { bytes: () => Uint8Array } {
  let bytes = start.slice();
  return {
    bytes: () => bytes,
    read(into, { at }) {
      const part = bytes.subarray(at, at + into.length);
      into.set(part);
      return part.length;
    },
    write(from, { at }) {
      const fits = from.subarray(0, Math.max(0, Math.min(from.length, room - at)));
      const grown = new Uint8Array(Math.max(bytes.length, at + fits.length));
      grown.set(bytes);
      grown.set(fits, at);
      bytes = grown;
      return fits.length;
    },
    truncate(size) {
      const cut = new Uint8Array(size);
      cut.set(bytes.subarray(0, size));
      bytes = cut;
    },
    getSize: () => bytes.length,
    flush() {},
    close() {},
  };
}
