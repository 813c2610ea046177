type Reader = (video: HTMLVideoElement) => Promise<string[]>;

/** The part of the Barcode Detection interface (W3C community group) that is used; the compiler's library does not have it. */
interface Detector {
  detect(source: HTMLVideoElement): Promise<{ rawValue: string }[]>;
}
interface Detectors {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

/** Reads QR codes: with the phone's own detector where there is one and it works, else with Minim's. */
export async function codeReader(): Promise<Reader> {
  const phones = await phoneReader();
  let read = phones ?? (await ownReader());
  return async (video) => {
    try {
      return await read(video);
    } catch (error) {
      if (read !== phones) throw error;
      read = await ownReader(); // the phone has the interface, but its service is not there
      return [];
    }
  };
}

async function phoneReader(): Promise<Reader | null> {
  const { BarcodeDetector } = window as { BarcodeDetector?: Detectors };
  const formats = await BarcodeDetector?.getSupportedFormats().catch((): string[] => []);
  if (!BarcodeDetector || !formats?.includes('qr_code')) return null;
  const detector = new BarcodeDetector({ formats: ['qr_code'] });
  return async (video) => (await detector.detect(video)).map(({ rawValue }) => rawValue);
}

async function ownReader(): Promise<Reader> {
  return (await import('./wasmReader')).wasmReader();
}
