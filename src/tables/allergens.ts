/** A group of foods that a label has to name, whatever else it says. */
export interface Allergen {
  readonly id: string;
  readonly words: string;
  /** Whether the United States name it too. */
  readonly us: boolean;
  readonly source: string;
}

const EU = 'Reg. (EU) 1169/2011 Annex II, as reproduced';
const BOTH = `${EU}; US 21 U.S.C. 321(qq) with the FASTER Act of 2021, from memory`;

/** The fourteen groups of the European Union; nine of them are those of the United States, which count of shellfish crustaceans alone. */
export const allergens: readonly Allergen[] = [
  { id: 'gluten', words: 'cereals with gluten', us: true, source: `${BOTH}; there wheat alone` },
  { id: 'crustaceans', words: 'crustaceans', us: true, source: BOTH },
  { id: 'eggs', words: 'eggs', us: true, source: BOTH },
  { id: 'fish', words: 'fish', us: true, source: BOTH },
  { id: 'peanuts', words: 'peanuts', us: true, source: BOTH },
  { id: 'soya', words: 'soya', us: true, source: BOTH },
  { id: 'milk', words: 'milk', us: true, source: BOTH },
  { id: 'nuts', words: 'nuts', us: true, source: BOTH },
  { id: 'celery', words: 'celery', us: false, source: EU },
  { id: 'mustard', words: 'mustard', us: false, source: EU },
  { id: 'sesame', words: 'sesame', us: true, source: BOTH },
  { id: 'sulphites', words: 'sulphites', us: false, source: `${EU}: above 10 mg/kg or 10 mg/L as SO₂` },
  { id: 'lupin', words: 'lupin', us: false, source: EU },
  { id: 'molluscs', words: 'molluscs', us: false, source: EU },
];
