import { judgeStage, type Stage } from '../../../core/liquid/stage';
import { outcome } from '../../../workshop/attempt';
import { mediumOfDrink, solutesOf } from '../../../workshop/liquidStage';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';
import { drinkOf } from './drinkAsked';
import { recipeOrNull } from './recipe';

/** Whether the formula stays dissolved in a drink of that much alcohol, else in the one that is asked for; null until that is known. */
export function inDrinkOf(run: RunState, abv?: number): Stage | null {
  const recipe = recipeOrNull(run);
  const drink = recipe && outcome(() => drinkOf(run)).value;
  if (!drink) return null;
  const { mgPerKg, densityGPerMl, make } = drink;
  const solutes = recipe.lines.flatMap(({ material, name, share }) =>
    solutesOf(material, name, share * mgPerKg * densityGPerMl),
  );
  return judgeStage(solutes, mediumOfDrink({ abv: abv ?? drink.abv, brix: make.brix, densityGPerMl }));
}

/** Whether the formula stays dissolved in the drink, before anything is known of its concentrate. */
export const dissolving = oncePerRun((run: RunState): Stage | null => inDrinkOf(run));
