import { crc32 as secondOpinion } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crc32 } from '../../../src/core/number/crc32';

test('published check values: "123456789" of ISO 3309, "IEND" at the end of every PNG file', () => {
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  expect(crc32(new TextEncoder().encode('IEND'))).toBe(0xae426082);
});

test('any bytes have the sum that zlib gives them', () => {
  fc.assert(fc.property(fc.uint8Array(), (bytes) => crc32(bytes) === secondOpinion(bytes)));
});
