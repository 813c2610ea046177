import { Refusal } from '../text/refusal';

/*
 * Addresses in few bytes, the kind before each. Source: RFC 791 (IPv4), RFC 4291 (IPv6), RFC 9562 (the UUID before ".local",
 * which browsers give in place of an address).
 */

const NAMED = 0; // a UUID and ".local"
const V4 = 1;
const V6 = 2;

/** An address as bytes, the kind first; null where it is none of the three kinds. */
export function addressBytes(address: string): number[] | null {
  const name = /^([0-9a-f]{8})-([0-9a-f]{4})-([0-9a-f]{4})-([0-9a-f]{4})-([0-9a-f]{12})\.local$/i.exec(address);
  if (name) return [NAMED, ...bytesOf(name.slice(1).join(''))];
  if (/^\d{1,3}(\.\d{1,3}){3}$/.test(address)) return [V4, ...address.split('.').map(Number)];
  const groups = groupsOf(address);
  return groups ? [V6, ...bytesOf(groups.map((group) => group.padStart(4, '0')).join(''))] : null;
}

/** The eight groups of an IPv6 address, the zeros that "::" stands for among them; null where it is none. */
function groupsOf(address: string): string[] | null {
  if (!/^[0-9a-f:]+$/i.test(address)) return null;
  const halves = address.split('::').map((half) => half.split(':').filter(Boolean));
  const [before = [], after = []] = halves;
  const groups =
    halves.length === 2
      ? [...before, ...Array<string>(Math.max(0, 8 - before.length - after.length)).fill('0'), ...after]
      : before;
  return halves.length <= 2 && groups.length === 8 && groups.every((group) => group.length <= 4) ? groups : null;
}

function bytesOf(hex: string): number[] {
  return (hex.match(/../g) ?? []).map((two) => parseInt(two, 16));
}

/**
 * The address at the beginning of bytes, and how many bytes it takes.
 * @throws Refusal where none begins there
 */
export function addressText(bytes: Uint8Array): { text: string; length: number } {
  const length = bytes[0] === V4 ? 5 : 17;
  const rest = bytes.subarray(1, length);
  if (bytes.length < length || bytes[0]! > V6) throw new Refusal('This is not the code of another device.');
  if (bytes[0] === V4) return { text: rest.join('.'), length };
  const hex = Array.from(rest, (byte) => byte.toString(16).padStart(2, '0')).join('');
  if (bytes[0] === V6) return { text: hex.match(/..../g)!.join(':'), length };
  const parts = [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)];
  return { text: `${parts.join('-')}.local`, length };
}
