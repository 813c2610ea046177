import { Refusal } from '../../../core/text/refusal';
import { framed, frameReader } from '../../../core/pairing/frames';

/** Carries messages between two devices, in order and whole. */
export interface Wire {
  /** Sends a message; resolves when there is room for the next one. Rejects when the wire is broken. */
  send(message: Uint8Array): Promise<void>;
  /** Called with each message; those that came before are handed over at once. */
  listen(hear: (message: Uint8Array) => void): void;
  /** Resolves when nothing can be sent any more: with what was not as it was sent, null where it just ended. */
  readonly ended: Promise<Refusal | null>;
  close(): void;
}

const PIECE = 16 * 1024; // bytes; every browser takes as many in one go
const FULL = 1024 * 1024; // bytes that wait to be sent: more are held back (our choice)
const LOW = 256 * 1024;

/** A data channel as a wire: messages in pieces that every browser takes, held back while too much waits to be sent. */
export function wireOver(channel: RTCDataChannel): Wire {
  channel.binaryType = 'arraybuffer';
  channel.bufferedAmountLowThreshold = LOW;
  const waiting: Uint8Array[] = [];
  let hear: ((message: Uint8Array) => void) | null = null;
  let end: (why: Refusal | null) => void;
  const ended = new Promise<Refusal | null>((resolve) => (end = resolve));
  const read = frameReader();
  channel.addEventListener('message', ({ data }: MessageEvent<ArrayBuffer>) => {
    try {
      for (const message of read(new Uint8Array(data))) (hear ?? ((early) => waiting.push(early)))(message);
    } catch (error) {
      end(error instanceof Refusal ? error : null);
      channel.close();
    }
  });
  channel.addEventListener('close', () => end(null));
  let sending: Promise<void> = Promise.resolve();
  return {
    send: (message) => (sending = sending.then(() => sendAll(channel, framed(message), ended))),
    listen(next) {
      hear = next;
      waiting.splice(0).forEach(next);
    },
    ended,
    close() {
      channel.close();
      end(null); // a channel whose connection was closed here tells no one
    },
  };
}

async function sendAll(
  channel: RTCDataChannel,
  frame: Uint8Array<ArrayBuffer>,
  ended: Promise<unknown>,
): Promise<void> {
  for (let at = 0; at < frame.length; at += PIECE) {
    if (channel.bufferedAmount > FULL) await Promise.race([low(channel), ended]);
    channel.send(frame.slice(at, at + PIECE)); // throws when it is closed
  }
}

function low(channel: RTCDataChannel): Promise<void> {
  return new Promise((go) => channel.addEventListener('bufferedamountlow', () => go(), { once: true }));
}
