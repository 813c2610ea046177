import type { Acid, Preservative } from '../core/drink/syrup';

/** Molar masses: sums of IUPAC conventional atomic weights, g/mol. */
const WEIGHTS = 'molar mass over protons, IUPAC atomic weights';

/** Acids for a syrup: how they titrate (protons counted), and their CAS number. */
export const acids: readonly { id: string; name: string; cas: string; acid: Acid; source: string }[] = [
  { id: 'citric-acid', name: 'citric acid, anhydrous', cas: '77-92-9', acid: { molarMass: 192.124, protons: 3 }, source: WEIGHTS },
  { id: 'citric-acid-monohydrate', name: 'citric acid monohydrate', cas: '5949-29-1', acid: { molarMass: 210.139, protons: 3 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.094 g for 1 g too` },
  { id: 'malic-acid', name: 'malic acid', cas: '6915-15-7', acid: { molarMass: 134.087, protons: 2 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.047 g for 1 g too` },
  { id: 'tartaric-acid', name: 'tartaric acid', cas: '87-69-4', acid: { molarMass: 150.087, protons: 2 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.172 g for 1 g too` },
];

/** Preservatives for a syrup: as they are weighed, and the free acid that limits are stated for. */
export const preservatives: readonly { id: string; name: string; cas: string; acid: string; preservative: Preservative; source: string }[] = [
  { id: 'sodium-benzoate', name: 'sodium benzoate', cas: '532-32-1', acid: 'benzoic acid', preservative: { molarMass: 144.1, acidMolarMass: 122.12 }, source: 'IUPAC atomic weights' },
  { id: 'potassium-sorbate', name: 'potassium sorbate', cas: '24634-61-5', acid: 'sorbic acid', preservative: { molarMass: 150.22, acidMolarMass: 112.13 }, source: 'IUPAC atomic weights' },
];
