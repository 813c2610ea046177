/** A value with the id of its source (catalogue/sources.ts). */
export type Cited<T> = readonly [value: T, source: string];

/** A published threshold of smelling: a range, never one number to dose by. */
export type ThresholdRow = readonly [medium: string, kind: string, low: number, high: number, unit: string, source: string];

/** One material of the catalogue, packed. What is missing was not found, or sources disagree. */
export interface CatalogueRow {
  readonly id: string;
  readonly name: string;
  /** Chemical class, or for naturals: citrus oil, slow oil (ages slowly), oil. */
  readonly family: string;
  /** Other names. */
  readonly also?: readonly string[];
  readonly botanical?: string;
  readonly part?: string;
  readonly cas?: Cited<string>;
  readonly fema?: Cited<string>;
  /** At 20 °C, null where it is not sure, with the words why. */
  readonly form: readonly [form: 'liquid' | 'viscous' | 'solid' | null, words: string];
  /** g/mL and half the width of what sources or lots give, at °C. Not for solids: their density is of no use for drops. */
  readonly density?: readonly [gPerMl: number, halfWidth: number, atC: number, source: string, words: string];
  /** °C. */
  readonly melts?: Cited<number>;
  /** °C, at atmospheric pressure. */
  readonly boils?: Cited<number>;
  /** Flash point, °C. */
  readonly flash?: Cited<number>;
  /** Water solubility near room temperature, mg/L. */
  readonly water?: Cited<number>;
  /** Single words that stand in two or more sets, and those sets. */
  readonly smells?: readonly string[];
  readonly smellsBy?: readonly string[];
  readonly thresholds?: readonly ThresholdRow[];
  readonly cramer?: readonly [cramerClass: string, source: string, year: string];
  /** The Union list as consolidated 2019-05-21 (source I-EU1334): FL number, limits for drinks, purity, whether it has a footnote. */
  readonly eu?: readonly [fl: string, limits: string, purity: string, footnote: boolean];
  /** Sections of 21 CFR by the FDA inventory (source I-FDA26). */
  readonly us?: readonly string[];
  /** Codes of tables/cautions.ts. */
  readonly care?: readonly string[];
  readonly notes?: readonly string[];
}
