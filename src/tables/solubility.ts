/**
 * Water solubility as measured, mg/L near room temperature. Source: AqSolDB (Sorkun, Khetan and Er, Sci Data 6:143, 2019, CC0).
 * `sd` is the spread of log10 S over n merged sources (0 with one); group G1 one source, G2/G4 sources that disagree, G3/G5
 * that agree. Two entries of one compound can differ by a factor of three. CAS by molecular skeleton: isomers share a row.
 */
export interface WaterSolubility {
  readonly name: string;
  readonly cas: readonly string[];
  readonly mgPerL: number;
  readonly sd: number; // log10 units
  readonly n: number;
  readonly group: string;
  readonly id: string;
}

const packed: readonly (readonly [string, readonly string[], number, number, number, string, string])[] = [
  ['limonene', ['138-86-3', '5989-27-5'], 6.13, 0.17, 3, 'G5', 'A-554'],
  ['limonene (racemic entry)', ['138-86-3', '5989-27-5'], 19.4, 0.73, 9, 'G4', 'A-142'],
  ['vanillin', ['121-33-5'], 9000.0, 0.04, 2, 'G3', 'A-3132'],
  ['ethyl vanillin', ['121-32-4'], 2860.0, 0.0, 1, 'G1', 'A-1170'],
  ['menthol', ['2216-51-5', '89-78-1'], 420.0, 0.05, 7, 'G5', 'A-808'],
  ['citral', ['5392-40-5'], 590.0, 0.21, 3, 'G5', 'A-566'],
  ['linalool', ['78-70-6'], 1590.0, 0.0, 1, 'G1', 'B-237'],
  ['linalyl acetate', ['115-95-7'], 30.0, 0.0, 1, 'G1', 'A-1088'],
  ['eugenol', ['97-53-0'], 1150.0, 0.3, 2, 'G3', 'A-1817'],
  ['geraniol', ['106-24-1', '106-25-2'], 737.0, 0.07, 4, 'G5', 'A-23'],
  ['citronellol', ['106-22-9'], 307.0, 0.01, 2, 'G3', 'A-1058'],
  ['citronellal', ['106-23-0'], 88.0, 0.0, 1, 'G1', 'A-295'],
  ['benzaldehyde', ['100-52-7'], 6550.0, 0.17, 3, 'G5', 'A-3397'],
  ['cinnamaldehyde', ['104-55-2'], 1420.0, 0.12, 3, 'G5', 'A-1690'],
  ['carvone', ['2244-16-8', '6485-40-1'], 1300.0, 0.0, 1, 'G1', 'B-429'],
  ['alpha-pinene', ['80-56-8'], 2.3, 0.07, 3, 'G5', 'A-135'],
  ['beta-pinene', ['127-91-3'], 6.95, 1.25, 3, 'G4', 'A-36'],
  ['myrcene', ['123-35-3'], 5.6, 0.02, 2, 'G3', 'B-726'],
  ['gamma-terpinene', ['99-85-4'], 8.68, 0.0, 1, 'G1', 'B-434'],
  ['p-cymene', ['99-87-6'], 22.8, 0.01, 2, 'G3', 'E-43'],
  ['caryophyllene', ['87-44-5'], 0.094, 0.01, 2, 'G3', 'A-2225'],
  ['methyl anthranilate', ['134-20-3'], 2790.0, 0.0, 1, 'G1', 'A-2933'],
  ['maltol', ['118-71-8'], 10900.0, 0.0, 1, 'G1', 'D-1325'],
  ['ethyl maltol', ['4940-11-8'], 9350.0, 0.0, 1, 'G1', 'A-247'],
  ['isoamyl acetate', ['123-92-2'], 2000.0, 0.05, 2, 'G3', 'B-734'],
  ['ethyl hexanoate', ['123-66-0'], 644.0, 0.02, 3, 'G5', 'G-659'],
  ['ethyl acetate', ['141-78-6'], 83100.0, 0.02, 3, 'G5', 'A-3163'],
  ['hexanal', ['66-25-1'], 5020.0, 0.03, 2, 'G3', 'E-292'],
  ['octanal', ['124-13-0'], 560.0, 0.0, 1, 'G1', 'B-736'],
  ['nonanal', ['124-19-6'], 101.0, 0.02, 3, 'G5', 'A-1881'],
  ['decanal', ['112-31-2'], 29.4, 0.0, 1, 'G1', 'A-1163'],
  ['anethole', ['4180-23-8'], 111.0, 0.0, 1, 'G1', 'A-3049'],
  ['thymol', ['89-83-8'], 970.0, 0.02, 3, 'G5', 'I-86'],
  ['carvacrol', ['499-75-2'], 1250.0, 0.0, 1, 'G1', 'B-1018'],
  ['camphor', ['464-49-3'], 1600.0, 0.07, 5, 'G5', 'B-205'],
  ['coumarin', ['91-64-5'], 1900.0, 0.64, 3, 'G4', 'A-141'],
  ['alpha-terpineol', ['98-55-5'], 1900.0, 0.01, 2, 'G3', 'C-18'],
  ['terpinen-4-ol', ['562-74-3'], 1770.0, 0.33, 2, 'G3', 'A-1562'],
  ['1,8-cineole', ['470-82-6'], 2810.0, 0.09, 4, 'G5', 'G-56'],
  ['beta-ionone', ['14901-07-6'], 160.0, 0.08, 3, 'G5', 'A-1620'],
  ['raspberry ketone', ['5471-51-2'], 4610.0, 0.0, 1, 'G1', 'A-3713'],
  ['phenethyl alcohol', ['60-12-8'], 20000.0, 0.04, 3, 'G5', 'A-4116'],
  ['cis-3-hexenol', ['928-96-1'], 16400.0, 0.04, 2, 'G3', 'A-4312'],
  ['gamma-nonalactone', ['104-61-0'], 2180.0, 0.0, 1, 'G1', 'A-4186'],
  ['gamma-undecalactone', ['104-67-6'], 158.0, 0.0, 1, 'G1', 'A-4908'],
  ['menthone', ['89-80-5'], 497.0, 0.11, 3, 'G5', 'A-705'],
  ['ethyl cinnamate', ['103-36-6'], 171.0, 0.01, 2, 'G3', 'A-1577'],
  ['quinine', ['130-95-0'], 526.0, 0.0, 1, 'G1', 'I-74'],
];

