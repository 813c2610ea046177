/** J rows of plain ranks 1…p: what the tables are made for. */
export function plainRows(samples: number, sittings: number): number[][] {
  return Array.from({ length: sittings }, () => Array.from({ length: samples }, (_, i) => i + 1));
}

/** Rows whose Page L is `l`: as many rows as can be in order, the rest turned round a little. Null if none has it. */
export function rowsWithL(samples: number, sittings: number, l: number): number[][] | null {
  const best = (samples * (samples + 1) * (2 * samples + 1)) / 6;
  const turned = new Map(
    permutations(samples).map((row) => [best - row.reduce((sum, r, i) => sum + (i + 1) * r, 0), row]),
  );
  let short = sittings * best - l;
  const rows: number[][] = [];
  for (let j = 0; j < sittings; j++) {
    const step = Math.max(...[...turned.keys()].filter((loss) => loss <= short));
    rows.push(turned.get(step)!);
    short -= step;
  }
  return short === 0 ? rows : null;
}

function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((row) =>
    Array.from({ length: n }, (_, i) => [...row.slice(0, i), n, ...row.slice(i)]),
  );
}
