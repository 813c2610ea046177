import { CARBONIC, type SourGoods } from '../../core/acid/weighed';
import type { WeakAcid } from '../../core/acid/solution';

/** −log K of acids at 25 °C and infinite dilution. */
const citric: WeakAcid = { pKa: [3.128, 4.761, 6.396] };
const malic: WeakAcid = { pKa: [3.459, 5.097] };
const tartaric: WeakAcid = { pKa: [3.036, 4.366] };
const lactic: WeakAcid = { pKa: [3.86] };
const phosphoric: WeakAcid = { pKa: [2.148, 7.198, 12.35] };
const acetic: WeakAcid = { pKa: [4.756] };
const ascorbic: WeakAcid = { pKa: [4.1, 11.8] };
const benzoic: WeakAcid = { pKa: [4.19] };
const sorbic: WeakAcid = { pKa: [4.76] };

const GOLDBERG = 'J. Phys. Chem. Ref. Data 31 (2002) 231, from memory; a table of constants that was read has it within 0.1';
const NBS = 'J. Res. NBS 73A (1969) 37, as its buffer values are reproduced';
const READ = 'read in a table of constants that names its references';

/**
 * What is sour, or takes sourness back: its acid, g of it per mol of acid, and cations per mol, by the id that it has in a drink.
 * Molar masses: sums of IUPAC conventional atomic weights. The acid of a juice or extract counts as citric, as it is said.
 */
export const sourGoods: Readonly<Record<string, SourGoods & { readonly source: string }>> = {
  'citric-acid': { acid: citric, gramsPerMol: 192.124, cations: 0, source: NBS },
  'citric-acid-monohydrate': { acid: citric, gramsPerMol: 210.139, cations: 0, source: NBS },
  'own-acid': { acid: citric, gramsPerMol: 192.124, cations: 0, source: NBS },
  'malic-acid': { acid: malic, gramsPerMol: 134.087, cations: 0, source: GOLDBERG },
  'tartaric-acid': { acid: tartaric, gramsPerMol: 150.087, cations: 0, source: GOLDBERG },
  'lactic-acid': { acid: lactic, gramsPerMol: 90.078, cations: 0, source: READ },
  'phosphoric-acid': { acid: phosphoric, gramsPerMol: 97.994, cations: 0, source: NBS },
  'acetic-acid': { acid: acetic, gramsPerMol: 60.052, cations: 0, source: READ },
  'ascorbic-acid': { acid: ascorbic, gramsPerMol: 176.124, cations: 0, source: 'from memory (4.0 to 4.2 in tables)' },
  'trisodium-citrate': { acid: citric, gramsPerMol: 294.1, cations: 3, source: NBS },
  'tripotassium-citrate': { acid: citric, gramsPerMol: 324.41, cations: 3, source: NBS },
  'sodium-hydrogen-carbonate': { acid: CARBONIC, gramsPerMol: 84.007, cations: 1, source: READ },
  'sodium-benzoate': { acid: benzoic, gramsPerMol: 144.1, cations: 1, source: READ },
  'potassium-sorbate': { acid: sorbic, gramsPerMol: 150.22, cations: 1, source: READ },
};

/** Salts that take sourness back and hold the pH: ids as above, names and CAS numbers (from memory). */
export const bufferSalts = [
  { id: 'trisodium-citrate', name: 'trisodium citrate dihydrate', cas: '6132-04-3' },
  { id: 'tripotassium-citrate', name: 'tripotassium citrate monohydrate', cas: '6100-05-6' },
  { id: 'sodium-hydrogen-carbonate', name: 'sodium hydrogen carbonate', cas: '144-55-8' },
] as const;

/** Ascorbic acid, which keeps colour and flavour from air. */
export const vitaminC = { id: 'ascorbic-acid', name: 'ascorbic acid', cas: '50-81-7' } as const;
