import { find, list } from '../../records/shelf';
import { formatPlain } from '../../ui/format';
import { tagOf } from '../../workshop/thing/labelled';
import { answer } from '../engine/answers';
import { freshRun, type RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { asked } from './asked';
import { glassStep, noVial } from './card';
import { dosedAgain } from './again';
import { spoiltBy, spoiltStep } from './fit';
import { countOf, vialOf } from './glass';
import { remembers } from './fields';
import { happenedIn, keepDose } from './keep';
import { isSeries } from './series';
import { seriesSteps } from './seriesSteps';

function steps(run: RunState): Step[] {
  const spoilt = spoiltBy(run);
  if (spoilt) return [spoiltStep(run, spoilt)];
  if (list('vial').length === 0) return [noVial];
  if (isSeries(run)) return seriesSteps(run);
  const glasses: Step[] = [];
  for (let i = 1; i <= countOf(run); i++) {
    glasses.push(glassStep(run, i));
    if (!vialOf(run, i)) break;
  }
  return glasses;
}

function title(run: RunState): string {
  const vials = Array.from({ length: countOf(run) }, (_, k) => vialOf(run, k + 1) ?? []).flat();
  return vials.length > 0 ? `Dose · ${vials.map(tagOf).join(' + ')}` : 'Dose a drink';
}

/** What a repeat begins with. */
const repeats = [
  ...['vial', 'vial.', 'dropper', 'dropper.', 'base', 'base.', 'aim', 'aim.', 'more.', 'readability', 'mode'],
  ...['lowest', 'glasses', 'factor', 'ownFactor', 'blank', 'blind', 'jurisdiction', 'portion', 'body'],
];

/** Drops of a vial into a glass, or a series of glasses, with the mg/kg in sight, until it tastes right. */
export const dose: Task = {
  id: 'dose',
  recorded: true,
  title,
  opening() {
    const { base, volume } = asked(freshRun);
    const [drink, ml] = [find('base', answer(freshRun, base)), answer(freshRun, volume)];
    return drink && ml !== null && list('vial').length > 0 ? `${drink.name}, ${formatPlain(ml, 3)} mL` : undefined;
  },
  steps,
  keep: keepDose,
  done: happenedIn,
  remembers,
  repeats,
  repeat: dosedAgain,
};
