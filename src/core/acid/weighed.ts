/** From what is weighed to what is sour: acids, their salts, preservatives, gas and the water’s own alkalinity. Arithmetic on molar masses. */
import { baseToPh, type Sour, type WeakAcid } from './solution';

/** Something as it is weighed: g of it with one mol of the acid, and the cations that come with each mol of acid. */
export interface SourGoods {
  readonly acid: WeakAcid;
  readonly gramsPerMol: number;
  readonly cations: number;
}

/** Carbonic acid with the dissolved gas counted in: 6.352 and 10.329 at 25 °C. Source: Harned and Davis 1943, Harned and Scholes 1941, as tables of constants quote them (6.35, 10.33). */
export const CARBONIC: WeakAcid = { pKa: [6.352, 10.329] };

/** g of calcium carbonate that binds one mol of acid: 100.087 / 2. */
const ALKALINITY = 50.043;

/** L of gas in one mol at 0 °C, 1 atm: one volume in a litre is 1/22.26 mol/L, as in carbonation. */
const LITRE_PER_MOL = 22.26;

/** A litre of drink: g/L of each thing as weighed, mg/L of alkalinity as calcium carbonate, and volumes of carbon dioxide. */
export interface SourDrink {
  readonly goods: readonly { readonly goods: SourGoods; readonly gramsPerL: number }[];
  readonly alkalinityMgPerL: number;
  readonly volumes: number;
}

/**
 * What is sour in a litre of drink, mol/L. The cations of the water’s alkalinity stay, its carbon dioxide too: below pH 4 that
 * is without effect. Volume of the drink taken as that of its water. Arithmetic.
 */
export function sourDrink({ goods, alkalinityMgPerL, volumes }: SourDrink): Sour {
  const hard = alkalinityMgPerL / 1000 / ALKALINITY; // mg per g
  const weighed = goods.map(({ goods: one, gramsPerL }) => ({ one, molPerL: gramsPerL / one.gramsPerMol }));
  return {
    acids: [
      ...weighed.map(({ one, molPerL }) => ({ acid: one.acid, molPerL })),
      { acid: CARBONIC, molPerL: hard + volumes / LITRE_PER_MOL },
    ],
    cations: weighed.reduce((sum, { one, molPerL }) => sum + one.cations * molPerL, hard),
  };
}

/** End of the titration: pH 8.2 (OIV MA-AS313-01 takes 7, juice methods 8.1; AOAC 8.2). */
export const TITRATED_TO = 8.2;

/** g of anhydrous citric acid per mol of protons: 192.124 / 3. */
const CITRIC_PER_PROTON = 64.041;

/**
 * Titratable acid of a drink without its gas, g/L as anhydrous citric acid, to pH 8.2. By definition: base taken times 64.04.
 * Check: 2 g/L of citric acid titrate 1.99. @throws Refusal as the solution
 */
export function titratable(sour: Sour): number {
  const still = { ...sour, acids: sour.acids.filter(({ acid }) => acid !== CARBONIC) };
  return baseToPh(still, TITRATED_TO) * CITRIC_PER_PROTON;
}

/**
 * °Brix over titratable acid in g/100 g, the ratio of the juice trade: dimensionless. `brix` g/100 g, `acidGPerL` g/L, density
 * g/mL. By definition. Infinity without acid.
 */
export function brixAcidRatio(brix: number, acidGPerL: number, densityGPerMl: number): number {
  return brix / (acidGPerL / (10 * densityGPerMl)); // g/L over g/mL is mg/g: a tenth of it in g/100 g
}
