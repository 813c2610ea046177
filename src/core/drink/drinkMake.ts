import { ethanolDensity } from '../liquid/ethanol';
import { drinkDensity, type DrinkMake } from './finishedDrink';
import { massFraction, REFERENCE_TEMPERATURE, type MassFraction, type VolumeFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/**
 * What a drink is made of, from its °Brix (as g of sugar per g of drink) and its strength (mL of ethanol per mL of drink, 20 °C):
 * the ethanol by mass, e = a ρₑ/ρ(brix, e), solved by repetition (each round is more than twice as near). 0–84 °Brix, 0–1 mL/mL.
 * Source: definition of % ABV; densities as in {@link drinkDensity} and OIML R 22. Check: 0.40 mL/mL without sugar is 0.332996 g/g.
 * @throws Refusal when sugar and ethanol leave no room for water, or outside the range of the density
 */
export function drinkMakeOf(brix: MassFraction, abv: VolumeFraction): DrinkMake {
  if (!(abv >= 0 && abv < 1))
    throw new Refusal('a drink has 0 to less than 100 % ABV, not {abv} %', { abv: abv * 100 });
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  let ethanol = massFraction(abv * pure);
  for (let i = 0; i < 40; i++) ethanol = massFraction((abv * pure) / drinkDensity({ brix, ethanol }));
  return { brix, ethanol };
}

/**
 * The same with the sugar by volume, g per litre of drink: brix = s/(1000 ρ), solved by repetition (each round is more than
 * twice as near). Source: as {@link drinkMakeOf}. Check: 114.65 g/L without ethanol is 11 °Brix (CRC Handbook).
 * @throws Refusal as {@link drinkMakeOf}
 */
export function drinkMakeOfLitre(sugarGramsPerL: number, abv: VolumeFraction): DrinkMake {
  let brix = massFraction(sugarGramsPerL / 1500); // heavier than any drink: a beginning that leaves room for water
  for (let i = 0; i < 40; i++) brix = massFraction(sugarGramsPerL / (1000 * drinkDensity(drinkMakeOf(brix, abv)))); // mL per L
  return drinkMakeOf(brix, abv);
}
