import type { MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** °Brix and viscosity relative to water at 20 °C. The list's value at 32 °Brix is out of line with its neighbours and is left out. */
const RELATIVE: readonly (readonly [brix: number, relative: number])[] = [
  [0, 1.0],
  [1, 1.026],
  [2, 1.053],
  [3, 1.082],
  [4, 1.112],
  [5, 1.144],
  [6, 1.177],
  [7, 1.213],
  [8, 1.251],
  [9, 1.291],
  [10, 1.333],
  [11, 1.378],
  [12, 1.426],
  [13, 1.477],
  [14, 1.531],
  [15, 1.589],
  [16, 1.65],
  [17, 1.716],
  [18, 1.786],
  [19, 1.861],
  [20, 1.941],
  [22, 2.12],
  [24, 2.326],
  [26, 2.568],
  [28, 2.849],
  [30, 3.181],
  [34, 4.044],
  [36, 4.612],
  [38, 5.304],
  [40, 6.15],
  [42, 7.22],
  [44, 8.579],
  [46, 10.28],
  [48, 12.49],
  [50, 15.4],
  [52, 19.3],
  [54, 24.63],
  [56, 32.06],
  [58, 42.69],
  [60, 58.37],
  [62, 82.26],
  [64, 119.9],
  [66, 181.7],
  [68, 287.9],
  [70, 480.6],
];

/** Water at 20 °C, mPa s: 1.002. */
const WATER = 1.002;

/**
 * Viscosity of sucrose in water at 20 °C, mPa s, from °Brix (g/g); straight lines in the logarithm between the values.
 * Source: CRC Handbook, concentrative properties of aqueous sucrose. Valid: 0–70 °Brix, 20 °C only.
 * Check: 1.381 at 11 °Brix, 15.4 at 50. @throws Refusal outside
 */
export function sucroseViscosity(brix: MassFraction): number {
  const percent = brix * 100;
  const above = RELATIVE.findIndex(([b]) => b >= percent - 1e-9);
  if (!(percent >= 0) || above === -1)
    throw new Refusal('sugar viscosity is known for 0–70 °Brix, not for {percent} °Brix', { percent });
  const [high, thick] = RELATIVE[above]!;
  const [low, thin] = RELATIVE[Math.max(above - 1, 0)]!;
  const way = high === low ? 0 : (percent - low) / (high - low);
  return WATER * thin * (thick / thin) ** way;
}
