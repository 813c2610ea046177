import { Refusal } from '../text/refusal';

/*
 * Bytes in the 45 signs that a QR code holds most closely. Source: RFC 9285. Any reader of codes hands such a text back as it
 * is, while one with other bytes in it comes back in one coding here and in another there.
 */

const SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

/** Bytes as a text of 45 signs: two bytes as three signs, one byte at the end as two. Source: RFC 9285. */
export function toBase45(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    let rest = pair ? bytes[i]! * 256 + bytes[i + 1]! : bytes[i]!;
    for (let sign = 0; sign < (pair ? 3 : 2); sign++) {
      text += SIGNS[rest % 45];
      rest = Math.floor(rest / 45);
    }
  }
  return text;
}

/**
 * The bytes of a text of 45 signs. Source: RFC 9285.
 * @throws Refusal where the text is none, or stands for no bytes
 */
export function fromBase45(text: string): Uint8Array {
  const digits = [...text].map((sign) => SIGNS.indexOf(sign));
  if (digits.includes(-1) || digits.length % 3 === 1) throw new Refusal('This is not the code of another device.');
  const bytes: number[] = [];
  for (let i = 0; i < digits.length; i += 3) {
    const [a, b, c] = [digits[i]!, digits[i + 1]!, digits[i + 2]];
    const value = a + b * 45 + (c ?? 0) * 2025;
    if (value > (c === undefined ? 0xff : 0xffff)) throw new Refusal('This is not the code of another device.');
    if (c === undefined) bytes.push(value);
    else bytes.push(value >> 8, value & 0xff);
  }
  return Uint8Array.from(bytes);
}
