import { crc32 } from '../number/crc32';

const HEAD = 8 + 25; // bytes: signature and header chunk

/**
 * A PNG with its density written in: a pHYs chunk in dots per metre behind the header, so that label programs print it
 * at its true size. `dpi` in dots per inch, above 0. Source: PNG specification 11.3.4.3.
 */
export function pngWithDensity(png: Uint8Array, dpi: number): Uint8Array {
  const perMetre = Math.round(dpi / 0.0254);
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9); // bytes of data
  chunk.set([0x70, 0x48, 0x59, 0x73], 4); // "pHYs"
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  chunk[16] = 1; // the unit is the metre
  view.setUint32(17, crc32(chunk.subarray(4, 17)));
  const whole = new Uint8Array(png.length + chunk.length);
  whole.set(png.subarray(0, HEAD));
  whole.set(chunk, HEAD);
  whole.set(png.subarray(HEAD), HEAD + chunk.length);
  return whole;
}
