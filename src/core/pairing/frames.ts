import { Refusal } from '../text/refusal';
import { checksum } from './checksum';

/* A stream of bytes as messages: length and checksum before each. Our own choice; the checksum is that of IEEE 802.3. */

const HEAD = 8; // bytes: length and checksum, 32 bits each, the high byte first

/** The most bytes of one message, our choice: a picture is some 250 kB, a summary of 50,000 records a few MB. */
export const longestMessage = 64 * 1024 * 1024;

/** A message with its head: how many bytes it has, and their checksum. Our own choice. */
export function framed(message: Uint8Array): Uint8Array<ArrayBuffer> {
  const frame = new Uint8Array(HEAD + message.length);
  const head = new DataView(frame.buffer);
  head.setUint32(0, message.length);
  head.setUint32(4, checksum(message));
  frame.set(message, HEAD);
  return frame;
}

/**
 * Takes the bytes of a stream in any pieces, and gives the messages that are whole with each. Our own choice.
 * @throws Refusal where a message is too long or not what was sent; the stream is of no use after that
 */
export function frameReader(): (piece: Uint8Array) => Uint8Array[] {
  let pieces: Uint8Array[] = [];
  let held = 0;
  return (piece) => {
    pieces.push(piece);
    held += piece.length;
    const whole: Uint8Array[] = [];
    while (held >= HEAD) {
      if (pieces[0]!.length < HEAD) pieces = [joined(pieces, held)];
      const needed = HEAD + lengthIn(pieces[0]!);
      if (held < needed) break;
      const all = joined(pieces, held);
      whole.push(messageIn(all.subarray(0, needed)));
      pieces = [all.subarray(needed)];
      held -= needed;
    }
    return whole;
  };
}

function lengthIn(frame: Uint8Array): number {
  const length = new DataView(frame.buffer, frame.byteOffset).getUint32(0);
  if (length > longestMessage) throw new Refusal('What came from the other device is damaged.');
  return length;
}

function messageIn(frame: Uint8Array): Uint8Array {
  const message = frame.subarray(HEAD);
  const told = new DataView(frame.buffer, frame.byteOffset).getUint32(4);
  if (told !== checksum(message)) throw new Refusal('What came from the other device is damaged.');
  return message;
}

function joined(pieces: readonly Uint8Array[], length: number): Uint8Array {
  if (pieces.length === 1) return pieces[0]!;
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
