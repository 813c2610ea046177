import type { DropCalibration, Reading } from '../../core/drop/drop';
import { outliers, readingsStillWorth, type ReadingsAdvice } from '../../core/drop/dropAdvice';
import { checkWaterDropper } from '../../core/drop/dropperStandard';
import { combineCalibrations } from '../../core/drop/dropHistory';
import { celsius } from '../../core/number/units';
import type { AnyRecord } from '../../records/kind/kinds';
import { find, newId, newRecord } from '../../records/shelf';
import { formatPlain } from '../../ui/format';
import { sentenceWords } from '../../ui/sentence';
import { Scatter } from '../../ui/plot/Scatter';
import { readingsPicture } from '../../workshop/dropPictures';
import { dropsText } from '../../workshop/dropWords';
import { answer, ask, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import {
  calibrated,
  droppers,
  earlier,
  fields,
  liquids,
  nameOf,
  readingsOf,
  resultOf,
  volumeResult,
  WANTED,
  weighingAdvice,
} from './readings';

type Key = 'dropper' | 'new-dropper' | 'liquid' | 'scale' | `reading.${number}` | `so-far.${number}`;

const AS_BEFORE = 0.0005; // our choice: less than 0.05 % is called the same
const FLAMES = 'Oils and alcohol burn: no flame near, open a window.';

/** What the readings so far say, and whether another one is worth the while. */
function verdictStep(run: RunState, i: number): Step<Key> {
  const readings = readingsOf(run).slice(0, i);
  const calibration = calibrated(run, readings, 'this')!;
  const readabilityG = answer(run, fields.readability)!;
  const advice = readingsStillWorth(calibration, { readabilityG }, WANTED);
  const more = answer(run, fields.more(i)) ?? (advice.enough ? 'no' : 'yes');
  const odd = outliers(readings).map(
    ({ index }) =>
      `Reading ${index + 1} lies far from the others. Nothing is left out: look at it, weigh again, decide.`,
  );
  return {
    key: `so-far.${i}`,
    say: advice.enough ? 'That is enough.' : 'Weigh again.',
    more: [
      adviceText(advice, readings.at(-1)!.drops),
      ...odd,
      ...drift(run, calibration),
      ...waterCheck(run, readings),
    ],
    draw: () => <Scatter {...readingsPicture(readings, calibration.mgPerDrop)} />,
    results: [resultOf(calibration, readings), ...[volumeResult(run, calibration)].filter((one) => one !== null)],
    done: more === 'yes' ? 'Weigh again' : 'Keep',
    offers: [
      more === 'yes'
        ? { words: 'Keep it as it is', type: types(fields.more(i), 'no'), leave: true }
        : { words: 'Weigh once more', type: types(fields.more(i), 'yes'), leave: true },
    ],
  };
}

function adviceText({ enough, relative, moreReadings, dropsPerReading }: ReadingsAdvice, drops: number): string {
  const reached = Number.isFinite(relative)
    ? `The drop is known to ± ${formatPlain(relative * 100, 2)} % of it.`
    : 'The scatter is not seen yet.';
  if (enough) return `${reached} More readings would change little.`;
  if (moreReadings === null || dropsPerReading > drops)
    return `${reached} The step of the scale stands in the way of ± ${WANTED * 100} %: let at least ${dropsPerReading} drops fall each time.`;
  return `${reached} About ${moreReadings} more ${moreReadings === 1 ? 'reading brings' : 'readings bring'} it to ± ${WANTED * 100} %.`;
}

/** Whether the drop is still what it was: against the calibrations from before. */
function drift(run: RunState, calibration: DropCalibration): string[] {
  const before = earlier(run).map((one) => one.mgPerDrop);
  if (before.length === 0) return [];
  const { change, drifted } = combineCalibrations([...before, calibration.mgPerDrop], 'this');
  const by = `${formatPlain(Math.abs(change!) * 100, 2)} %`;
  const now = change! < 0 ? `The drop is ${by} lighter than before` : `The drop is ${by} heavier than before`;
  if (drifted)
    return [`${now}, more than chance allows: the tip may be worn or fouled. This calibration counts from now on.`];
  return Math.abs(change!) < AS_BEFORE
    ? ['The drop weighs what it weighed before: old and new readings count together.']
    : [`${now}, no more than chance allows: old and new readings count together.`];
}

/** Water checks itself against the dropper of the pharmacopoeias. */
function waterCheck(run: RunState, readings: readonly Reading[]): string[] {
  if (answer(run, fields.liquid) !== 'water') return [];
  const { phEur, usp } = checkWaterDropper(readings, celsius(answer(run, fields.temperature) ?? 20));
  return [phEur.why, usp.why].map((why) => sentenceWords(why));
}

function readingSteps(run: RunState): Step<Key>[] {
  const steps: Step<Key>[] = [];
  const advice = weighingAdvice(run);
  for (let i = 1; ; i++) {
    const drops = ask(fields.drops(i), { preset: String(advice.drops) });
    steps.push({
      key: `reading.${i}`,
      say: `Tare the scale. Let ‹${dropsText(answer(run, drops) ?? advice.drops)}› fall, one a second.`,
      more: [`Reading ${i}. ${i === 1 ? advice.words : ''}`, 'Hold the dropper upright, as you will when you work.'],
      ask: [drops, fields.mass(i)],
    });
    if (readingsOf(run).length < i) return steps;
    const verdict = verdictStep(run, i);
    steps.push(verdict);
    if (verdict.done === 'Keep') return steps;
  }
}

function steps(run: RunState): Step<Key>[] {
  const named: Step<Key> = {
    key: 'new-dropper',
    say: 'Name the dropper, and write the name on it.',
    ask: [fields.newName, fields.newTip, fields.outlet],
  };
  return [
    { key: 'dropper', say: 'Which dropper?', ask: [ask(fields.dropper, { options: droppers() })] },
    ...(answer(run, fields.dropper) === 'new' ? [named] : []),
    { key: 'liquid', say: 'Which liquid is in it?', ask: [ask(fields.liquid, { options: liquids() })] },
    {
      key: 'scale',
      say: 'Which scale?',
      more: ['Put a small vial on it.'],
      ask: [fields.readability, fields.temperature],
      cautions: [FLAMES],
    },
    ...readingSteps(run),
  ];
}

function keep(run: RunState): AnyRecord[] {
  const walked = readingSteps(run).filter(({ key }) => key.startsWith('reading.')).length;
  const readings = readingsOf(run).slice(0, walked);
  const id = newId();
  const { mgPerDrop, perDropSpread } = calibrated(run, readings, `calibration:${id}`)!;
  const old = find('dropper', answer(run, fields.dropper));
  const dropper =
    old ??
    newRecord('dropper', {
      name: answer(run, fields.newName)!,
      tip: answer(run, fields.newTip)!,
      outlet: answer(run, fields.outlet)!,
    });
  const temperatureC = answer(run, fields.temperature);
  const calibration = newRecord('calibration', {
    id,
    from: [dropper.id],
    dropper: dropper.id,
    liquid: { id: answer(run, fields.liquid)!, name: nameOf(run).liquid },
    readings,
    readabilityG: answer(run, fields.readability)!,
    ...(temperatureC === null ? {} : { temperatureC }),
    mgPerDrop,
    spread: perDropSpread,
  });
  return old ? [calibration] : [calibration, dropper];
}

/** Weigh counted drops once, to know what a drop of this liquid from this dropper weighs. */
export const calibrate: Task<Key> = {
  id: 'calibrate',
  recorded: true,
  title: (run) => ['Calibrate', nameOf(run).dropper === 'the dropper' ? 'drops' : nameOf(run).dropper].join(' · '),
  steps,
  keep,
  repeats: [fields.dropper, fields.liquid, fields.readability].map(({ name }) => name),
};
