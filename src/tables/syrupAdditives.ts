import type { Acid, Preservative } from '../core/drink/syrup';

/** Molar masses: sums of IUPAC conventional atomic weights, g/mol. */
const WEIGHTS = 'molar mass over protons, IUPAC atomic weights';

/** Acids for a syrup: how they titrate (protons counted, g as it is weighed), their CAS number, and of a solution its strength, g/g. */
export const acids: readonly { id: string; name: string; cas: string; acid: Acid; strength?: number; source: string }[] = [
  { id: 'citric-acid', name: 'citric acid, anhydrous', cas: '77-92-9', acid: { molarMass: 192.124, protons: 3 }, source: WEIGHTS },
  { id: 'citric-acid-monohydrate', name: 'citric acid monohydrate', cas: '5949-29-1', acid: { molarMass: 210.139, protons: 3 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.094 g for 1 g too` },
  { id: 'malic-acid', name: 'malic acid', cas: '6915-15-7', acid: { molarMass: 134.087, protons: 2 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.047 g for 1 g too` },
  { id: 'tartaric-acid', name: 'tartaric acid', cas: '87-69-4', acid: { molarMass: 150.087, protons: 2 }, source: `${WEIGHTS}; an acid maker's conversion table says 1.172 g for 1 g too` },
  { id: 'lactic-acid', name: 'lactic acid, 80 %', cas: '50-21-5', acid: { molarMass: 90.078 / 0.8, protons: 1 }, strength: 0.8, source: `${WEIGHTS}; sold at 80 or 88 %` },
  { id: 'phosphoric-acid', name: 'phosphoric acid, 85 %', cas: '7664-38-2', acid: { molarMass: 97.994 / 0.85, protons: 2 }, strength: 0.85, source: `${WEIGHTS}; its third proton is not titrated` },
  { id: 'acetic-acid', name: 'acetic acid, 100 %', cas: '64-19-7', acid: { molarMass: 60.052, protons: 1 }, source: WEIGHTS },
];

/** Preservatives for a syrup: as they are weighed, and the free acid that limits are stated for. */
export const preservatives: readonly { id: string; name: string; cas: string; acid: string; preservative: Preservative; source: string }[] = [
  { id: 'sodium-benzoate', name: 'sodium benzoate', cas: '532-32-1', acid: 'benzoic acid', preservative: { molarMass: 144.1, acidMolarMass: 122.12 }, source: 'IUPAC atomic weights' },
  { id: 'potassium-sorbate', name: 'potassium sorbate', cas: '24634-61-5', acid: 'sorbic acid', preservative: { molarMass: 150.22, acidMolarMass: 112.13 }, source: 'IUPAC atomic weights' },
];
