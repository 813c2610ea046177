/** What a law gives energy for. Carbohydrate is without polyols and fibre; sugar is a part of it and counted within. */
export type Nutrient =
  'carbohydrate' | 'polyol' | 'erythritol' | 'fibre' | 'fat' | 'protein' | 'organic acid' | 'ethanol';

/** Grams of each in 100 mL or another amount of a drink; what is left out is none. */
export type Grams = Readonly<Partial<Record<Nutrient, number>>>;

/** kcal or kJ per gram of each. */
export type Factors = Readonly<Record<Nutrient, number>>;

/**
 * Energy of so many grams (zero or more) by the factors of a law, in the unit of the factors: kcal or kJ. The two are each
 * summed by their own factors, as the law says, and not worked out from one another.
 * Source: Reg. (EU) 1169/2011 Annex XIV. Check: 10 g of sugar 170 kJ or 40 kcal; 12 % vol of ethanol, 9.47 g, 275 kJ or 66 kcal.
 */
export function energyOf(grams: Grams, factors: Factors): number {
  return Object.entries(grams).reduce((sum, [of, amount]) => sum + amount * factors[of as Nutrient], 0);
}

/** Grams of two things together, each nutrient added up. Arithmetic. */
export function addedUp(all: readonly Grams[]): Grams {
  const sum: Partial<Record<Nutrient, number>> = {};
  for (const one of all)
    for (const [of, amount] of Object.entries(one)) sum[of as Nutrient] = (sum[of as Nutrient] ?? 0) + amount;
  return sum;
}
