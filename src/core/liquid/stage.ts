/**
 * What is asked of one liquid, all of it together: a solvent, a concentrate, a syrup, a drink. One answer for every stage of a batch.
 * An oil appears once Σ c/S reaches 1 over all liquids in it (each saturates at its share of the oil: Raoult; Banerjee, Environ Sci
 * Technol 18, 1984, 587–591), so that eight oils at an eighth each are as much as one. A solid leaves as crystals of its own, and is
 * held against its own solubility alone.
 */
import { solubilityIn, type CosolventShare, type Verdict, type WaterSolubility } from './cosolvency';

/** One thing that is asked of a liquid. A natural oil is several of the same name: its main parts, and the rest. */
export interface Solute {
  readonly name: string;
  readonly mgPerL: number;
  /** mg/L; null where nothing is known of it. */
  readonly water: WaterSolubility | null;
  /** null where it is not known: then what a cosolvent helps lies between that of the least and of the most oily aroma material. */
  readonly logKow: number | null;
  readonly solid: boolean;
  /** How sugar lowers its solubility, where that was measured: log10 S falls by so much per mol/L of sucrose. */
  readonly sugar?: number;
}

/** A liquid without what is asked of it. */
export interface Medium {
  /** Shares of the volume before mixing, mL/mL, of what water is mixed with. */
  readonly cosolvents: readonly CosolventShare[];
  /** Sucrose, mol/L. */
  readonly sucrose: number;
  /** g of ethanol per g of the whole liquid, solutes included. */
  readonly ethanol: number;
  /** Shares of the volume, mL/mL: of solvents that mix with oils, and of those of which nothing is known. */
  readonly oily: number;
  readonly unknown: number;
}

/** What a liquid holds of something, mg/L; Infinity where the two mix. */
export interface Held {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** One thing that is asked of a liquid, and the answer as if it were alone. */
export interface StageLine {
  readonly name: string;
  readonly mgPerL: number;
  /** null where it is not known. */
  readonly holds: Held | null;
  readonly verdict: Verdict;
}

/** The answer for a liquid. */
export interface Stage {
  readonly verdict: Verdict;
  /** What is asked over what the liquid holds: 1 is all that dissolves. What is not known is not in it. */
  readonly fullness: Held;
  readonly lines: readonly StageLine[];
  /** Names of what nothing is known of. */
  readonly unknown: readonly string[];
}

/** log Kow of the least and of the most oily aroma materials that are liquid. Our choice: from maltol (0.1) to pinene (4.8). */
const ANY_KOW = [0, 5] as const;

/**
 * From this share of ethanol by mass on, limonene, ethanol and water are one liquid whatever their shares. Source: Gironi, Lamberti and
 * Gonzalez Farias, J Chem Eng Data 40, 1995, 578–581 (abstract): limonene about 0.73, citral about 0.45, at 20 °C.
 */
export const MIXES_WITH_TERPENES = 0.73;

/**
 * How sugar lowers a solubility: log10 S falls by this per mol/L of sucrose. Source: sorbic acid at 20 °C, 0.15 % in water and in 10 %
 * sugar, 0.10 % in 40 %, 0.08 % in 60 % (Smith and Hong-Shum, Food Additives Data Book): 0.12 to 0.13. Where it was measured a quarter
 * is doubted; of aroma materials it is between none and twice that (our choice: no source).
 */
export const SUGAR = 0.12;

/** From this share of the volume on a solvent decides what the liquid holds. Our choice. */
const DECIDES = 0.5;

/** What the liquid holds of a solute, mg/L; null where it is not known. Source: as {@link judgeStage}. @throws Refusal for impossible shares */
export function heldIn(solute: Solute, medium: Medium): Held | null {
  if (!solute.solid && (medium.oily >= DECIDES || medium.ethanol >= MIXES_WITH_TERPENES))
    return { low: Infinity, middle: Infinity, high: Infinity };
  if (solute.water === null || medium.unknown + medium.oily >= DECIDES) return null;
  const kows = solute.logKow === null ? ANY_KOW : [solute.logKow];
  const each = kows.map((kow) => solubilityIn(solute.water!, kow, medium.cosolvents));
  const [least, most] = solute.sugar === undefined ? [0, 2 * SUGAR] : [0.75 * solute.sugar, 1.25 * solute.sugar];
  const sugar = (perMolar: number) => 10 ** (-perMolar * medium.sucrose);
  const low = Math.min(...each.map((one) => one.low)) * sugar(most);
  const high = Math.max(...each.map((one) => one.high)) * sugar(least);
  const middle = Math.sqrt(each[0]!.mgPerL * each.at(-1)!.mgPerL) * sugar((least + most) / 2);
  return { low, middle, high };
}

/**
 * The answer for a liquid, amounts in mg/L of it. Dissolves: even the least that it may hold is not reached. Stays cloudy: more than the
 * most that it may hold. Else it must be tried; so must what nothing is known of. Source: as at the head of this file, and as
 * {@link solubilityIn}. @throws Refusal for shares of the volume below 0 or above the whole
 */
export function judgeStage(solutes: readonly Solute[], medium: Medium): Stage {
  const asked = solutes.filter(({ mgPerL }) => mgPerL > 0);
  const held = asked.map((solute) => ({ solute, holds: heldIn(solute, medium) }));
  const names = [...new Set(asked.map(({ name }) => name))];
  const lines = names.map((name) =>
    lineOf(
      name,
      held.filter(({ solute }) => solute.name === name),
    ),
  );
  const fullness = fullnessOf(held);
  const unknown = lines.filter(({ holds }) => holds === null).map(({ name }) => name);
  const known = verdictOf(fullness);
  return { verdict: known === 'dissolves' && unknown.length > 0 ? 'try it' : known, fullness, lines, unknown };
}

type HeldSolute = { readonly solute: Solute; readonly holds: Held | null };

/** Liquids add up; of the solids the one that is nearest to its limit counts. */
function fullnessOf(held: readonly HeldSolute[]): Held {
  const known = held.flatMap(({ solute, holds }) => (holds ? [{ solute, holds }] : []));
  const at = (of: keyof Held) => {
    const filled = known.map(({ solute, holds }) => ({ solid: solute.solid, share: solute.mgPerL / holds[of] }));
    const oil = filled.reduce((sum, { solid, share }) => sum + (solid ? 0 : share), 0);
    return Math.max(oil, ...filled.filter(({ solid }) => solid).map(({ share }) => share));
  };
  return { low: at('high'), middle: at('middle'), high: at('low') };
}

function lineOf(name: string, parts: readonly HeldSolute[]): StageLine {
  const mgPerL = parts.reduce((sum, { solute }) => sum + solute.mgPerL, 0);
  if (parts.some(({ holds }) => holds === null)) return { name, mgPerL, holds: null, verdict: 'try it' };
  const full = fullnessOf(parts);
  const holds = { low: mgPerL / full.high, middle: mgPerL / full.middle, high: mgPerL / full.low };
  return { name, mgPerL, holds, verdict: verdictOf(full) };
}

/** Room for rounding in doubles. */
const JUST = 1 + 1e-9;

function verdictOf({ low, high }: Held): Verdict {
  if (high <= JUST) return 'dissolves';
  return low > JUST ? 'stays cloudy' : 'try it';
}
