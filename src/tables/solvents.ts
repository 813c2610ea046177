/**
 * Solvents of the bench. Every number carries where it was read, and `verified: false` where it was not read anywhere
 * ("typical, not confirmed"). Densities are at 20 °C and 101 kPa, in g/mL; a measured density of the own bottle always wins.
 */

/** A number, half the width of what sources and lots give (rectangular, same unit), where from, and whether it was read there. */
export interface Sourced {
  readonly value: number;
  readonly halfWidth: number;
  readonly source: string;
  readonly verified: boolean;
}

/** How it leaves a paper strip: within minutes, slowly (an hour), or not within a session. */
export type DryOffClass = 'minutes' | 'slow' | 'stays';

/** Which typical drop (table typicalDrops) stands in while nothing is calibrated. */
export type LiquidClass =
  | 'neat oil'
  | 'fatty oil'
  | 'ethanol'
  | 'dilute spirit'
  | 'isopropanol'
  | 'propylene glycol'
  | 'triacetin'
  | 'glycerol'
  | 'water'
  | 'unknown';

export interface Solvent {
  readonly id: string;
  readonly name: string;
  readonly cas: string | null;
  readonly liquid: LiquidClass;
  /** g/mL at 20 °C. */
  readonly density: Sourced;
  /** Cubic expansion 1/K, mean of 15–25 °C. */
  readonly expansionPerK: Sourced;
  /** g of water per g. */
  readonly water: Sourced;
  /** g of ethanol per g; 0 for all but the ethanols. */
  readonly ethanol: Sourced;
  /** True where a food grade is sold; false means smell only, whatever the bottle says. */
  readonly foodGradePossible: boolean;
  readonly grade: string;
  /** True for flash points up to 60 °C. */
  readonly flammable: boolean;
  /** Flash point in °C, closed cup where known; null: none. */
  readonly flashPointC: Sourced | null;
  readonly dryOff: DryOffClass;
  /** Too viscous for drop mass to be carried over from another liquid. */
  readonly viscous: boolean;
}

const R22 = 'OIML R 22 (1975), general formula';
const CRC = 'CRC Handbook, Physical Constants of Organic Compounds (data file)';
const DIPPR = 'DIPPR 105, Perry 8th ed. table 2-32 (data file)';
const IEC = 'IEC 60079-20-1:2010; NFPA 497:2008 within 1 °C';
const MEMORY = 'typical, not confirmed';
const DEFINITION = 'by definition of the grade';

const none: Sourced = { value: 0, halfWidth: 0, source: DEFINITION, verified: true };
const trace = (halfWidth: number): Sourced => ({ value: halfWidth, halfWidth, source: MEMORY, verified: false });
const foodGrade = 'food grade is sold: read the bottle';

