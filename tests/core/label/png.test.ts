import { crc32 as secondOpinion } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crc32, pngWithDensity } from '../../../src/core/label/png';

test('the checksum of a chunk is that of the PNG specification', () => {
  expect(crc32(new TextEncoder().encode('IEND'))).toBe(0xae426082); // as every PNG file ends
  fc.assert(fc.property(fc.uint8Array(), (bytes) => crc32(bytes) === secondOpinion(bytes))); // Node's own zlib
});

test('the density of 203 dpi is 7992 dots per metre, between header and picture', () => {
  const head = new Uint8Array(33).fill(1);
  const rest = new Uint8Array([9, 9, 9]);
  const png = pngWithDensity(new Uint8Array([...head, ...rest]), 203);
  const chunk = png.subarray(33, 54);
  expect(png.subarray(0, 33)).toEqual(head);
  expect(png.subarray(54)).toEqual(rest);
  expect(new TextDecoder().decode(chunk.subarray(4, 8))).toBe('pHYs');
  const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.length);
  expect([view.getUint32(0), view.getUint32(8), view.getUint32(12), chunk[16]]).toEqual([9, 7992, 7992, 1]);
  expect(view.getUint32(17)).toBe(secondOpinion(chunk.subarray(4, 17)));
});
