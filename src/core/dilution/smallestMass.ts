import { gram, type Gram } from '../number/units';
import { Refusal } from '../text/refusal';

/**
 * The smallest net mass (g) this scale can make: 2·s/m may not exceed the tolerance, and s counts as at least 0.41 d.
 *
 * `repeatability` s (g) from ten or more weighings (0 if not known), `readability` d (g), `tolerance` as a share.
 * Source: USP <41> as of August 2019, tolerance 0.1 %: m ≥ 2000 s, never below 820 d. Looser tolerances use the same
 * formula and are our own: 1 % asks for 82 d, 0.82 g on a 0.01 g scale.
 * @throws Refusal when the scale or the tolerance is not above zero
 */
export function smallestMass(
  scale: { readonly readability: Gram; readonly repeatability: Gram },
  tolerance = 0.001, // share; USP <41>
): Gram {
  if (!(scale.readability > 0))
    throw new Refusal('a scale shows steps above 0 g, not {readability} g', { readability: scale.readability });
  if (!(scale.repeatability >= 0))
    throw new Refusal('repeatability is zero or more, not {repeatability} g', { repeatability: scale.repeatability });
  if (!(tolerance > 0))
    throw new Refusal('a tolerance is above 0 %, not {tolerance} %', { tolerance: tolerance * 100 });
  return gram((2 * Math.max(scale.repeatability, 0.41 * scale.readability)) / tolerance);
}