export const solvents: readonly Solvent[] = [
  {
    id: 'ethanol-96',
    name: 'ethanol 96 % vol',
    cas: '64-17-5',
    liquid: 'ethanol',
    density: { value: 0.80742, halfWidth: 0.0009, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    expansionPerK: { value: 0.001072, halfWidth: 0.000005, source: R22, verified: true },
    water: { value: 0.06162, halfWidth: 0.005, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    ethanol: { value: 0.93838, halfWidth: 0.005, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    foodGradePossible: true,
    grade: 'only undenatured, of agricultural origin; anything denatured is smell only',
    flammable: true,
    flashPointC: { value: 12.5, halfWidth: 0.5, source: `${IEC}; of absolute ethanol`, verified: true },
    dryOff: 'minutes',
    viscous: false,
  },
  {
    id: 'ethanol-95',
    name: 'ethanol 95 % vol',
    cas: '64-17-5',
    liquid: 'ethanol',
    density: { value: 0.81138, halfWidth: 0.0012, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    expansionPerK: { value: 0.001068, halfWidth: 8e-06, source: R22, verified: true },
    water: { value: 0.07592, halfWidth: 0.005, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    ethanol: { value: 0.92408, halfWidth: 0.005, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    foodGradePossible: true,
    grade: 'only undenatured, of agricultural origin; anything denatured is smell only',
    flammable: true,
    flashPointC: { value: 12.5, halfWidth: 0.5, source: `${IEC}; of absolute ethanol`, verified: true },
    dryOff: 'minutes',
    viscous: false,
  },
  {
    id: 'ethanol-70',
    name: 'ethanol 70 % vol',
    cas: '64-17-5',
    liquid: 'ethanol',
    density: { value: 0.88556, halfWidth: 0.0008, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    expansionPerK: { value: 0.000939, halfWidth: 1e-05, source: R22, verified: true },
    water: { value: 0.37614, halfWidth: 0.0035, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    ethanol: { value: 0.62386, halfWidth: 0.0035, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    foodGradePossible: true,
    grade: 'only undenatured, of agricultural origin; anything denatured is smell only',
    flammable: true,
    flashPointC: { value: 19, halfWidth: 4, source: MEMORY, verified: false },
    dryOff: 'slow',
    viscous: false,
  },
  {
    id: 'ethanol-40',
    name: 'ethanol 40 % vol',
    cas: '64-17-5',
    liquid: 'dilute spirit',
    density: { value: 0.94805, halfWidth: 0.0005, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    expansionPerK: { value: 0.000703, halfWidth: 1.2e-05, source: R22, verified: true },
    water: { value: 0.667, halfWidth: 0.003, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    ethanol: { value: 0.333, halfWidth: 0.003, source: `${R22}; ±0.3 % vol on the label (our choice)`, verified: true },
    foodGradePossible: true,
    grade: 'only undenatured, of agricultural origin; anything denatured is smell only; sugar and flavour make it denser',
    flammable: true,
    flashPointC: { value: 27, halfWidth: 3, source: MEMORY, verified: false },
    dryOff: 'slow',
    viscous: false,
  },
  {
    id: 'ethanol-absolute',
    name: 'ethanol, absolute',
    cas: '64-17-5',
    liquid: 'ethanol',
    density: { value: 0.78924, halfWidth: 0.0006, source: `${R22}; sold as at least 99.8 % vol`, verified: true },
    expansionPerK: { value: 0.001085, halfWidth: 0.000005, source: R22, verified: true },
    water: { value: 0.0017, halfWidth: 0.0017, source: `${R22}; sold as at least 99.8 % vol`, verified: true },
    ethanol: { value: 0.9983, halfWidth: 0.0017, source: `${R22}; sold as at least 99.8 % vol`, verified: true },
    foodGradePossible: true,
    grade: 'only undenatured food grade; lots dried with benzene or cyclohexane are smell only',
    flammable: true,
    flashPointC: { value: 12.5, halfWidth: 0.5, source: IEC, verified: true },
    dryOff: 'minutes',
    viscous: false,
  },
  {
    id: 'ethanol-denatured',
    name: 'ethanol, denatured',
    cas: '64-17-5',
    liquid: 'ethanol',
    density: { value: 0.807, halfWidth: 0.008, source: `${MEMORY}; as 94–99 % vol, the denaturant is unknown`, verified: false },
    expansionPerK: { value: 0.00107, halfWidth: 0.00002, source: `${R22}; of ethanol, the denaturant is unknown`, verified: false },
    water: { value: 0.05, halfWidth: 0.04, source: MEMORY, verified: false },
    ethanol: { value: 0.92, halfWidth: 0.05, source: MEMORY, verified: false },
    foodGradePossible: false,
    grade: 'denatured: smell only, never in a drink',
    flammable: true,
    flashPointC: { value: 12.5, halfWidth: 0.5, source: `${IEC}; of absolute ethanol`, verified: true },
    dryOff: 'minutes',
    viscous: false,
  },
  {
    id: 'isopropanol-99',
    name: 'isopropanol 99 %',
    cas: '67-63-0',
    liquid: 'isopropanol',
    density: {
      value: 0.787,
      halfWidth: 0.002,
      source: `computed: ${CRC} 0.7809 at 25 °C, 0.7854 at 20 °C, with 1 % w/w water, volumes added`,
      verified: true,
    },
    expansionPerK: { value: 0.0011, halfWidth: 0.00005, source: 'PPDS and DIPPR densities at 20 and 25 °C', verified: true },
    water: { value: 0.01, halfWidth: 0.005, source: 'the label; w/w or v/v is seldom stated', verified: false },
    ethanol: none,
    foodGradePossible: false,
    grade: 'smell only here, never in a drink',
    flammable: true,
    flashPointC: { value: 12, halfWidth: 0.5, source: IEC, verified: true },
    dryOff: 'minutes',
    viscous: false,
  },
  {
    id: 'propylene-glycol',
    name: 'propylene glycol',
    cas: '57-55-6',
    liquid: 'propylene glycol',
    density: { value: 1.0361, halfWidth: 0.0005, source: `${CRC} 1.0361; ${DIPPR} 1.0363`, verified: true },
    expansionPerK: { value: 0.00073, halfWidth: 0.00004, source: `${DIPPR}, 20 and 25 °C`, verified: true },
    water: trace(0.001),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 103, halfWidth: 4, source: 'HSDB 99; Wikidata 107', verified: true },
    dryOff: 'stays',
    viscous: true,
  },
  {
    id: 'triacetin',
    name: 'triacetin',
    cas: '102-76-1',
    liquid: 'triacetin',
    density: { value: 1.1583, halfWidth: 0.001, source: CRC, verified: true },
    expansionPerK: { value: 0.00094, halfWidth: 0.0001, source: MEMORY, verified: false },
    water: trace(0.0005),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 136, halfWidth: 2, source: 'DIPPR, evaluated 135.7', verified: true },
    dryOff: 'stays',
    viscous: false,
  },
  {
    id: 'glycerol',
    name: 'glycerol',
    cas: '56-81-5',
    liquid: 'glycerol',
    density: { value: 1.2613, halfWidth: 0.0015, source: `${CRC} 1.2613; PPDS 1.2612; takes up water`, verified: true },
    expansionPerK: { value: 0.000504, halfWidth: 0.00001, source: 'PPDS, 20 and 25 °C', verified: true },
    water: trace(0.0025),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 167, halfWidth: 7, source: 'Wikidata 160; DIPPR 174', verified: true },
    dryOff: 'stays',
    viscous: true,
  },
  {
    id: 'mct',
    name: 'MCT oil (caprylic/capric triglyceride)',
    cas: '73398-61-5',
    liquid: 'fatty oil',
    density: { value: 0.947, halfWidth: 0.007, source: `tricaprylin 0.9540 at 20 °C (${CRC}); commercial 0.94–0.95: ${MEMORY}`, verified: false },
    expansionPerK: { value: 0.00075, halfWidth: 0.00005, source: MEMORY, verified: false },
    water: trace(0.0005),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 200, halfWidth: 0, source: `above 200 °C; ${MEMORY}`, verified: false },
    dryOff: 'stays',
    viscous: true,
  },
  {
    id: 'triethyl-citrate',
    name: 'triethyl citrate',
    cas: '77-93-0',
    liquid: 'triacetin',
    density: { value: 1.1369, halfWidth: 0.0025, source: `${CRC}; trade specifications 1.135–1.139`, verified: true },
    expansionPerK: { value: 0.0009, halfWidth: 0.0003, source: `as of esters; ${MEMORY}`, verified: false },
    water: trace(0.00125),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 152.5, halfWidth: 2.5, source: 'two public data sheets, 150 and 155 °C', verified: true },
    dryOff: 'stays',
    viscous: true,
  },
  {
    id: 'benzyl-alcohol',
    name: 'benzyl alcohol',
    cas: '100-51-6',
    liquid: 'neat oil',
    density: { value: 1.0452, halfWidth: 0.0005, source: 'Azizian & Bashavard, J. Chem. Eng. Data 50 (2005) 1303', verified: true },
    expansionPerK: { value: 0.00072, halfWidth: 0.00002, source: 'Azizian & Bashavard 2005, 20 and 25 °C', verified: true },
    water: trace(0.0005),
    ethanol: none,
    foodGradePossible: true,
    grade: foodGrade,
    flammable: false,
    flashPointC: { value: 97, halfWidth: 4, source: MEMORY, verified: false },
    dryOff: 'stays',
    viscous: false,
  },
  {
    id: 'water',
    name: 'water',
    cas: '7732-18-5',
    liquid: 'water',
    density: { value: 0.998207, halfWidth: 0.000005, source: 'Tanaka et al., Metrologia 38 (2001) 301', verified: true },
    expansionPerK: { value: 0.000207, halfWidth: 0.00005, source: 'Tanaka 2001, at 20 °C; use the water law for other temperatures', verified: true },
    water: { value: 1, halfWidth: 0, source: DEFINITION, verified: true },
    ethanol: none,
    foodGradePossible: true,
    grade: 'drinking water or distilled',
    flammable: false,
    flashPointC: null,
    dryOff: 'slow',
    viscous: false,
  },
];
