/**
 * What a drop plan is asked and what it answers: shapes only.
 * Masses in mg, strengths and spreads as fractions, drops as whole numbers.
 */

import type { Sentence } from '../text/refusal';

/** One vial on the shelf. */
export interface PlanStock {
  /** Unique in the whole instance. */
  readonly id: string;
  /** g material per g of vial, above 0, at most 1. */
  readonly strength: number;
  /** Mean mass of one drop of this vial, mg. */
  readonly mgPerDrop: number;
  /** Standard deviation of one drop's mass over its mean, fraction, 0 or more. */
  readonly rsd: number;
  /** Drops left in the vial, whole; null: no limit. */
  readonly availableDrops: number | null;
  /** What the material is diluted in; 'none' for neat material. */
  readonly solvent: string;
}

/** One line of the formula: a material and the vials that hold it. */
export interface PlanComponent {
  readonly id: string;
  /** The user's word for it in sentences; the id where there is none. */
  readonly name?: string;
  /** Target mass of neat material, in any unit common to all lines (parts). */
  readonly parts: number;
  readonly stocks: readonly PlanStock[];
}

export interface PlanLimits {
  /** Drops of the whole trial. */
  readonly maxDrops: number;
  /** Drops of every line, all its vials together, 1 or more. */
  readonly minDropsPerComponent: number;
  /** Vials of one line that may be mixed, 1 or 2. */
  readonly maxStocksPerComponent: number;
  /** Mass of the whole trial, mg; null: no limit. */
  readonly maxTotalMassMg: number | null;
  /** Mass of each solvent in the trial, mg: sum of drops · mgPerDrop · (1 − strength). */
  readonly maxSolventMassMg: Readonly<Record<string, number>>;
}

/** mg of neat material per part: free to choose, given by a drink and its ppm, or between two ends. */
export type PlanScale =
  | { readonly kind: 'free' }
  | { readonly kind: 'fixed'; readonly mgPerPart: number }
  | { readonly kind: 'range'; readonly min: number; readonly max: number };

/** What is to be small: the worst line error; z is how many standard deviations of counting count as error (dimensionless). */
export interface PlanObjective {
  readonly kind: 'minimax';
  readonly z: number;
}

export interface PlanInstance {
  readonly id?: string;
  readonly components: readonly PlanComponent[];
  readonly limits: PlanLimits;
  readonly scale: PlanScale;
  readonly objective: PlanObjective;
}

/** Whole drops by stock id; a vial that is not named gives none. */
export type Plan = Readonly<Record<string, number>>;

/** One line of a plan at the best scale. Errors are fractions of the target. */
export interface PlanLine {
  readonly componentId: string;
  readonly stockIds: readonly string[];
  readonly drops: number;
  /** Neat material asked for at this scale, mg. */
  readonly wishMg: number;
  /** Neat material in these drops, mg. */
  readonly trueMg: number;
  /** |rounding| + z · counting: what the objective sees of this line, fraction of the target. */
  readonly error: number;
  /** true / target − 1, signed: what whole drops cost. */
  readonly rounding: number;
  /** One standard deviation of the counted drops' mass, fraction of the target. */
  readonly counting: number;
}

/** A plan and its numbers. */
export interface PlanAnswer {
  readonly ok: true;
  readonly plan: Plan;
  /** Worst line error, fraction. */
  readonly objective: number;
  readonly drops: number;
  /** Best scale of this plan, mg of neat material per part. */
  readonly scaleMgPerPart: number;
  readonly lines: readonly PlanLine[];
}

/** Why there is no plan. */
export interface PlanRefusal {
  readonly ok: false;
  /** The line at fault; null where it is the limits as a whole. */
  readonly componentId: string | null;
  /** One sentence; lines and vials in it by their ids. */
  readonly why: Sentence;
  /** What would make it possible, one sentence. */
  readonly remedy: Sentence;
}

export type PlanResult = PlanAnswer | PlanRefusal;
