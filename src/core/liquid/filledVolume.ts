import { measured, plus, type Measured } from '../number/measured';
import type { Millilitre } from '../number/units';

/**
 * A volume filled to a mark, mL, with its three doubts: the tolerance of the glass (±, taken as triangular: a/√6), the
 * repeatability of filling (a standard deviation), and the room being up to `halfRange` K away from the temperature of
 * the mark (rectangular: V·β·ΔT/√3, `expansion` β of the liquid in 1/K).
 * Source: QUAM:2012 example A1; GUM 4.3.7 and 4.3.9 for the divisors.
 * @throws RangeError when the volume is not above 0 mL or a doubt is negative
 */
export function filledVolume(filled: {
  readonly volume: Millilitre;
  readonly tolerance: Millilitre;
  readonly repeatability: Millilitre;
  readonly expansion: number;
  readonly halfRange: number;
  readonly id: string;
}): Measured {
  const { volume, tolerance, repeatability, expansion, halfRange, id } = filled;
  if (!(volume > 0)) throw new RangeError(`a filled volume is more than 0 mL, not ${volume} mL`);
  return plus(
    measured(volume, tolerance / Math.sqrt(6), { id: `${id}:glass`, words: 'tolerance of the glass' }),
    measured(0, repeatability, { id: `${id}:filling`, words: 'filling to the mark' }),
    measured(0, (volume * expansion * halfRange) / Math.sqrt(3), {
      id: `${id}:temperature`,
      words: 'room temperature',
    }),
  );
}
