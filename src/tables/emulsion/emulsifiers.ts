/**
 * What holds oil droplets in water. `ratio`: g per g of oil phase that were tried, and what is usual; `inWater`: most g per g of it and
 * its water that can still be stirred and homogenised; `oil`: most oil phase in the emulsion, g/g; `abv`: % ABV of a drink up to which it
 * is used. Each with its source; where there is none it says so.
 */
export interface Emulsifier {
  readonly id: string;
  readonly name: string;
  readonly cas: string;
  readonly ratio: { readonly low: number; readonly usual: number; readonly high: number; readonly source: string };
  readonly inWater: number;
  readonly oil: number;
  readonly abv: number;
  /** How it is brought into its water, in an imperative sentence. */
  readonly hydrate: string;
  readonly source: string;
}

/** From memory: gum and starch come out of strong spirit, and oil leaves its droplets; a gum maker calls "high percentages of alcohol" incompatible. */
const MOST_ABV = 20;

/** All emulsifiers; gum arabic first. */
export const emulsifiers: readonly Emulsifier[] = [
  {
    id: 'gum-arabic',
    name: 'gum arabic',
    cas: '9000-01-5',
    ratio: { low: 0.6, usual: 1.5, high: 2, source: 'over 12 % for 20 % of orange oil (Randall, Phillips and Williams 1988); 7 to 20 % with 6 to 14 % (Mirhosseini 2008)' },
    inWater: 0.3,
    oil: 0.2,
    abv: MOST_ABV,
    hydrate: 'Sprinkle it into the stirred water, without air; leave it covered overnight until no lump is left.',
    source: 'dissolves up to 50 %, a paste by then; over 30 % it is too thick to work: common practice, no source. Published emulsions to 20 % of oil',
  },
  {
    id: 'modified-starch',
    name: 'modified starch (E 1450)',
    cas: '66829-29-7',
    ratio: { low: 0.4, usual: 0.5, high: 1, source: '9 % for 20 % of oil in a published emulsion; less steady than gum arabic with orange terpenes (Reiner, Reineccius and Peppard 2010)' },
    inWater: 0.25,
    oil: 0.2,
    abv: MOST_ABV,
    hydrate: 'Sprinkle it into the stirred water and stir until it is smooth; then stop, so that it does not foam.',
    source: 'published at 11 % of its water with 20 % of oil; over 25 % too thick: common practice, no source',
  },
  {
    id: 'quillaia',
    name: 'quillaia extract (E 999), dry',
    cas: '68990-67-0',
    ratio: { low: 0.05, usual: 0.1, high: 0.25, source: 'under 0.1 (Yang, Leser, Sher and McClements 2013); 0.05 to 0.25 (Chung and others 2017)' },
    inWater: 0.2,
    oil: 0.5,
    abv: MOST_ABV,
    hydrate: 'Stir it into the water slowly: it foams. Of a liquid extract take as much more as its label says.',
    source: 'published at 50 % of oil phase; in water: common practice, no source',
  },
];
