import { prepareZXingModule, readBarcodes, type ReaderOptions } from 'zxing-wasm/reader';
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url';

const WIDEST = 1280; // px of a picture that is looked through; more costs time and finds no more (our choice)

/** QR codes only; a picture is also looked through at half its size, where blur and noise weigh less (our choice, by trial). */
export const READING: ReaderOptions = { formats: ['QRCode'], downscaleThreshold: 150, downscaleFactor: 2 };

/** Reads QR codes out of the camera's picture with the decoder that Minim brings along; needs no network. */
export async function wasmReader(): Promise<(video: HTMLVideoElement) => Promise<string[]>> {
  await prepareZXingModule({ overrides: { locateFile: () => wasm }, fireImmediately: true });
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  return async (video) => {
    const scale = Math.min(1, WIDEST / video.videoWidth);
    canvas.width = Math.round(video.videoWidth * scale);
    canvas.height = Math.round(video.videoHeight * scale);
    pen.drawImage(video, 0, 0, canvas.width, canvas.height);
    const found = await readBarcodes(pen.getImageData(0, 0, canvas.width, canvas.height), READING);
    return found.map(({ text }) => text);
  };
}
