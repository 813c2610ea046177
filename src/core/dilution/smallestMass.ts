import { gram, type Gram } from '../number/units';

/**
 * The smallest net mass (g) this scale can make: 2·s/m may not exceed the tolerance, and s counts as at least 0.41 d.
 *
 * `repeatability` s (g) from ten or more weighings (0 if not known), `readability` d (g), `tolerance` as a share.
 * Source: USP <41> as of August 2019, tolerance 0.1 %: m ≥ 2000 s, never below 820 d. Looser tolerances use the same
 * formula and are our own: 1 % asks for 82 d, 0.82 g on a 0.01 g scale.
 * @throws RangeError when the scale or the tolerance is not above zero
 */
export function smallestMass(
  scale: { readonly readability: Gram; readonly repeatability: Gram },
  tolerance = 0.001, // share; USP <41>
): Gram {
  if (!(scale.readability > 0)) throw new RangeError(`a scale shows steps above 0 g, not ${scale.readability} g`);
  if (!(scale.repeatability >= 0)) throw new RangeError(`repeatability is zero or more, not ${scale.repeatability} g`);
  if (!(tolerance > 0)) throw new RangeError(`a tolerance is above 0 %, not ${tolerance * 100} %`);
  return gram((2 * Math.max(scale.repeatability, 0.41 * scale.readability)) / tolerance);
}
