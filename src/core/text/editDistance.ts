let rows = [new Uint8Array(0), new Uint8Array(0), new Uint8Array(0)]; // scratch, so that a search makes no garbage

/**
 * Fewest slips of the finger between a typed word and a word, or the best beginning of it: a letter too many, too few, another
 * one, or two neighbours exchanged (each counts 1; optimal string alignment). Hands back limit + 1 when it takes more than
 * `limit` (a whole number, 0 to 200); only the band of cells that could still count is looked at.
 * Source: Damerau, Commun. ACM 7 (1964) 171–176, for the four slips; the recurrence is the usual one.
 */
export function slipsToPrefix(typed: string, word: string, limit: number): number {
  const far = limit + 1;
  const width = Math.min(word.length, typed.length + limit);
  if (typed.length - word.length > limit) return far;
  let [before, last, row] = rowsOf(width + 1, far);
  for (let j = 0; j <= width; j++) last[j] = Math.min(j, far);
  for (let i = 1; i <= typed.length; i++) {
    const sign = typed.charCodeAt(i - 1);
    const end = Math.min(width, i + limit);
    row.fill(far, 0, width + 1);
    if (i <= limit) row[0] = i;
    let least = row[0]!;
    for (let j = Math.max(1, i - limit); j <= end; j++) {
      const other = word.charCodeAt(j - 1);
      let slips = last[j - 1]! + (sign === other ? 0 : 1);
      if (last[j]! + 1 < slips) slips = last[j]! + 1;
      if (row[j - 1]! + 1 < slips) slips = row[j - 1]! + 1;
      const exchanged = i > 1 && j > 1 && sign === word.charCodeAt(j - 2) && typed.charCodeAt(i - 2) === other;
      if (exchanged && before[j - 2]! + 1 < slips) slips = before[j - 2]! + 1;
      if (slips > far) slips = far;
      row[j] = slips;
      if (slips < least) least = slips;
    }
    if (least > limit && lowest(last, width) > limit) return far;
    [before, last, row] = [last, row, before];
  }
  return Math.min(far, lowest(last, width));
}

function rowsOf(size: number, far: number): [Uint8Array, Uint8Array, Uint8Array] {
  if (rows[0]!.length < size) rows = rows.map(() => new Uint8Array(2 * size));
  rows[0]!.fill(far, 0, size);
  return [rows[0]!, rows[1]!, rows[2]!];
}

function lowest(row: Uint8Array, width: number): number {
  let least = row[0]!;
  for (let j = 1; j <= width; j++) if (row[j]! < least) least = row[j]!;
  return least;
}
