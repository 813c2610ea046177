/** Who else drinks it: body mass in kg, and how much of the drink in a day. */
export interface DrinkerRow {
  readonly who: string;
  /** kg; null for that of the adult who is judged. */
  readonly bodyKg: number | null;
  /** Portions of the adult who is judged. */
  readonly portions: number;
  /** False for a drinker of drinks without alcohol only. */
  readonly alcoholToo: boolean;
  readonly source: string;
}

/** Portion and body weight of the adult who is judged, until others are typed: g a day and kg. */
export const ADULT = { portionG: 300, bodyKg: 60 } as const;

/** Where those of the adult come from. */
export const adultSource = '300 g: portion of a drink, EFSA 2017 (doi 10.2903/j.efsa.2017.4897); 60 kg: usual in intakes, EFSA 2012 takes 70';

/** The others. */
export const drinkers: readonly DrinkerRow[] = [
  { who: 'small child', bodyKg: 12, portions: 2 / 3, alcoholToo: false, source: '12 kg: EFSA 2012 (EFSA Journal 10(3):2579), 1 to 3 years, as quoted by EFSA; two thirds of a portion: our choice' },
  { who: 'heavy drinker', bodyKg: null, portions: 5, alcoholToo: true, source: 'five portions a day: our choice' },
];
