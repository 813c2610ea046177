/**
 * One write, by the device that made it and that device's counter: 'k3x9q2ab7c:1796076528391'. A record of the time before counters
 * has its stamp instead, ISO 8601. No two writes have the same.
 */
export type Dot = string;

const LATEST = 253_402_300_799_000; // 9999-12-31, ms since 1970: what a file claims beyond it is no counter

/** The device and the counter of a write; null of one of the time before counters. */
export function partsOf(dot: Dot): { readonly device: string; readonly n: number } | null {
  const at = dot.indexOf(':');
  const n = Number(dot.slice(at + 1));
  const isDot = at > 0 && !dot.slice(0, at).includes('-') && Number.isSafeInteger(n) && n > 0 && n <= LATEST;
  return isDot ? { device: dot.slice(0, at), n } : null;
}

/** Whether something read from a file is a counter that a device can have. */
export function isCounter(n: unknown): n is number {
  return Number.isSafeInteger(n) && (n as number) > 0 && (n as number) <= LATEST;
}

/**
 * When a write was, in the order of cause and effect, ms since 1970: a counter is never below one that its device knew, however wrong
 * its clock. Only between two writes that knew nothing of each other does the time of day decide.
 */
export function momentOf(dot: Dot): number {
  return partsOf(dot)?.n ?? (Date.parse(dot) || 0);
}

/** Sorts writes, the last one first; the same on every device. */
export function lastFirst(a: Dot, b: Dot): number {
  return momentOf(b) - momentOf(a) || (a < b ? 1 : a > b ? -1 : 0);
}

/** The moment of what carries its write, as ISO 8601; of what has none what it says itself. */
export function orderedAt({ by }: { readonly by?: string | readonly string[] | undefined }, said: string): string {
  const first = typeof by === 'string' ? by : by?.[0];
  const parts = first === undefined ? null : partsOf(first);
  return parts ? new Date(parts.n).toISOString() : said;
}
