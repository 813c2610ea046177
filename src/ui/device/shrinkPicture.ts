import { Refusal } from '../../core/text/refusal';

const LONGEST = 1280; // px, our choice: a label on a bottle is legible in it
const MOST_BYTES = 250_000; // our choice
const QUALITIES = [0.82, 0.7, 0.58, 0.46, 0.34]; // of the JPEG, the first that is small enough

/** A picture file made small. */
export interface SmallPicture {
  readonly type: 'image/jpeg';
  /** The file in base64. */
  readonly data: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

/**
 * Draws a picture file again as a JPEG of at most 1280 px and, but for the most restless ones, 250 kB: upright, and without anything
 * else that the file holds, such as where it was taken.
 * @throws Refusal where the file is no picture that this browser can read.
 */
export async function shrinkPicture(file: Blob): Promise<SmallPicture> {
  const drawn = await draw(file).catch(() => null);
  if (!drawn) throw new Refusal('this picture cannot be read: choose a JPEG, PNG or WebP file');
  for (const quality of QUALITIES) {
    const jpeg = await new Promise<Blob | null>((resolve) => drawn.toBlob(resolve, 'image/jpeg', quality));
    if (!jpeg)
      throw new Refusal('this device has no room to make the picture small: close other pages, then try again');
    if (jpeg.size > MOST_BYTES && quality !== QUALITIES.at(-1)) continue;
    return {
      type: 'image/jpeg',
      data: await base64Of(jpeg),
      width: drawn.width,
      height: drawn.height,
      bytes: jpeg.size,
    };
  }
  throw new Error('no quality was tried');
}

/** JPEG, since not every browser writes WebP. */
async function draw(file: Blob): Promise<HTMLCanvasElement> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const share = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const context = canvas.getContext('2d')!;
  context.fillStyle = 'white'; // a JPEG has no see-through parts
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return canvas;
}

function base64Of(file: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).split(',')[1]!);
    reader.onerror = () => reject(reader.error!);
    reader.readAsDataURL(file);
  });
}
