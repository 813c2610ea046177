/** Formulas as parts by mass of neat material: only the ratios count until they become shares. All of it is arithmetic. */
import type { PlannedMass } from './batchPlan';
import type { FormulaLine } from './concentrate';
import { gram, massFraction, MG_PER_G, type Gram, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/** A line as the person keeps it: parts by mass, any scale, 0 or more. */
export interface PartsLine {
  readonly material: string;
  readonly share: number;
}

/** Shares (g/g) that add to one; lines of one material are put together. @throws Refusal for nothing or negative parts */
export function sharesOf(lines: readonly PartsLine[]): FormulaLine[] {
  const sum = lines.reduce((total, line) => total + line.share, 0);
  if (lines.some(({ share }) => !(share >= 0)) || !(sum > 0 && Number.isFinite(sum)))
    throw new Refusal('a formula needs parts of zero or more, and something in it');
  const merged = new Map<string, number>();
  for (const { material, share } of lines) merged.set(material, (merged.get(material) ?? 0) + share / sum);
  return [...merged].map(([id, share]) => ({ id, share: massFraction(share) }));
}

/** What changed from one version to another, shares g/g, largest change first; what stayed is left out. */
export function differences(
  before: readonly PartsLine[],
  after: readonly PartsLine[],
): { id: string; before: MassFraction; after: MassFraction }[] {
  const [old, now] = [sharesOf(before), sharesOf(after)];
  const share = (lines: readonly FormulaLine[], id: string) =>
    lines.find((line) => line.id === id)?.share ?? massFraction(0);
  return [...new Set([...old, ...now].map(({ id }) => id))]
    .map((id) => ({ id, before: share(old, id), after: share(now, id) }))
    .filter((line) => Math.abs(line.after - line.before) > SAME)
    .sort((one, two) => Math.abs(two.after - two.before) - Math.abs(one.after - one.before));
}
/** Shares closer than this are the same; room for rounding in doubles. */
const SAME = 1e-12;

/**
 * Dose of the whole formula (mg/kg) at which what stayed in it keeps its mg/kg: `dose` was that of the formula before. Null where nothing stayed, or
 * what stayed has other proportions among itself than before (by more than a thousandth). By arithmetic: dose·s(i)/s′(i) for every i that stayed.
 * Check: 40 mg/kg with 2 % swapped for 6 parts in 104 is 41.6 mg/kg.
 */
export function doseHolding(before: readonly PartsLine[], after: readonly PartsLine[], dose: number): number | null {
  const now = sharesOf(after);
  const doses = sharesOf(before).flatMap(({ id, share }) => {
    const there = now.find((line) => line.id === id);
    return there && share > 0 && there.share > 0 ? [(dose * share) / there.share] : [];
  });
  const [least, most] = [Math.min(...doses), Math.max(...doses)];
  return doses.length > 0 && most - least <= 1e-3 * most ? least : null;
}

/**
 * Cost of the formula in a litre of drink, in the currency of the prices (per g), at `mgPerL` of the whole formula; and the
 * materials without a price, which are not in it.
 */
export function costPerLitre(
  lines: readonly PartsLine[],
  mgPerL: number,
  pricePerGram: (material: string) => number | undefined,
): { cost: number; unpriced: string[] } {
  const shares = sharesOf(lines);
  const cost = shares.reduce((sum, { id, share }) => sum + ((share * mgPerL) / MG_PER_G) * (pricePerGram(id) ?? 0), 0);
  return { cost, unpriced: shares.filter(({ id }) => pricePerGram(id) === undefined).map(({ id }) => id) };
}

/** A bottle or vial of stock: g left. */
export interface Stock {
  readonly id: string;
  readonly material: string;
  readonly left: Gram;
}

/** From which bottles a material comes, g each, and how much is missing, g. */
export interface Supply {
  readonly id: string;
  readonly needed: Gram;
  readonly from: readonly { readonly bottle: string; readonly mass: Gram; readonly left: Gram }[];
  readonly missing: Gram;
}

/** Bottles for each planned mass, used up in the order given (oldest first, say); nothing is taken twice. */
export function suppliesFor(needs: readonly PlannedMass[], stock: readonly Stock[]): Supply[] {
  const left = new Map(stock.map((bottle) => [bottle.id, bottle.left as number]));
  return needs.map(({ id, mass }) => {
    let missing: number = mass;
    const from = stock
      .filter((bottle) => bottle.material === id)
      .flatMap((bottle) => {
        const taken = Math.min(missing, left.get(bottle.id)!);
        if (!(taken > 0)) return [];
        missing -= taken;
        left.set(bottle.id, left.get(bottle.id)! - taken);
        return [{ bottle: bottle.id, mass: gram(taken), left: gram(left.get(bottle.id)!) }];
      });
    return { id, needed: mass, from, missing: gram(missing) };
  });
}
