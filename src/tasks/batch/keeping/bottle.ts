import { drinkGauge, gasShare, type Closed } from '../../../core/drink/gas';
import { celsius } from '../../../core/number/units';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';
import { asked } from '../plan/asked';
import { drinkOf } from '../plan/drinkAsked';
import { keepAsked } from '../plan/keepAsked';

/** What the drink holds of the gas that water does, and in one sentence why that is not known. Then it counts as water. */
export const gasHeld = oncePerRun((run: RunState): { share: number; problem: string | null } => {
  const drink = outcome(() => drinkOf(run)).value;
  if (!drink) return { share: 1, problem: null };
  const sugarPerL = drink.make.brix * drink.densityGPerMl * 1000; // mL per L
  const { value, problem } = outcome(() => ({ share: gasShare(sugarPerL, drink.abv) }));
  return { share: value?.share ?? 1, problem };
});

/** Bar on the gauge that hold so many volumes in the drink at °C. @throws Refusal beyond what is known of the gas */
export function gaugeIn(run: RunState, volumes: number, atC: number): number {
  return drinkGauge(volumes, gasHeld(run).share, celsius(atC));
}

/** The bottle with the drink in it; null where it is still, or not known. */
export const bottleOf = oncePerRun((run: RunState): Closed | null => {
  const { volumes, gasAt } = asked(run);
  const { headspace, air } = keepAsked(run);
  const [said, atC, head] = [answer(run, volumes) ?? 0, answer(run, gasAt), answer(run, headspace)];
  if (said <= 0 || atC === null || head === null) return null;
  const { share } = gasHeld(run);
  return { volumes: said, atC, headspace: head / 100, hasAir: answer(run, air) !== 'gas', share };
});
