/**
 * The short id of a record, as it stands on its label: 8 signs of A–Z and 2–9 without I and O, which read like 1 and 0.
 * It follows from the record's id alone (40 bits of a hash), so a label stays right on every phone that holds the record.
 */
const SIGNS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789'; // 32: five bits each
const LENGTH = 8;
const SHORTEST = 4; // signs of it that a person may type, when only one record answers to them (our choice)
const MARK = 'M:'; // begins what the square code says; with 8 signs it still fits the smallest code at its best correction

/** The short id of a record's id. Two records in a million million share one: the label page looks for that. */
export function shortIdOf(id: string): string {
  const [high, low] = [hash(id, 0x811c9dc5), hash(id, 0x2f0b4c47)];
  return Array.from({ length: LENGTH }, (_, i) => {
    const from = i < LENGTH / 2 ? high : low;
    return SIGNS[(from >>> (5 * (i % (LENGTH / 2)))) & 31]!;
  }).join('');
}

/** FNV-1a over the UTF-16 units of a text (32 bits), stirred at the end as in MurmurHash3 so that every bit counts. */
function hash(text: string, start: number): number {
  let h = start;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** What the square code of a label says. */
export function codeTextOf(shortId: string): string {
  return MARK + shortId;
}

/** The short id that a scanned text carries, or null for anything that is not exactly a label of ours. */
export function shortIdInCode(text: string): string | null {
  const found = text.startsWith(MARK) ? text.slice(MARK.length) : '';
  return found.length === LENGTH && [...found].every((sign) => SIGNS.includes(sign)) ? found : null;
}

/** 'K7M2 P9QX': in two groups, for reading and typing. */
export function spacedShortId(shortId: string): string {
  return `${shortId.slice(0, LENGTH / 2)} ${shortId.slice(LENGTH / 2)}`;
}

/**
 * The records that a typed text means: those of that very code, or whose short id begins with it (4 signs at least;
 * capitals, spaces and dashes do not matter). None for a text too short to mean anything.
 */
export function foundByTyping<T extends { id: string; code: string; tag?: string }>(
  typed: string,
  records: readonly T[],
): T[] {
  const signs = signsOf(typed);
  if (signs === '') return [];
  const byCode = records.filter(({ code, tag = code }) => [code, tag].some((one) => signsOf(one) === signs));
  if (byCode.length > 0 || signs.length < SHORTEST) return byCode;
  return records.filter(({ id }) => shortIdOf(id).startsWith(signs));
}

function signsOf(text: string): string {
  return text
    .toUpperCase()
    .replace(/[\s%-]/g, '')
    .replace(',', '.');
}

/** The records whose label a scanned short id is; more than one only in the once-in-a-lifetime case that two share it. */
export function foundByShortId<T extends { id: string }>(shortId: string, records: readonly T[]): T[] {
  return records.filter(({ id }) => shortIdOf(id) === shortId);
}
