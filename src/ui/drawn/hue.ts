/** Mid tones that can be told from paper by day and by night; our choice. */
const TONES = [
  '#b5472f',
  '#b06d16',
  '#857a16',
  '#5b8032',
  '#3a8a66',
  '#2f8794',
  '#4579bb',
  '#6668c4',
  '#8c5cb5',
  '#b05496',
  '#bd5074',
  '#87674a',
] as const;

/**
 * The tone of a material on its vials and bottles: always the same for one key, so an id does. Two materials may share a
 * tone; it stands beside the code and never in its place.
 */
export function hueOf(key: string): string {
  let sum = 0x811c9dc5; // FNV-1a, 32 bits: neighbours in the alphabet get tones far apart
  for (const letter of key) sum = Math.imul(sum ^ letter.codePointAt(0)!, 0x01000193);
  return TONES[(sum >>> 0) % TONES.length]!;
}
