/**
 * log10 of the octanol–water partition (log Kow), dimensionless, near 25 °C, of materials whose water solubility is known; only
 * what sources agree on. Source: Syracuse Research log P compilation (PHYSPROP family, experimental), read in an open data file;
 * the mirror image of a compound shares its value.
 */
export const logKow: Readonly<Record<string, number>> = {
  '141-78-6': 0.73, // ethyl acetate
  '103-36-6': 2.99, // ethyl cinnamate
  '134-20-3': 1.88, // methyl anthranilate
  '115-95-7': 3.93, // linalyl acetate
  '60-12-8': 1.36, // 2-phenylethanol
  '78-70-6': 2.97, // linalool
  '106-24-1': 3.56, // geraniol
  '106-25-2': 3.47, // nerol
  '106-22-9': 3.91, // citronellol
  '98-55-5': 2.98, // alpha-terpineol
  '562-74-3': 3.26, // terpinen-4-ol
  '89-78-1': 3.4, // menthol (dl / unspecified)
  '2216-51-5': 3.4, // l-menthol
  '66-25-1': 1.78, // hexanal
  '100-52-7': 1.48, // benzaldehyde
  '104-55-2': 1.9, // cinnamaldehyde
  '121-33-5': 1.21, // vanillin
  '121-32-4': 1.58, // ethyl vanillin
  '14901-07-6': 3.84, // beta-ionone
  '6485-40-1': 2.71, // l-carvone
  '118-71-8': 0.09, // maltol
  '4940-11-8': 0.63, // ethyl maltol
  '138-86-3': 4.57, // limonene (unspecified / dl)
  '80-56-8': 4.83, // alpha-pinene
  '127-91-3': 4.16, // beta-pinene
  '123-35-3': 4.17, // myrcene
  '99-85-4': 4.5, // gamma-terpinene
  '99-87-6': 4.1, // p-cymene
  '470-82-6': 2.74, // 1,8-cineole
  '97-53-0': 2.27, // eugenol
  '89-83-8': 3.3, // thymol
  '499-75-2': 3.49, // carvacrol
  '5989-27-5': 4.57, // d-limonene: as limonene (mirror images partition alike)
  '2244-16-8': 2.71, // d-carvone: as l-carvone (mirror images partition alike)
};
