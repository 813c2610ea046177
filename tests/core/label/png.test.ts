import { crc32 } from 'node:zlib';
import { expect, test } from 'vitest';
import { pngWithDensity } from '../../../src/core/label/png';

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
  expect(view.getUint32(17)).toBe(crc32(chunk.subarray(4, 17)));
});
