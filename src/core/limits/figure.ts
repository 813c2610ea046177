/**
 * Published figures that decide what may go in a drink, as rows. Core computes with them, src/tables holds them.
 * Amounts: mg/kg or mg/L of finished drink, mg per kg body weight and day, µg per person and day. CAS numbers as printed.
 */

import type { PlantRow } from './plant';

/** Whose rule it is. */
export type Jurisdiction = 'EU' | 'US';

/**
 * How far a figure was confirmed. primary: read in the rule itself; secondary: read in a page or data set that quotes the
 * rule in force; replaced: read only in the rule that the present one replaced; proposal: read only in its proposal;
 * memory: not read. Only the first two can make a result green.
 */
export type Level = 'primary' | 'secondary' | 'replaced' | 'proposal' | 'memory';

/** Where a figure comes from: `asOf` is the year or date of the text that was read, '' when it gives none. */
export interface Figure {
  readonly source: string;
  readonly asOf: string;
  readonly level: Level;
  readonly note?: string;
}

/** What a rule may ask about a drink beside alcohol. */
export type Trait =
  | 'cloudy'
  | 'carbonated'
  | 'mint'
  | 'from Artemisia'
  | 'citrus oil'
  | 'cola'
  | 'bitter'
  | 'liqueur'
  | 'cider'
  | 'no added sugar';

/** Not to be added: matches a material's own CAS numbers or its plant, never a natural constituent. */
export interface BanRow extends Figure, PlantRow {
  readonly jurisdiction: Jurisdiction;
  readonly what: string;
  readonly cas: readonly string[];
  readonly rule: string;
  /** May be added all the same in such drinks. */
  readonly unless?: 'alcoholic';
}

/** A highest amount, or with effect 'label' an amount from which words on the label are due. */
export interface LimitRow extends Figure {
  readonly jurisdiction: Jurisdiction;
  readonly what: string;
  /** All of these are added up. */
  readonly cas: readonly string[];
  /** Only what comes from materials with one of these numbers or of these plants counts; from all when not named. */
  readonly via?: readonly string[];
  readonly viaPlants?: readonly string[];
  readonly max: number;
  readonly unit: 'mg/kg' | 'mg/L';
  readonly effect: 'limit' | 'label';
  readonly drink: 'any' | 'alcoholic' | 'non-alcoholic';
  readonly where?: Trait;
  /** The row does not count in such a drink: another one does. */
  readonly whereNot?: Trait;
  /** The row counts only in drinks below this % v/v. */
  readonly abvBelow?: number;
  /** The row counts only when one of each of these groups is in the drink. */
  readonly onlyWith?: readonly (readonly string[])[];
  /** In drinks the row does not name: nothing said, ask, or not allowed. */
  readonly outside: 'silent' | 'ask' | 'not allowed';
  /** Grams counted per gram of that CAS (a salt counted as its acid); 1 when not named. */
  readonly as?: Readonly<Record<string, number>>;
}

/** A daily intake. `max` null: the body gave no number because there is no safe level. */
export interface IntakeRow extends Figure {
  readonly body: string;
  readonly what: string;
  /** A group: all of these are added up. */
  readonly cas: readonly string[];
  readonly max: number | null;
  readonly per: 'kg bw' | 'person'; // mg per kg body weight and day, or mg per person and day
  readonly as?: Readonly<Record<string, number>>;
}

/** Cramer class of structural concern; III is the strictest. */
export type CramerClass = 'I' | 'II' | 'III';

/** Threshold of toxicological concern of one class, µg per person and day. */
export interface ConcernRow extends Figure {
  readonly cramerClass: CramerClass;
  readonly microgramPerPersonDay: number;
}

/**
 * True when a figure was read in the rule in force, or in a page or data set that quotes it: by definition of {@link Level}.
 */
export function isConfirmed(figure: { level: Level }): boolean {
  return figure.level === 'primary' || figure.level === 'secondary';
}
