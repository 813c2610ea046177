/**
 * Numbers from 0 up to, not including, 1, the same for the same seed (a whole number of 32 bits), dimensionless. The seed itself
 * is drawn from the phone's own source of chance.
 * Source: the mulberry32 generator, public domain.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
