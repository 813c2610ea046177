import {
  solubilityIn,
  willDissolve,
  worstVerdict,
  type Verdict,
  type WaterSolubility,
} from '../../../core/liquid/cosolvency';
import { find } from '../../../records/shelf';
import { logKow } from '../../../tables/partition';
import { cosolvents } from '../../../tables/solubility';
import { inWater } from '../../../workshop/inWater';
import { formatPlain } from '../../../ui/format';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';
import { outcome } from '../../../workshop/attempt';
import { drinkOf, type DrinkAsked } from './drinkAsked';
import { recipeOrNull, type RecipeLine } from './recipe';

/** Whether one material stays dissolved in the drink, and how that is known. */
export interface Dissolving {
  readonly name: string;
  readonly mgPerL: number;
  readonly holds: WaterSolubility | null;
  readonly verdict: Verdict;
  readonly words: string;
}

/** Whether the formula stays dissolved in the drink; null until the drink is known. */
export const dissolving = oncePerRun((run: RunState): { lines: readonly Dissolving[]; verdict: Verdict } | null => {
  const recipe = recipeOrNull(run);
  const drink = recipe && outcome(() => drinkOf(run)).value;
  if (!drink) return null;
  const lines = recipe.lines.map((line) => oneOf(line, drink));
  return { lines, verdict: worstVerdict(lines.map(({ verdict }) => verdict)) };
});

function oneOf(line: RecipeLine, drink: DrinkAsked): Dissolving {
  const mgPerL = line.share * drink.mgPerKg * drink.densityGPerMl;
  const material = find('material', line.material);
  const water = inWater(material?.cas ?? '', material);
  const { name } = line;
  if (!water) return { name, mgPerL, holds: null, verdict: 'try it', words: 'nothing is known of it' };
  const kow = logKow[material?.cas ?? ''];
  const holds =
    drink.abv > 0 && kow !== undefined
      ? solubilityIn(water, kow, [{ fraction: drink.abv / 100, ...cosolvents.ethanol }])
      : water;
  const isHelpUnknown = drink.abv > 0 && kow === undefined;
  const words = isHelpUnknown ? `${holds.basis}; what the alcohol helps is not counted` : holds.basis;
  return { name, mgPerL, holds, verdict: willDissolve(mgPerL, holds), words };
}

/** One material in words. */
export function dissolvingText({ name, mgPerL, holds, verdict, words }: Dissolving): string {
  const asked = `${name}: ‹${formatPlain(mgPerL, 2)} mg/L› needed`;
  if (!holds) return `${asked}; ${words}: try it.`;
  return `${asked}, water holds ${formatPlain(holds.low, 1)} to ${formatPlain(holds.high, 1)} (${words}): ‹${verdict}›.`;
}
