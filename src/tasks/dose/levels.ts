import { isConfirmed } from '../../core/limits/figure';
import { attempt, outcome, Refused } from '../../workshop/attempt';
import { formerMaximum, likedLevels } from '../../workshop/usualLevels';
import { find } from '../../records/shelf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { asked } from './asked';
import type { Levels } from './DoseBar';
import { countOf, dropsOf, glassOf, reachedBy, targetOf, type Glass } from './glass';
import { judgedNow, judgeGlass } from './parts';

/** Where dose i is, for the bar: now, liked before, the first limit beside the other doses, the former maximum, the target. */
export function levelsOf(run: RunState, glass: Glass, i: number): Levels {
  const { vial } = glass.dosings.at(-1)!;
  const only = vial.contents.length === 1 ? vial.contents[0]!.material : undefined;
  return {
    now: reachedBy(vial, glass.dose).mgPerKg.value,
    liked: likedLevels(vial.contents.map(({ material }) => material)),
    limit: limitOf(run, i),
    former: only === undefined ? null : formerMaximum(find('material', only)?.cas),
    target: wantedLevel(run, i),
  };
}

/** The level that is wanted: as asked for, or what the drops that were asked for come to. */
function wantedLevel(run: RunState, i: number): number | null {
  const dose = asked(run).doses[i - 1];
  if (dose && answer(run, dose.aimIn) === 'mg/kg') {
    const level = answer(run, dose.aim);
    if (level !== null) return level;
  }
  return outcome(() => targetOf(run, i)).value?.mgPerKg ?? null;
}

/** The lowest maximum of dose i in mg/kg of what its vial holds; looked up at one drop where none has fallen yet. */
function limitOf(run: RunState, i: number): Levels['limit'] {
  const drops = dropsOf(run, i);
  const glass = attempt(() => (drops > 0 ? glassOf(run, i) : glassOf(run, i, 1)));
  const before = attempt(() => glassOf(run, i, 0));
  if (!glass || !before || glass instanceof Refused || before instanceof Refused) return null;
  const isAlone = drops > 0 && countOf(run) === 1;
  const lowest = (isAlone ? judgedNow(run) : judgeGlass(run, glass, i))?.ceilings[0];
  if (!lowest) return null;
  const { vial } = glass.dosings.at(-1)!;
  const [then, fixed] = [glass, before].map(({ dose }) => reachedBy(vial, dose).mgPerKg.value) as [number, number];
  const { finding } = lowest;
  const sure = finding.figure !== null && isConfirmed(finding.figure);
  return { mgPerKg: fixed + lowest.times * (then - fixed), of: finding.what, sure };
}
