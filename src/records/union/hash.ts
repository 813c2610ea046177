const LANES = [
  [0x811c9dc5, 0x01000193],
  [0x9e3779b9, 0x85ebca6b],
] as const; // where each begins, and its odd factor

/**
 * A hash of 64 bits of a text, in 14 characters: two lanes that multiply and mix (our own). It tells versions apart that honest devices
 * made (two of a million are alike once in 10⁷ stores); it is no defence against someone who makes them alike.
 */
export function hash64(text: string): string {
  const lanes = LANES.map(([start, factor]) => {
    let hash: number = start;
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), factor) ^ (hash >>> 13);
    hash = Math.imul(hash ^ (hash >>> 16), 0x7feb352d);
    return (hash ^ (hash >>> 15)) >>> 0;
  });
  return lanes.map((lane) => lane.toString(36).padStart(7, '0')).join('');
}
