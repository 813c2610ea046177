import type { Page } from 'playwright-core';

/** Files as a phone would hand them over, drawn in the page: JPEG or PNG, of restless content that does not pack well. */
export async function drawnPicture(page: Page, type: string, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ({ type, width, height }) => {
      const canvas = document.createElement('canvas');
      Object.assign(canvas, { width, height });
      const context = canvas.getContext('2d')!;
      // Left half red, right half blue, and rectangles all over.
      context.fillStyle = '#c00000';
      context.fillRect(0, 0, width / 2, height);
      context.fillStyle = '#0000c0';
      context.fillRect(width / 2, 0, width / 2, height);
      for (let i = 0; i < 9000; i++) {
        context.fillStyle = `hsl(${(i * 47) % 360} 60% ${30 + (i % 50)}% / 0.12)`;
        context.fillRect((i * 7919) % width, (i * 104729) % height, 9 + (i % 57), 5 + (i % 31));
      }
      const blob = await new Promise<Blob>((resolve) => canvas.toBlob((made) => resolve(made!), type, 0.97));
      const bytes = new Uint8Array(await blob.arrayBuffer());
      let text = '';
      for (let i = 0; i < bytes.length; i += 30_000) text += String.fromCharCode(...bytes.subarray(i, i + 30_000));
      return btoa(text);
    },
    { type, width, height },
  );
  return Buffer.from(base64, 'base64');
}

/**
 * The same JPEG as a phone stores it that was held sideways: an EXIF block (JEITA CP-3451, TIFF 6.0) that says "turn it by 90 degrees
 * to the right", and a description that must not be kept.
 */
export function withExif(jpeg: Buffer, orientation: number, description: string): Buffer {
  const text = Buffer.from(`${description}\0`, 'latin1');
  const tiff = Buffer.alloc(8 + 2 + 2 * 12 + 4);
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(2, 8);
  const entry = (at: number, tag: number, type: number, count: number) => {
    tiff.writeUInt16BE(tag, at);
    tiff.writeUInt16BE(type, at + 2);
    tiff.writeUInt32BE(count, at + 4);
  };
  entry(10, 0x010e, 2, text.length); // ImageDescription
  tiff.writeUInt32BE(tiff.length, 18);
  entry(22, 0x0112, 3, 1); // Orientation
  tiff.writeUInt16BE(orientation, 30);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff, text]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}
