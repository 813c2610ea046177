/** Alcohol in batches: thinning, blending, and what carriers bring to a drink. Volumes and % v/v at 20 °C (OIML R 22). */
import { ethanolDensity, ethanolMassFraction, ethanolVolumeFraction, mixSpirits, waterToReduce } from './ethanol';
import { expanded, type Measured } from '../number/measured';
import { gram, massFraction, millilitre, REFERENCE_TEMPERATURE, volumeFraction } from '../number/units';
import type { Gram, Millilitre, VolumeFraction } from '../number/units';

/** A spirit by volume, mL, and its strength, mL/mL. */
export interface Measure {
  readonly volume: Millilitre;
  readonly abv: VolumeFraction;
}

/** Density at 20 °C (g/mL) times volume: g of so many mL of that strength. 0–1 mL/mL. */
export function massOfSpirit({ volume, abv }: Measure): Gram {
  return gram(volume * ethanolDensity(ethanolMassFraction(abv), REFERENCE_TEMPERATURE));
}

/**
 * Water (g) that brings a spirit down, the volume (mL) that results and how much the volumes shrank (mL).
 * Check: 1000 mL of 96 % vol to 40 %: 1467.9 g, 2400 mL, 70.5 mL.
 * @throws RangeError when the wanted strength is zero or above the spirit's
 */
export function thinSpirit(
  from: Measure,
  to: VolumeFraction,
): { water: Gram; volume: Millilitre; contraction: Millilitre } {
  const spirit = { mass: massOfSpirit(from), strength: ethanolMassFraction(from.abv) };
  const water = waterToReduce(spirit, ethanolMassFraction(to));
  const { volume, contraction } = mixSpirits(spirit, { mass: water, strength: massFraction(0) }, REFERENCE_TEMPERATURE);
  return { water, volume, contraction };
}

/**
 * Spirit and water (g) for a volume (mL) of a weaker one. Check: 1 L of 40 % from 96 %: 336.4 g and 611.6 g.
 * @throws RangeError when the wanted strength is zero or above the spirit's
 */
export function spiritFor(want: Measure, from: VolumeFraction): { spirit: Gram; water: Gram } {
  const [to, strong] = [ethanolMassFraction(want.abv), ethanolMassFraction(from)];
  const mass = massOfSpirit(want);
  const spirit = gram((mass * to) / strong);
  return { spirit, water: waterToReduce({ mass: spirit, strength: strong }, to) };
}

/**
 * Spirits (and water, strength 0) poured together: exact by mass. Result in mL and mL/mL.
 * Check: 60 mL of 40 % and 60 mL of 15 % are 119.8 mL of 27.55 %.
 * @throws RangeError when nothing is poured
 */
export function blendSpirits(parts: readonly Measure[]): Measure {
  const spirits = parts.map((part) => ({ mass: massOfSpirit(part), strength: ethanolMassFraction(part.abv) }));
  const [first, ...rest] = spirits;
  if (!first) throw new RangeError('there must be something to mix');
  const all = rest.reduce((sum, one) => mixSpirits(sum, one, REFERENCE_TEMPERATURE), first);
  return {
    volume: millilitre(all.mass / ethanolDensity(all.strength, REFERENCE_TEMPERATURE)),
    abv: ethanolVolumeFraction(all.strength),
  };
}

/** % v/v (mL/mL) that a carrier of that strength adds at so many mL per litre of finished drink. Check: 1 mL/L of 95 % is 0.095 %. */
export function abvFromCarrier(mlPerL: number, carrier: VolumeFraction): VolumeFraction {
  return volumeFraction((mlPerL * carrier) / 1000); // mL per L
}

/** The same by mass: g of carrier per litre. Check: 1 g/L of 95 % is 0.117 %. */
export function abvFromCarrierMass(gramsPerL: number, carrier: VolumeFraction): VolumeFraction {
  return abvFromCarrier(gramsPerL / ethanolDensity(ethanolMassFraction(carrier), REFERENCE_TEMPERATURE), carrier);
}

/**
 * Most carrier, mL per litre of finished drink, that keeps it at or under a strength, the drink itself having `present`.
 * Check: 95 % under 0.5 %: 5.26 mL/L; under 0.05 %: 0.53 mL/L.
 * @throws RangeError when the drink alone is over, or the carrier is not stronger than the strength allowed
 */
export function mostCarrier(most: VolumeFraction, carrier: VolumeFraction, present = volumeFraction(0)): number {
  if (present > most) throw new RangeError('the drink is over that strength without any carrier');
  if (!(carrier > most)) throw new RangeError('a carrier no stronger than the limit cannot break it');
  return (1000 * (most - present)) / (carrier - present); // mL per L
}

/**
 * Whether a drink (% v/v with its doubt) meets a term: 'close' when the doubt at k = 2 reaches across the number.
 * `below` true: strictly less than; false: not more than. 'no number' when the rule has none.
 */
export function meetsTerm(
  abv: Measured,
  term: { maxAbv: number | null; below: boolean },
): 'yes' | 'no' | 'close' | 'no number' {
  if (term.maxAbv === null) return 'no number';
  const meets = term.below ? abv.value < term.maxAbv : abv.value <= term.maxAbv;
  if (expanded(abv) > 0 && Math.abs(abv.value - term.maxAbv) <= expanded(abv)) return 'close';
  return meets ? 'yes' : 'no';
}
