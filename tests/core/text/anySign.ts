import fc from 'fast-check';

/** Any sign of Unicode but halves of pairs. fast-check's own `unit: 'binary'` draws the same and takes a second to set up. */
export const anySign = fc
  .integer({ min: 0, max: 0x10ffff })
  .filter((point) => point < 0xd800 || point > 0xdfff)
  .map((point) => String.fromCodePoint(point));
