import type { Sourced } from './solvents';

/**
 * Surface tension against air (mN/m) and density (g/mL) at 20 °C, for carrying a drop mass over to another liquid.
 * `viscous`: above about 20 mPa·s (our line), never carried over. Half-widths: what two handbooks differ by, 1 % at least.
 */
export interface SurfaceTensionRow {
  readonly id: string;
  readonly name: string;
  readonly surfaceTension: Sourced;
  readonly density: number; // g/mL
  readonly viscous: boolean;
}

const JASPER = "Lange's Handbook 16th ed. after Jasper, J. Phys. Chem. Ref. Data 1 (1972) 841 (data file)";
const MEMORY = 'typical, not confirmed';

function row(
  [id, name]: readonly [string, string],
  surfaceTension: readonly [value: number, halfWidth: number, source: string, verified: boolean],
  [density, viscous]: readonly [number, boolean],
): SurfaceTensionRow {
  const [value, halfWidth, source, verified] = surfaceTension;
  return { id, name, surfaceTension: { value, halfWidth, source, verified }, density, viscous };
}

export const surfaceTensions: readonly SurfaceTensionRow[] = [
  row(['water', 'water'], [72.74, 0.1, 'Vázquez et al., J. Chem. Eng. Data 40 (1995) 611: 72.75', true], [0.9982, false]),
  row(['ethanol-absolute', 'ethanol, absolute'], [22.39, 0.25, JASPER, true], [0.78924, false]),
  row(['ethanol-96', 'ethanol 96 % vol'], [22.8, 0.5, MEMORY, false], [0.80742, false]),
  row(['isopropanol-99', 'isopropanol'], [21.32, 0.25, JASPER, true], [0.7854, false]),
  row(['propylene-glycol', 'propylene glycol'], [38, 2, `HSDB 40.1 at 25 °C; makers about 36: ${MEMORY}`, false], [1.0361, true]),
  row(['triacetin', 'triacetin'], [36.26, 0.4, JASPER, true], [1.1583, false]),
  row(['glycerol', 'glycerol'], [64, 0.6, 'VDI Heat Atlas, PPDS 11: 64.1', true], [1.2613, true]),
  row(['mct', 'MCT oil'], [29.5, 1, MEMORY, false], [0.947, true]),
  row(
    ['benzyl-alcohol', 'benzyl alcohol'],
    [39.05, 0.7, 'Azizian & Bashavard, J. Chem. Eng. Data 50 (2005) 1303; Jasper-Lange 35.5 is 9 % low', true],
    [1.0452, false],
  ),
  row(['limonene', 'limonene, citrus peel oils'], [27.64, 0.3, JASPER, true], [0.8411, false]),
  row(['alpha-pinene', 'alpha-pinene, turpentine'], [26.46, 0.3, JASPER, true], [0.858, false]),
  row(['p-cymene', 'p-cymene'], [27.08, 0.3, JASPER, true], [0.857, false]),
  row(['carvone', 'carvone'], [34.7, 0.4, JASPER, true], [0.962, false]),
  row(['benzaldehyde', 'benzaldehyde'], [38.54, 0.7, `${JASPER}; VDI 39.2`, true], [1.045, false]),
  row(['methyl-salicylate', 'methyl salicylate'], [39.8, 0.9, `${JASPER}; VDI 40.7`, true], [1.183, false]),
  row(['ethyl-acetate', 'ethyl acetate'], [23.97, 0.25, JASPER, true], [0.9003, false]),
  row(['ethyl-butyrate', 'ethyl butyrate'], [24.46, 0.25, JASPER, true], [0.879, false]),
  row(['isoamyl-acetate', 'isoamyl acetate'], [24.77, 0.25, JASPER, true], [0.871, false]),
];

/**
 * Aroma liquids that no one has looked up, at 20 °C: terpenes and citrus peel oils lie between pinene and cymene with what is dissolved in
 * them, all others between ethyl acetate and methyl salicylate (rows above). mN/m, half of the range; g/mL as typical.
 */
export const aromaTensions = {
  terpene: { value: 27.5, halfWidth: 1.5, density: 0.86 },
  other: { value: 32, halfWidth: 8, density: 0.95 },
} as const;

/** By how much a drop gets lighter with each K near 20 °C, 1/K, with half the range: the fall of the surface tension times 1.068. */
export const lighterPerK = {
  water: { value: 0.0022, halfWidth: 0.0001 }, // Vázquez 1995: 72.75 at 20, 72.01 mN/m at 25 °C
  other: { value: 0.004, halfWidth: 0.001 }, // ethanol 22.39 − 0.0832 (t − 20) (Jasper) 0.0040, Vázquez 0.0047; oils about 0.0035
} as const;
