import { isConfirmed } from '../../core/limits/figure';
import { attempt, Refused } from '../../workshop/attempt';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Levels } from './DoseBar';
import { fields } from './fields';
import { dropsOf, glassOf, reachedBy, type Glass } from './glass';
import { judgeGlass } from './parts';
import { formerMaximum, likedLevels } from '../../workshop/usualLevels';
import { find } from '../../records/shelf';

/** Where dose i stands, for the bar: now, liked before, the ceiling beside the other doses, the former maximum, the target. */
export function levelsOf(run: RunState, glass: Glass, i: number): Levels {
  const { vial } = glass.dosings.at(-1)!;
  const only = vial.contents.length === 1 ? vial.contents[0]!.material : undefined;
  return {
    now: reachedBy(vial, glass.dose).mgPerKg.value,
    liked: only === undefined ? null : likedLevels(only),
    ceiling: ceilingOf(run, i),
    former: only === undefined ? null : formerMaximum(find('material', only)?.cas),
    target: valueOf(run, fields.aim(i)),
  };
}

/** The lowest maximum of dose i in mg/kg of what its vial holds; looked up at one drop where none has fallen yet. */
function ceilingOf(run: RunState, i: number): Levels['ceiling'] {
  const glass = attempt(() => glassOf(run, i, Math.max(1, dropsOf(run, i))));
  const before = attempt(() => glassOf(run, i, 0));
  if (!glass || !before || glass instanceof Refused || before instanceof Refused) return null;
  const lowest = judgeGlass(run, glass, i)?.ceilings[0];
  if (!lowest) return null;
  const { vial } = glass.dosings.at(-1)!;
  const [then, fixed] = [glass, before].map(({ dose }) => reachedBy(vial, dose).mgPerKg.value) as [number, number];
  const { finding } = lowest;
  const sure = finding.figure !== null && isConfirmed(finding.figure);
  return { mgPerKg: fixed + lowest.times * (then - fixed), of: finding.what, sure };
}