/** All rows. */
export const waterSolubilities: readonly WaterSolubility[] = packed.map(([name, cas, mgPerL, sd, n, group, id]) => ({ name, cas, mgPerL, sd, n, group, id }));

/** Rule of thumb for oils, mg/L at 25 °C (Fichan, Larroche and Gros, J Chem Eng Data 44, 1999, 56–62, abstract). */
export const thumbRule = { 'terpene hydrocarbons': { low: 5, high: 30 }, 'oxygenated monoterpenes': { low: 300, high: 3100 } } as const;

/**
 * Cosolvents: σ = slope · log Kow + intercept, and the spread of σ. Own regression over 321 solutes on open Abraham solvent
 * coefficients (Chung et al., J Chem Inf Model 62, 2022, 433–446). The coefficients of Li and Yalkowsky 1998 and of Millard 2002
 * could not be read.
 */
export const cosolvents = {
  ethanol: { slope: 0.973, intercept: 0.225, sd: 0.1 },
  'propylene glycol': { slope: 0.845, intercept: -0.048, sd: 0.5 },
  /** Li and Yalkowsky 1998, from memory: the spread is our choice, as wide as that of propylene glycol. */
  glycerol: { slope: 0.35, intercept: 0.26, sd: 0.5 },
} as const;

/** Solvents of the table that mix with oils, by id: common practice, no source. Of what they hold of solids nothing is known. */
export const mixWithOils: readonly string[] = ['mct', 'triacetin', 'triethyl-citrate', 'benzyl-alcohol'];

/**
 * How much water holds of solvents that do not mix with it, mg/L, by id. From memory: triacetin 58 to 70 g/L, triethyl citrate 57 to
 * 65 g/L, benzyl alcohol 35 to 43 g/L; an oil of medium-chain triglycerides next to nothing, under 1 mg/L. log Kow from memory.
 */
export const solventsInWater: Readonly<Record<string, { low: number; high: number; logKow: number }>> = {
  triacetin: { low: 40_000, high: 80_000, logKow: 0.25 },
  'triethyl-citrate': { low: 50_000, high: 75_000, logKow: 0.33 },
  'benzyl-alcohol': { low: 30_000, high: 45_000, logKow: 1.1 },
  mct: { low: 0.01, high: 1, logKow: 5 },
};

/**
 * Free acids of preservatives, which crystallise where there is too much of them: mg/L in water near 20 °C. Sorbic acid 0.15 % at pH 3.1
 * and 0.16 g in 100 mL (Smith and Hong-Shum, Food Additives Data Book; a second page); benzoic acid 0.29 % at 20 °C, 0.34 % at
 * 25 °C: from memory. log Kow 1.33 and 1.87: Syracuse Research, from memory. Check: sorbic acid 0.10 % in 40 % sugar, 0.08 % in
 * 60 %; 0.16 % at 5 % of alcohol, 0.29 % at 20 % (same source).
 */
export const preservativeAcids: Readonly<Record<string, { mgPerL: number; low: number; high: number; logKow: number }>> = {
  'potassium-sorbate': { mgPerL: 1550, low: 1450, high: 1650, logKow: 1.33 },
  'sodium-benzoate': { mgPerL: 2900, low: 2700, high: 3400, logKow: 1.87 },
};

/** Terpene hydrocarbons of the tables: where sources disagree on one of them, the rule of its kind stands in. */
export const terpeneHydrocarbons: readonly string[] = ['138-86-3', '5989-27-5', '80-56-8', '127-91-3', '123-35-3', '99-85-4', '99-87-6'];
