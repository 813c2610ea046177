import { preservatives } from './syrupAdditives';

/**
 * g of free acid in a gram of a preservative, by CAS number: the one ratio of molar masses by which the weigh list and the
 * limits count, so that what is typed as the acid is judged as the same amount. Potassium benzoate 122.12/160.21 g/mol.
 */
export const acidShares: Readonly<Record<string, number>> = {
  ...Object.fromEntries(
    preservatives.map(({ cas, preservative }) => [cas, preservative.acidMolarMass / preservative.molarMass]),
  ),
  '582-25-2': 122.12 / 160.21,
};
