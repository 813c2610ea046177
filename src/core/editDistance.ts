/**
 * Fewest slips of the finger between a typed word and a word, or the best beginning of it: a letter too many, too few, another
 * one, or two neighbours exchanged (each counts 1; optimal string alignment). Hands back limit + 1 when it takes more than
 * `limit` (a whole number, 0 or more); only the band of cells that could still count is looked at.
 * Source: Damerau, Commun. ACM 7 (1964) 171–176, for the four slips; the recurrence is the usual one.
 */
export function slipsToPrefix(typed: string, word: string, limit: number): number {
  const far = limit + 1;
  if (typed.length - word.length > limit) return far;
  const width = Math.min(word.length, typed.length + limit);
  let before = new Array<number>(width + 1).fill(far);
  let last = Array.from({ length: width + 1 }, (_, j) => Math.min(j, far));
  for (let i = 1; i <= typed.length; i++) {
    const row = new Array<number>(width + 1).fill(far);
    if (i <= limit) row[0] = i;
    let least = row[0]!;
    for (let j = Math.max(1, i - limit); j <= Math.min(width, i + limit); j++) {
      const other = typed[i - 1] === word[j - 1] ? 0 : 1;
      let slips = Math.min(last[j - 1]! + other, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1])
        slips = Math.min(slips, before[j - 2]! + 1);
      row[j] = slips;
      if (slips < least) least = slips;
    }
    if (least > limit && i > 1 && Math.min(...last) > limit) return far;
    [before, last] = [last, row];
  }
  return Math.min(far, ...last);
}
