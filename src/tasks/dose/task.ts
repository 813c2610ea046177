import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { fields, named } from './fields';
import { exactlyAs, isExact } from './exactly';
import { spoiltBy, spoiltStep } from './fit';
import { countOf, dropperOf, glassOf, vialOf } from './glass';
import { happenedIn, keepDose } from './keep';
import { isLadder } from './ladder';
import { ladderSteps } from './ladderSteps';
import { drawLiking, likingTold } from './Liking';
import { limitsStep } from './limitsStep';
import { outcome } from '../../workshop/attempt';
import { aimStep, doseStep, drinkSteps, glassStep, vialStep } from './steps';
import { tagOf } from '../../workshop/thing/labelled';

/** The drops of then into the drink of then; null where that is not asked, or not all of it is known. */
function stepsAgain(run: RunState): Step[] | null {
  if (!isExact(run) || !outcome(() => glassOf(run, countOf(run))).value) return null;
  return Array.from({ length: countOf(run) }, (_, k) => [doseStep(run, k + 1), glassStep(run, k + 1)]).flat();
}

/** From the vials to the glass. */
function dosingSteps(run: RunState): Step[] {
  const all: Step[] = [];
  for (let i = 1; i <= countOf(run); i++) {
    all.push(vialStep(run, i));
    if (!vialOf(run, i)) return all.some(({ key }) => key === run.at) || run.at === '' ? all : [all.at(-1)!];
    all.push({
      key: named('dropper', i),
      say: 'Which dropper is in it?',
      ask: [fields.dropper(i, i > 1 ? dropperOf(run, i - 1) : '')],
    });
    if (i === 1) all.push(...drinkSteps(run));
    if (dropperOf(run, i) !== 'scale') all.push(aimStep(run, i));
    if (isLadder(run)) return [...all, ...ladderSteps(run)];
    all.push(doseStep(run, i), glassStep(run, i));
  }
  return [...all, ...lastSteps(run)];
}

function lastSteps(run: RunState): Step[] {
  const { value: glass } = outcome(() => glassOf(run, countOf(run)));
  return [
    limitsStep(run, glass, 'Read this before you drink more than a sip.'),
    {
      key: 'verdict',
      say: 'How is it?',
      ask: [fields.verdict],
      draw: drawLiking('liking'),
      told: likingTold(run, 'liking'),
      done: 'Keep',
    },
  ];
}

function steps(run: RunState): Step[] {
  const spoilt = spoiltBy(run);
  if (spoilt) return [spoiltStep(run, spoilt)];
  const again = stepsAgain(run);
  return again ? [...again, ...lastSteps(run)] : dosingSteps(run);
}

function title(run: RunState): string {
  const vials = Array.from({ length: countOf(run) }, (_, k) => vialOf(run, k + 1) ?? []).flat();
  return vials.length > 0 ? `Dose · ${vials.map(tagOf).join(' + ')}` : 'Dose a drink';
}

/** What a repeat begins with. */
const repeats = [
  'vial',
  'vial.',
  'dropper',
  'dropper.',
  'base',
  'base.',
  'aim',
  'aim.',
  'more.',
  'readability',
  'mode',
  'lowest',
  'glasses',
  'factor',
  'ownFactor',
  'blind',
  'jurisdiction',
  'portion',
  'body',
];

/** Drops of a vial into a glass, or a ladder of glasses, with the mg/kg live, until it tastes right. */
export const dose: Task = {
  id: 'dose',
  recorded: true,
  title,
  steps,
  keep: keepDose,
  done: happenedIn,
  repeats,
  repeat: exactlyAs,
};
