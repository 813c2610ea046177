import type { PlannedMass } from '../../../core/drink/batchPlan';
import { gram } from '../../../core/number/units';
import { rescueList, type Rescue } from '../../../core/drink/weighList';
import type { RunState } from '../../engine/fold';
import { answer } from '../../engine/answers';
import { showsNothing, typedOnScale } from '../../../ui/format';
import type { Begun } from '../plan/begun';
import { fields } from '../plan/fields';
import { massAt, offBy, stepOf, type Pour } from './pour';
import { moreStock } from './stock';

/**
 * A vessel as far as it is filled: `factor` is how many times the plan it has become, and `drink` how many times the drink
 * grows with it. Where they differ, the rest of a concentrate is set aside.
 */
export interface Vessel {
  readonly pours: readonly Pour[];
  readonly factor: number;
  readonly drink: number;
}

/** What can be done about a weighing that went over: make all larger, only the concentrate, or leave it. */
export type Way = 'scale' | 'aside' | 'keep';

/** The way that was chosen; undefined while none was. */
export function wayOf(run: RunState, { key, rescue }: Pick<Pour, 'key' | 'rescue'>): Way | undefined {
  return (rescue && answer(run, fields.over(key))) ?? undefined;
}

/** What was done about a weighing that went over, as the Book tells it. */
const DONE: Readonly<Record<Way, string>> = {
  scale: 'All scaled up to it',
  aside: 'The rest of the concentrate set aside',
  keep: 'Left as it is',
};

/** Weighings that went over, with what the scale was to show and showed, g; one that nothing was chosen for ended with its vessel. */
export function slipsOf(run: RunState, pours: readonly Pour[]): Begun['slips'] {
  return pours.flatMap((pour) => {
    const { id, goods, rescue, target, mass, scale } = pour;
    if (!rescue || !mass) return [];
    const way = wayOf(run, pour);
    return [
      {
        id,
        what: goods.name,
        planned: Number(typedOnScale(target, stepOf(run, scale))),
        counted: mass.value,
        way: way ? DONE[way] : 'The vessel begun again',
      },
    ];
  });
}

/** A vessel, weighing by weighing. Where one went over and all is scaled up to it, more follows of what was in before. */
export function filled<S>(run: RunState, steps: readonly S[], next: (step: S, so: Vessel) => Pour): Vessel {
  let so: Vessel = { pours: [], factor: 1, drink: 1 };
  for (const step of steps) {
    const pour = next(step, so);
    const pours = [...so.pours, pour];
    so = { ...so, pours };
    const way = wayOf(run, pour);
    if (!pour.rescue || (way !== 'scale' && way !== 'aside')) continue;
    const more = pour.rescue.add.filter(({ id, mass }) =>
      pours.some((one) => one.id === id && !isNothing(run, mass, one)),
    );
    const added = more.map(({ id, mass }) => addition(run, pours, { id, mass, cause: pour.id }));
    const { factor } = pour.rescue;
    so = { pours: [...pours, ...added], factor: so.factor * factor, drink: so.drink * (way === 'scale' ? factor : 1) };
  }
  return so;
}

/** True for what the scale shows nothing of. */
function isNothing(run: RunState, grams: number, { scale }: Pour): boolean {
  return showsNothing(grams, stepOf(run, scale));
}

/** The ways out of a weighing that went over, with what was meant to be in the vessel as it stands now; null when it did not. */
export function rescueOf(
  run: RunState,
  pour: Pick<Pour, 'id' | 'mass' | 'target' | 'scale'>,
  so: { planned: readonly PlannedMass[]; pours: readonly Pour[] },
): Rescue | null {
  if (!(offBy(run, pour) > 0)) return null;
  const weighed = [...so.pours, pour].map(({ id, mass }) => ({ id, mass: gram(mass?.value ?? 0) }));
  return rescueList({ steps: so.planned }, weighed);
}

/** More of an earlier one, so that its share comes back. */
function addition(run: RunState, pours: readonly Pour[], add: { id: string; mass: number; cause: string }): Pour {
  const first = pours.find(({ id }) => id === add.id)!;
  const key = `${first.key}.${add.cause}`;
  const mass = massAt(run, key, { of: `${first.goods.name}, more`, scale: first.scale });
  const more = { id: first.id, grams: add.mass, cause: add.cause, isWeighed: mass !== null };
  const stock = first.stock && moreStock(run, pours, { ...more, first: first.stock });
  const target = stock ? (add.mass * first.stock!.share.value) / stock.share.value : add.mass;
  const goods = stock?.goods ?? first.goods;
  return { ...first, key, target, mass, goods, stock, tooSmall: false, again: true, rescue: null };
}
