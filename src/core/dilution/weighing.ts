import { measured, plus, type Measured } from '../number/measured';
import { gram, gramPerMl, millilitre, type Celsius, type Gram, type GramPerMl, type Millilitre } from '../number/units';
import { waterDensity } from '../liquid/water';

/** Air of an ordinary room, g/mL. Source: OIML D 28, conventional value 1.2 kg/m³. */
export const ROOM_AIR = gramPerMl(0.0012);

/** Steel weights, g/mL. Source: OIML D 28, conventional value 8000 kg/m³. */
const WEIGHTS = 8;

/**
 * Density of moist air, g/mL, from temperature, pressure (hPa) and relative humidity (%).
 * Valid: 15–30 °C, 800–1067 hPa, 0–100 %. Source: NIST simplified formula (4 parts in 10 000), as in ISO/TR 20461.
 * Check: 0.001199 at 20 °C, 1013 hPa, 50 %. @throws RangeError outside
 */
export function airDensity(t: Celsius, pressureHPa: number, humidityPercent: number): GramPerMl {
  if (!(t >= 15 && t <= 30)) throw new RangeError(`air density is known for 15–30 °C, not for ${t} °C`);
  if (!(pressureHPa >= 800 && pressureHPa <= 1067))
    throw new RangeError(`air density is known for 800–1067 hPa, not for ${pressureHPa} hPa`);
  if (!(humidityPercent >= 0 && humidityPercent <= 100))
    throw new RangeError(`humidity lies between 0 and 100 %, not at ${humidityPercent} %`);
  const kgPerM3 = (0.348444 * pressureHPa - humidityPercent * (0.00252 * t - 0.020582)) / (273.15 + t);
  return gramPerMl(kgPerM3 / 1000);
}

/**
 * Volume in mL of a liquid of known density (g/mL) that a scale shows as `shown` grams in air (g/mL).
 * V = m (1 − ρa/ρb)/(ρ − ρa), steel weights. Source: ISO 8655-6. @throws RangeError for a liquid not denser than air
 */
export function volumeWeighed(shown: Gram, density: GramPerMl, air: GramPerMl = ROOM_AIR): Millilitre {
  if (!(density > air)) throw new RangeError(`a liquid is denser than air, not ${density} g/mL`);
  return millilitre((shown * (1 - air / WEIGHTS)) / (density - air));
}

/**
 * Mass in g, free of the air's lift, of a liquid of known density (g/mL) that a scale shows as `shown` grams.
 * m (1 − ρa/ρb)/(1 − ρa/ρ). Water reads 0.105 % low, ethanol 0.137 %: it matters for densities, not for doses.
 * Source: ISO 8655-6, ISO/TR 20461. @throws RangeError for a liquid not denser than air
 */
export function massInVacuum(shown: Gram, density: GramPerMl, air: GramPerMl = ROOM_AIR): Gram {
  return gram(volumeWeighed(shown, density, air) * density);
}

/**
 * Z, mL of water per gram shown by a scale, at the water's temperature. Valid: 0–40 °C.
 * Source: ISO 8655-6; water after Tanaka 2001. Check: 1.0029 at 20 °C and 1013 hPa. @throws RangeError outside
 */
export function zFactor(t: Celsius, air: GramPerMl = ROOM_AIR): number {
  return volumeWeighed(gram(1), waterDensity(t), air);
}

/**
 * One reading of a scale, in g, with the doubt of its step: d/(2√3), rectangular. Source: GUM F.2.2.1.
 * @throws RangeError unless the step is above zero
 */
export function reading(shown: Gram, readabilityG: number, source: { id: string; words: string }): Measured {
  checkStep(readabilityG);
  return measured(shown, readabilityG / (2 * Math.sqrt(3)), source);
}

/** A tared weighing: what the scale showed with and without the goods, its step, its repeatability if known; all in g. */
export interface Weighing {
  readonly grossG: number;
  readonly tareG: number;
  readonly readabilityG: number;
  readonly repeatabilityG?: number;
}

/**
 * Net mass in g: gross less tare (0 after the tare key). Its sources are the step, d/√6 for two readings (GUM F.2.2.1),
 * as `<id>:readability`, and the standard deviation of a net mass as `<id>:repeatability`
 * where it is known. Source: GUM 4.2, F.2.2.1.
 * @throws RangeError when the tare is above the gross, the step not above zero or the repeatability negative
 */
export function netMass(weighing: Weighing, source: { id: string; words: string }): Measured {
  const { grossG, tareG, readabilityG, repeatabilityG = 0 } = weighing;
  checkStep(readabilityG);
  if (!(grossG >= tareG))
    throw new RangeError(`the goods weigh less than nothing: ${grossG} g with, ${tareG} g without`);
  return plus(
    measured(grossG - tareG, readabilityG / Math.sqrt(6), {
      id: `${source.id}:readability`,
      words: `${source.words}: step of the scale`,
    }),
    measured(0, repeatabilityG, { id: `${source.id}:repeatability`, words: `${source.words}: scatter of the scale` }),
  );
}

function checkStep(readabilityG: number): void {
  if (!(readabilityG > 0)) throw new RangeError(`the step of a scale is more than zero, not ${readabilityG} g`);
}
