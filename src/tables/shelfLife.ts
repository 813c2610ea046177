/** How long things keep, closed and dark. `verified` false: common practice, no source. */
export interface ShelfLifeRow {
  readonly id: string;
  readonly what: string;
  /** Months, shortest and longest as the source gives them; days where they are stated. */
  readonly months?: readonly [shortest: number, longest: number];
  readonly days?: number;
  readonly source: string;
  readonly verified: boolean;
}

const GUIDE = 'half of a published guideline for oils kept cold, as quoted by a shop';
const PRACTICE = 'common practice, no source';

export const shelfLives = {
  'citrus oil': { id: 'citrus oil', what: 'citrus and other quick oils, at room temperature', months: [6, 12], source: GUIDE, verified: true },
  oil: { id: 'oil', what: 'other oils, at room temperature', months: [12, 18], source: GUIDE, verified: true },
  'slow oil': { id: 'slow oil', what: 'sandalwood, vetiver, patchouli, at room temperature', months: [24, 48], source: GUIDE, verified: true },
  'in ethanol': { id: 'in ethanol', what: 'dilutions in ethanol, closed, dark, cool', months: [12, 12], source: PRACTICE, verified: false },
  'in carrier': { id: 'in carrier', what: 'dilutions in propylene glycol, triacetin or MCT oil', months: [12, 12], source: PRACTICE, verified: false },
  'of aldehyde': { id: 'of aldehyde', what: 'dilutions of aldehydes and thiols', months: [3, 6], source: PRACTICE, verified: false },
  'in water': { id: 'in water', what: 'dilutions in water: make fresh, keep cold', days: 3, source: `${PRACTICE}, which says "days"; three is our choice`, verified: false },
} as const satisfies Record<string, ShelfLifeRow>;
