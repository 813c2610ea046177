import { Refusal } from '../text/refusal';

/**
 * Random three-digit codes (100–999) without repeats, none of those `taken` earlier in the session. `random` gives
 * numbers from 0 up to, not including, 1; every code left is as likely. `count` and codes are whole numbers.
 * Source: three-digit random numbers, new for each set (ISO 13299; ISO 10399, 5.5).
 * @throws Refusal when there are not that many codes left
 */
export function blindCodes(count: number, random: () => number, taken: readonly number[] = []): number[] {
  const used = new Set(taken);
  const left = Array.from({ length: 900 }, (_, i) => 100 + i).filter((code) => !used.has(code));
  if (!(Number.isInteger(count) && count >= 0 && count <= left.length))
    throw new Refusal('{left} codes are left, not {count}', { left: left.length, count });
  for (let i = 0; i < count; i++) {
    const j = i + Math.floor(random() * (left.length - i));
    [left[i], left[j]] = [left[j]!, left[i]!];
  }
  return left.slice(0, count);
}
