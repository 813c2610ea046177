import { ethanolDensity } from '../liquid/ethanol';
import { sucroseDensity } from '../liquid/sucrose';
import { celsius, gramPerMl, massFraction, volumeFraction, REFERENCE_TEMPERATURE } from '../number/units';
import type { Celsius, GramPerMl, MassFraction, VolumeFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** Sugar and ethanol in a finished drink, g per g of drink. All else counts as water. */
export interface DrinkMake {
  readonly brix: MassFraction;
  readonly ethanol: MassFraction;
}

/**
 * Density of a drink of sugar, ethanol and water, g/mL, 10–30 °C. Water and ethanol by the ethanol law, and on top of it the
 * room the sugar takes in water: v = (1/ρ(w) − (1 − w)/ρw)/w, w the sugar per sugar and water. Without ethanol it is the
 * sucrose law, without sugar the ethanol law; both together are our own combination (no published check). Acid, flavour and
 * gum count as water: 0.3 % of citric acid makes a drink about 0.001 g/mL denser than said here.
 * @throws Refusal outside 0–84 °Brix, 10–30 °C, or when sugar and ethanol are more than the drink
 */
export function drinkDensity({ brix, ethanol }: DrinkMake, t: Celsius = REFERENCE_TEMPERATURE): GramPerMl {
  const water = 1 - brix - ethanol;
  if (!(brix >= 0 && ethanol >= 0 && water > 0))
    throw new Refusal('sugar and ethanol are zero or more and leave room for water');
  const wet = massFraction(brix / (brix + water));
  const sugarWater = 1 / sucroseDensity(wet, t);
  const pureWater = 1 / sucroseDensity(massFraction(0), t);
  const sugarRoom = brix > 0 ? (sugarWater - (1 - wet) * pureWater) / wet : 0; // mL per g of sugar
  const liquid = ethanol > 0 ? 1 / ethanolDensity(massFraction(ethanol / (ethanol + water)), t) : pureWater;
  return gramPerMl(1 / ((ethanol + water) * liquid + brix * sugarRoom));
}

/** % v/v of a drink by definition, as a fraction (mL ethanol per mL drink, both at 20 °C). Valid as {@link drinkDensity}. */
export function drinkAbv(make: DrinkMake): VolumeFraction {
  const pure = ethanolDensity(massFraction(1), celsius(20));
  return volumeFraction((make.ethanol * drinkDensity(make)) / pure);
}
