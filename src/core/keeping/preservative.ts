import { Refusal } from '../text/refusal';

/** A weak acid that keeps: −log of its constant at 25 °C, and what a litre of a syrup of so many °Brix holds of the free acid, mg, at 20 °C. */
export interface Preserving {
  readonly pKa: number;
  readonly holds: readonly (readonly [brix: number, mgPerL: number])[];
}

/**
 * Share (0 to 1) of a preservative that is the free acid at a pH, and alone works: 1/(1 + 10^(pH − pKa)), by definition of the
 * constant, activities left out as in the published tables. Check: benzoic (4.19) 60.77 % at pH 4, 13.41 % at 5; sorbic (4.76)
 * 85.19 % and 36.53 %. A much-copied table (93.5, 59.3, 12.8, 1.44 % at pH 3 to 6) says 4.19 and is of 4.163.
 */
export function activeShare({ pKa }: Preserving, ph: number): number {
  return 1 / (1 + 10 ** (ph - pKa));
}

/**
 * mg of free acid that a litre of syrup of so many °Brix (g/100 g) holds at 20 °C, straight lines between measured values.
 * Source: that of the row. @throws Refusal outside of what was measured
 */
export function freeAcidHeld({ holds }: Preserving, brix: number): number {
  const last = holds.at(-1)!;
  if (!(brix >= 0 && brix <= last[0]))
    throw new Refusal('how much free acid a syrup holds is known up to {most} °Brix, not at {brix}', {
      most: last[0],
      brix: { value: brix, digits: 3 },
    });
  const at = Math.max(
    1,
    holds.findIndex(([one]) => one >= brix),
  );
  const [[from, low], [to, high]] = [holds[at - 1] ?? last, holds[at] ?? last];
  return to === from ? high : low + ((high - low) * (brix - from)) / (to - from);
}
