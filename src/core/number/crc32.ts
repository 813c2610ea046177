const table = Uint32Array.from({ length: 256 }, (_, start) => {
  let x = start;
  for (let bit = 0; bit < 8; bit++) x = x & 1 ? (x >>> 1) ^ 0xedb88320 : x >>> 1;
  return x;
});

/**
 * CRC-32 of any number of bytes. Source: ISO 3309 and the PNG specification, annex D (polynomial EDB88320, reflected).
 * Check: of '123456789' it is CBF43926, of 'IEND' AE426082.
 */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) crc = (crc >>> 8) ^ table[(crc ^ bytes[i]!) & 255]!;
  return (crc ^ 0xffffffff) >>> 0;
}
