import { densityAt20 } from '../core/liquid/expansion';
import { measured, type Measured } from '../core/number/measured';
import { celsius } from '../core/number/units';
import type { Bottle } from '../records/kind/material';

type Density = NonNullable<Bottle['density']>;

/**
 * Mean cubic expansion of aroma liquids near 20 °C, 1/K, with half its range: 7.1e-4 (p-cresol) to 13.8e-4 (ethyl formate) for those of
 * the catalogue that DIPPR 105 or PPDS have; acetaldehyde, 17e-4, is left out.
 */
const AROMA_EXPANSION = { value: 0.001, halfWidth: 0.00035 };

/** A density (g/mL) at 20 °C from one that was read at another temperature, with half the width of what sources or lots give (rectangular). */
export function materialDensity({ gPerMl, halfWidth = 0, atC, source }: Density, id: string): Measured {
  const asRead = measured(gPerMl, halfWidth / Math.sqrt(3), { id: `density:${id}`, words: `density: ${source}` });
  if (atC === 20) return asRead;
  const expansion = { id: `expansion:${id}`, words: `expansion with warmth: its density was read at ${atC} °C` };
  const { value, halfWidth: width } = AROMA_EXPANSION;
  return densityAt20(asRead, measured(value, width / Math.sqrt(3), expansion), celsius(Math.min(40, Math.max(5, atC))));
}
