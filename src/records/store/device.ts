import { isCounter } from '../union/dots';
import { withDatabase } from './database';

let own: Promise<string> | null = null;
let known: string | null = null;
let clock = 0;

/** The id of this device: drawn once, remembered by this device alone, and gone with everything else that is erased. */
export function deviceHere(): Promise<string> {
  own ??= withDatabase(async (db) => {
    const meta = db.transaction('meta', 'readwrite').store;
    const id = ((await meta.get('device')) as string | undefined) ?? freshDevice();
    await meta.put(id, 'device');
    return (known = id);
  });
  own.catch(() => (own = null));
  return own;
}

/** A new id of a device: 10 letters and digits. */
export function freshDevice(): string {
  return [...crypto.getRandomValues(new Uint8Array(10))].map((byte) => (byte % 36).toString(36)).join('');
}

/** Forgets the id of this device: what it writes from now on is another's. */
export function forgetDevice(): void {
  own = known = null;
}

/** Takes note of the counters in records that were read: the next one is above them. */
export function heard(records: Iterable<{ readonly by?: unknown; readonly seen?: unknown }>): void {
  const hear = (n: unknown) => void (isCounter(n) && n > clock && (clock = n));
  for (const { by, seen } of records) {
    if (typeof by === 'string') hear(Number(by.slice(by.indexOf(':') + 1)));
    Object.values(seen ?? {}).forEach(hear);
  }
}

/** The next write of this device. Its counter is the time of day, or one more than any that is known here, where the clock is behind it. */
export async function nextDot(): Promise<string> {
  await deviceHere();
  return dotAtOnce()!;
}

/** The same without a pause; null as long as the id of this device has not been read. */
export function dotAtOnce(): string | null {
  if (!known) return null;
  clock = Math.max(Date.now(), clock + 1);
  return `${known}:${clock}`;
}
