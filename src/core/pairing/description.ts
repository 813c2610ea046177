import { Refusal } from '../text/refusal';
import { addressBytes, addressText } from './address';
import { fromBase45, toBase45 } from './base45';
import { checksum } from './checksum';

/*
 * What two browsers must know of each other before a data channel opens between them, in some 100 bytes: what an SDP offer or
 * answer holds beyond what is the same in all of them. Source: RFC 8866 (SDP), RFC 8839 (ICE in SDP), RFC 8841 (data channels).
 */

/** Where one device can be reached: an IPv4 or IPv6 address, or a name that only the local network knows ("….local"). */
export interface Place {
  readonly address: string;
  readonly port: number;
}

/** What one device tells of itself. */
export interface Description {
  readonly type: 'offer' | 'answer';
  /** Name and password by which the two find each other (ICE). */
  readonly name: string;
  readonly password: string;
  /** SHA-256 of the certificate: 32 bytes. */
  readonly fingerprint: Uint8Array;
  readonly places: readonly Place[];
  /** In an answer the checksum of the offer that it answers; 0 in an offer. */
  readonly answers: number;
}

const VERSION = 1; // of this form; a device that knows a lower one only says that it is older
const MOST = 4; // places: more make the code too fine for a poor camera (our choice)
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/**
 * What an SDP description says of a device. `answers` is the checksum of the offer's code text, 0 for an offer.
 * @throws Refusal where it names no address in the local network, or is not of a data channel
 */
export function describedBy(sdp: string, type: Description['type'], answers = 0): Description {
  const value = (name: string) => new RegExp(`^a=${name}:(.*?)\\r?$`, 'm').exec(sdp)?.[1] ?? '';
  const print = value('fingerprint')
    .replace(/^sha-256 /i, '')
    .split(':');
  const places = [...sdp.matchAll(/^a=candidate:\S+ 1 udp \d+ (\S+) (\d+) typ host/gim)]
    .map(([, address, port]) => ({ address: address!, port: Number(port) }))
    .filter(({ address }) => isLocal(address));
  if (places.length === 0) throw new Refusal('This browser tells no address in the local network.');
  if (print.length !== 32) throw new Refusal('This browser makes no direct connection that Minim knows.');
  return {
    type,
    name: value('ice-ufrag'),
    password: value('ice-pwd'),
    fingerprint: Uint8Array.from(print, (byte) => parseInt(byte, 16)),
    places: nearest(places),
    answers,
  };
}

/** Whether an address can be told in a code and reached by another device: neither one's own nor bound to one plug. */
function isLocal(address: string): boolean {
  return addressBytes(address) !== null && !/^(127\.|169\.254\.|fe80:|::1$)/i.test(address);
}

/** Names and IPv4 first: in a home network they reach furthest. */
function nearest(places: readonly Place[]): Place[] {
  const long = ({ address }: Place) => (address.includes(':') ? 1 : 0);
  return [...places].sort((a, b) => long(a) - long(b)).slice(0, MOST);
}

/** The SDP text that a browser takes for what a device told. Source: RFC 8866, RFC 8839, RFC 8841. */
export function sdpOf({ type, name, password, fingerprint, places }: Description): string {
  const print = Array.from(fingerprint, (byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(':');
  const lines = [
    'v=0',
    'o=- 1 1 IN IP4 127.0.0.1',
    's=-',
    't=0 0',
    'a=group:BUNDLE 0',
    'm=application 9 UDP/DTLS/SCTP webrtc-datachannel',
    'c=IN IP4 0.0.0.0',
    ...places.map(
      ({ address, port }, i) => `a=candidate:${i + 1} 1 udp ${2122260223 - i * 256} ${address} ${port} typ host`,
    ),
    `a=ice-ufrag:${name}`,
    `a=ice-pwd:${password}`,
    `a=fingerprint:sha-256 ${print}`,
    `a=setup:${type === 'offer' ? 'actpass' : 'active'}`,
    'a=mid:0',
    'a=sctp-port:5000',
    'a=max-message-size:65536',
  ];
  return `${lines.join('\r\n')}\r\n`;
}

/** The text of the code that a device shows: version and type, name, password, fingerprint, places, checksum. Our own form. */
export function codeTextFor(described: Description): string {
  const { type, name, password, fingerprint, places, answers } = described;
  const body = [
    VERSION * 16 + (type === 'offer' ? 0 : 1),
    ...short(answers),
    ...packedLetters(name),
    ...packedLetters(password),
    ...fingerprint,
    places.length,
    ...places.flatMap(({ address, port }) => [...addressBytes(address)!, ...short(port)]),
  ];
  const bytes = Uint8Array.from(body);
  return `M${toBase45(Uint8Array.from([...body, ...short(checksum(bytes))]))}.`;
}

/** The bytes of a code's text. The signs before and after them keep a blank at either end from being cut off on the way. */
function bytesIn(code: string): Uint8Array {
  const signs = /^M(.*)\.$/.exec(code.trim())?.[1];
  if (signs === undefined) throw new Refusal('This is not the code of another device.');
  return fromBase45(signs);
}

/**
 * The checksum, a whole number of 16 bits, by which an answer names the offer that it answers. Our own form.
 * @throws Refusal where the text is no code
 */
export function tagOfOffer(code: string): number {
  return checksum(bytesIn(code)) & 0xffff;
}

/**
 * What the text of a code says. Our own form.
 * @throws Refusal where it is no such code, or one of a newer Minim
 */
export function readCode(text: string): Description {
  const bytes = bytesIn(text);
  const body = bytes.subarray(0, -2);
  if (bytes.length < 4 || (checksum(body) & 0xffff) !== bytes.at(-2)! * 256 + bytes.at(-1)!)
    throw new Refusal('This is not the code of another device.');
  if (bytes[0]! >> 4 !== VERSION)
    throw new Refusal(
      'The other device has another version of Minim. Open Minim on both with a network, then try again.',
    );
  return descriptionIn(body);
}

function descriptionIn(body: Uint8Array): Description {
  let at = 1;
  const take = (count: number) => body.subarray(at, (at += count));
  const number = () => take(2).reduce((sum, byte) => sum * 256 + byte, 0);
  const letters = () => {
    const length = take(1)[0] ?? 0;
    return unpackedLetters(take(Math.ceil((length * 6) / 8)), length);
  };
  const [answers, name, password, fingerprint] = [number(), letters(), letters(), take(32)];
  const places = Array.from({ length: take(1)[0] ?? 0 }, () => {
    const address = addressText(body.subarray(at));
    at += address.length;
    return { address: address.text, port: number() };
  });
  if (at !== body.length || fingerprint.length !== 32) throw new Refusal('This is not the code of another device.');
  return { type: body[0]! & 1 ? 'answer' : 'offer', answers, name, password, fingerprint, places };
}

function short(number: number): [number, number] {
  return [(number >> 8) & 0xff, number & 0xff];
}

/** How many letters, and each in six bits: names and passwords have 64 signs (RFC 8839, ice-char). */
function packedLetters(text: string): number[] {
  const bits = [...text].map((letter) => LETTERS.indexOf(letter).toString(2).padStart(6, '0')).join('');
  const bytes = bits.match(/.{1,8}/g) ?? [];
  return [text.length, ...bytes.map((eight) => parseInt(eight.padEnd(8, '0'), 2))];
}

function unpackedLetters(bytes: Uint8Array, length: number): string {
  const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, '0')).join('');
  return Array.from({ length }, (_, i) => LETTERS[parseInt(bits.slice(i * 6, i * 6 + 6), 2)] ?? '').join('');
}
