import { measured, plus, type Measured } from '../number/measured';
import { gramPerMl, millilitre, type Gram, type GramPerMl, type Millilitre } from '../number/units';
import { Refusal } from '../text/refusal';

/** Air of an ordinary room, g/mL. Source: OIML D 28, conventional value 1.2 kg/m³. */
export const ROOM_AIR = gramPerMl(0.0012);

/** Steel weights, g/mL. Source: OIML D 28, conventional value 8000 kg/m³. */
const WEIGHTS = 8;

/**
 * Volume in mL of a liquid of known density (g/mL) that a scale shows as `shown` grams in air (g/mL).
 * V = m (1 − ρa/ρb)/(ρ − ρa), steel weights. Source: ISO 8655-6. @throws Refusal for a liquid not denser than air
 */
export function volumeWeighed(shown: Gram, density: GramPerMl, air: GramPerMl = ROOM_AIR): Millilitre {
  if (!(density > air)) throw new Refusal('a liquid is denser than air, not {density} g/mL', { density });
  return millilitre((shown * (1 - air / WEIGHTS)) / (density - air));
}

/** A tared weighing: what the scale showed with and without the goods, its step, and the standard deviation of a net mass if known; all in g. */
export interface Weighing {
  readonly grossG: number;
  readonly tareG: number;
  readonly readabilityG: number;
  readonly repeatabilityG?: number;
}

/**
 * Net mass in g: gross less tare (0 after the tare key). Its sources are the step, d/√6 for two readings (GUM F.2.2.1),
 * as `<id>:readability`, and the standard deviation of a net mass as `<id>:repeatability`. Where that is not known, both together
 * come to one step: the display is the least of what is wrong with a scale. Source: GUM 4.2, F.2.2.1; one step: our choice.
 * @throws Refusal when the tare is above the gross, the step not above zero or the repeatability negative
 */
export function netMass(weighing: Weighing, source: { id: string; words: string }): Measured {
  const { grossG, tareG, readabilityG, repeatabilityG = readabilityG * Math.sqrt(5 / 6) } = weighing;
  checkStep(readabilityG);
  if (!(grossG >= tareG))
    throw new Refusal('the goods weigh less than nothing: {grossG} g with, {tareG} g without', { grossG, tareG });
  return plus(
    measured(grossG - tareG, readabilityG / Math.sqrt(6), {
      id: `${source.id}:readability`,
      words: `${source.words}: readability of the scale`,
    }),
    measured(0, repeatabilityG, { id: `${source.id}:repeatability`, words: `${source.words}: scatter of the scale` }),
  );
}

function checkStep(readabilityG: number): void {
  if (!(readabilityG > 0))
    throw new Refusal('the readability of a scale is more than zero, not {readabilityG} g', { readabilityG });
}
