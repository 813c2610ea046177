import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { READING } from '../src/ui/device/wasmReader';
import { seeded } from './core/seeded';

/** A picture in greys, 0 black to 255 white, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Float64Array;
}

/** A picture of what a function says of every place. */
export function picture(width: number, height: number, at: (x: number, y: number) => number): Picture {
  const grey = new Float64Array(width * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) grey[y * width + x] = at(x, y);
  return { width, height, grey };
}

/** The grey at a place, mixed from its four neighbours; white outside. */
function greyAt({ width, height, grey }: Picture, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const one = (i: number, j: number) => (i < 0 || j < 0 || i >= width || j >= height ? 255 : grey[j * width + i]!);
  const upper = one(left, top) * (1 - (x - left)) + one(left + 1, top) * (x - left);
  const lower = one(left, top + 1) * (1 - (x - left)) + one(left + 1, top + 1) * (x - left);
  return upper * (1 - (y - top)) + lower * (y - top);
}

/** Turned by degrees and made larger, on white with room around, as a camera might see it. */
export function turned(of: Picture, degrees: number, scale = 1): Picture {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const side = Math.ceil(Math.hypot(of.width, of.height) * scale) + 20;
  return picture(side, side, (x, y) => {
    const [dx, dy] = [(x - side / 2) / scale, (y - side / 2) / scale];
    return greyAt(of, cos * dx + sin * dy + of.width / 2, -sin * dx + cos * dy + of.height / 2);
  });
}

/** Blurred by a Gaussian of that many pixels; white outside. */
export function blurred({ width, height, grey }: Picture, sigma: number): Picture {
  const reach = Math.ceil(3 * sigma);
  const weights = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma ** 2)),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const mix = (from: Float64Array, at: { start: number; step: number; place: number; count: number }) => {
    let mixed = 0;
    for (let i = -reach; i <= reach; i++) {
      const place = at.place + i;
      mixed += weights[i + reach]! * (place < 0 || place >= at.count ? 255 : from[at.start + place * at.step]!);
    }
    return mixed / sum;
  };
  const across = picture(width, height, (x, y) => mix(grey, { start: y * width, step: 1, place: x, count: width }));
  return picture(width, height, (x, y) => mix(across.grey, { start: x, step: width, place: y, count: height }));
}

/** With noise of a standard deviation (in greys), the same for the same seed. */
export function noisy(of: Picture, sd: number, seed = 7): Picture {
  const random = seeded(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return picture(of.width, of.height, (x, y) => Math.min(255, Math.max(0, of.grey[y * of.width + x]! + sd * normal())));
}

/** The picture and the dots per metre of a PNG of 8 bits a channel, as a browser's canvas writes it. */
export function readPng(png: Uint8Array): Picture & { perMetre: number | null } {
  const view = new DataView(png.buffer, png.byteOffset, png.length);
  const parts: Uint8Array[] = [];
  let [width, height, channels, perMetre] = [0, 0, 4, null as number | null];
  for (let at = 8; at < png.length; at += view.getUint32(at) + 12) {
    const type = new TextDecoder().decode(png.subarray(at + 4, at + 8));
    const data = at + 8;
    if (type === 'IHDR')
      [width, height, channels] = [view.getUint32(data), view.getUint32(data + 4), channelsOf(view, data)];
    if (type === 'pHYs') perMetre = view.getUint32(data);
    if (type === 'IDAT') parts.push(png.subarray(data, data + view.getUint32(at)));
  }
  const bytes = unfiltered(inflateSync(Buffer.concat(parts)), width * channels, channels);
  return { ...picture(width, height, (x, y) => bytes[(y * width + x) * channels]!), perMetre };
}

function channelsOf(view: DataView, head: number): number {
  const channels = { 2: 3, 6: 4 }[view.getUint8(head + 9)];
  if (view.getUint8(head + 8) !== 8 || !channels) throw new Error('not a PNG of 8 bits a channel');
  return channels;
}

/** Undoes the five filters of the PNG specification (9.2). */
function unfiltered(raw: Uint8Array, stride: number, channels: number): Uint8Array {
  const rows = raw.length / (stride + 1);
  const out = new Uint8Array(rows * stride);
  for (let y = 0; y < rows; y++)
    for (let i = 0; i < stride; i++) {
      const left = i < channels ? 0 : out[y * stride + i - channels]!;
      const up = y === 0 ? 0 : out[(y - 1) * stride + i]!;
      const corner = y === 0 || i < channels ? 0 : out[(y - 1) * stride + i - channels]!;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][raw[y * (stride + 1)]!]!;
      out[y * stride + i] = raw[y * (stride + 1) + 1 + i]! + guess;
    }
  return out;
}

function paeth(left: number, up: number, corner: number): number {
  const [a, b, c] = [left, up, corner].map((one) => Math.abs(left + up - corner - one));
  return a! <= b! && a! <= c! ? left : b! <= c! ? up : corner;
}

let ready = false;

/** What the app's own decoder reads in a picture. */
export async function codesIn({ width, height, grey }: Picture): Promise<string[]> {
  if (!ready) {
    const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
    prepareZXingModule({ overrides: { wasmBinary: readFileSync(file).buffer as ArrayBuffer } });
    ready = true;
  }
  const data = new Uint8ClampedArray(width * height * 4);
  grey.forEach((value, i) => data.fill(value, 4 * i, 4 * i + 3).fill(255, 4 * i + 3, 4 * i + 4));
  const found = await readBarcodes({ data, width, height, colorSpace: 'srgb' } as ImageData, READING);
  return found.map(({ text }) => text);
}
