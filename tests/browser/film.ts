import { writeFileSync } from 'node:fs';
import type { Picture } from '../pictures';
import { blurred, noisy, picture, turned } from '../pictures';

const WIDE = 640;
const HIGH = 480;

/** A picture held before a camera on a wooden bench: turned, larger, a little blurred and noisy. */
export function heldUp(of: Picture, { degrees, scale }: { degrees: number; scale: number }): Picture {
  const held = turned(of, degrees, scale);
  const [left, top] = [Math.round((WIDE - held.width) / 2), Math.round((HIGH - held.height) / 2)];
  const on = picture(WIDE, HIGH, (x, y) => {
    const [i, j] = [x - left, y - top];
    const inside = i >= 0 && j >= 0 && i < held.width && j < held.height;
    return inside ? 20 + (held.grey[j * held.width + i]! * 210) / 255 : 110 + ((x * 7 + y * 3) % 31);
  });
  return noisy(blurred(on, 1), 8);
}

/** Writes pictures as a film of 10 a second (YUV4MPEG2, 4:2:0), each shown that many tenths of a second; it begins again at its end. */
export function writeFilm(path: string, scenes: readonly { picture: Picture; tenths: number }[]): void {
  const colour = Buffer.alloc((WIDE / 2) * (HIGH / 2) * 2, 128);
  const frames = scenes.flatMap(({ picture: { grey }, tenths }) => {
    const frame = Buffer.concat([Buffer.from('FRAME\n'), Buffer.from(Uint8Array.from(grey, Math.round)), colour]);
    return Array.from({ length: tenths }, () => frame);
  });
  writeFileSync(path, Buffer.concat([Buffer.from(`YUV4MPEG2 W${WIDE} H${HIGH} F10:1 Ip A1:1 C420\n`), ...frames]));
}
