import type { BatchPlan } from '../../../core/drink/batchPlan';
import type { Emulsion } from '../../../core/drink/emulsion';
import type { DrinkAsked } from './drinkAsked';
import type { Goods, Planned } from './goods';
import type { Recipe } from './recipe';

/** The whole batch as planned. Every gram of the drink stands in exactly one line of concentrate, syrup or water. */
export interface Plan {
  readonly recipe: Recipe;
  readonly drink: DrinkAsked;
  readonly gramsPerL: number;
  /** Neat formula and goods of the concentrate; the last fills it up. */
  readonly concentrate: readonly Planned[];
  readonly emulsion: Emulsion | null;
  /** Everything of the syrup but the concentrate, in the order it goes in; the concentrate comes last. */
  readonly syrup: readonly Planned[];
  /** Ingredients that go into the drink after the syrup and its water. */
  readonly late: readonly Planned[];
  /** Water the syrup is thrown with, g; 0 when the drink is mixed at once. */
  readonly water: number;
  readonly batch: BatchPlan;
}

/** What the drink is made of beside the concentrate; null until it is known. */
export interface Basis {
  readonly recipe: Recipe;
  readonly drink: DrinkAsked;
  readonly materials: readonly Goods[];
  readonly gramsPerL: number;
  /** Goods to weigh of each material, g, for `factor` times the drink. */
  readonly lines: readonly Planned[];
  /** mL of drink, factor included. */
  readonly ml: number;
}
