import { onAnotherDay, type DropCalibration } from '../../core/drop/drop';
import { checkWaterDropper } from '../../core/drop/dropperStandard';
import { combineCalibrations } from '../../core/drop/dropHistory';
import { expanded } from '../../core/number/measured';
import { celsius } from '../../core/number/units';
import { Refusal } from '../../core/text/refusal';
import type { AnyRecord } from '../../records/kind/kinds';
import { find, newId, newRecord } from '../../records/shelf';
import { formatMeasured, formatPlain, typedOnScale } from '../../ui/format';
import { sentenceWords } from '../../ui/sentence';
import { dropsText, HOW_TO_DROP } from '../../workshop/dropWords';
import { weighingAdvice } from '../../workshop/weighingAdvice';
import { answer, types } from '../engine/answers';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { Card, CardAnswer, Step, Task } from '../engine/task';
import { asked, expectedDrop, fields, remembers } from './fields';
import {
  calibrated,
  counted,
  earlier,
  moreWords,
  nameOf,
  oddOnes,
  resultOf,
  volumeResult,
  weighingsOf,
  unzeroed,
} from './readings';
import { Weighings } from './Weighings';

type Key = 'card';

const AS_BEFORE = 0.0005; // our choice: less than 0.05 % is called the same
const FLAMES = 'Oils and alcohol burn: no flame near, open a window.';

/** Everything on one page: what is weighed, the weighings, and what they say so far. */
function cardStep(run: RunState): Step<Key> {
  const { dropper, newName, outlet, liquid, each, readability } = asked(run);
  const fresh = answer(run, dropper) === 'new';
  const calibration = calibrated(run, 'this');
  const advice = [HOW_TO_DROP];
  return {
    key: 'card',
    say: 'Weigh counted drops.',
    rows: Array.from({ length: weighingsOf(run).length + 1 }, (_, at) => [
      fields.drops(at + 1),
      fields.mass(at + 1),
    ]).flat(),
    ask: [dropper, ...(fresh ? [newName, outlet] : []), liquid, each, readability],
    card: {
      sentence: `{dropper}${fresh ? ' {newName}, from {newOutlet},' : ''} with {liquid}, {each}, on a scale of {readability}`,
      slots: {
        dropper: { missing: 'the dropper' },
        each: { usual: chips(['10', '20', '30', '50'], ''), by: 5 },
        readability: { usual: chips(['0.1', '0.01', '0.001'], 'g') },
      },
      ...(calibration ? { answer: answerOf(calibration), ...adviceOf(run, calibration) } : {}),
    },
    draw: (walk) => <Weighings walk={walk} />,
    told: weighingsOf(run).map(({ i, drops, massG, out }) => [
      `Weighing ${i}`,
      `${dropsText(drops)}, ${formatPlain(massG)} g${out ? ', left out' : ''}`,
    ]),
    ...(calibration
      ? {
          results: [resultOf(run, calibration), ...[volumeResult(run, calibration)].filter((one) => one !== null)],
          more: [...advice, ...drift(run, calibration), ...waterCheck(run)],
        }
      : {
          problem: 'Nothing is weighed yet: type what the scale shows.',
          more: [...advice, 'Zero the scale before each weighing.', ...beforehand(run)],
        }),
    cautions: [FLAMES],
    done: 'Save',
  };
}

/** What a scale does to drops like these, before the first ones are weighed. */
function beforehand(run: RunState): string[] {
  const { liquid, each, readability } = asked(run);
  const [of, drops, readabilityG] = [answer(run, liquid), answer(run, each), answer(run, readability)];
  if (drops === null || readabilityG === null) return [];
  return weighingAdvice({ liquid: of, drops, mgPerDrop: expectedDrop(of).mgPerDrop.value, readabilityG });
}

/** The drop so far; its ± from the third weighing on, when there is a scatter to speak of. */
function answerOf({ mgPerDrop, n }: DropCalibration): CardAnswer {
  const { value, uncertainty } = formatMeasured(mgPerDrop);
  const percent = formatPlain((expanded(mgPerDrop) / mgPerDrop.value) * 100, 2);
  return {
    big: `${value} mg`,
    lines: [
      n < 3
        ? 'a drop, so far; its ± shows from the third weighing on'
        : `a drop, ± ${uncertainty} mg, ${percent} % of it`,
    ],
    how: 0,
  };
}

/** The weighing that stands out, with the way to leave it out; else what another one would bring. */
function adviceOf(run: RunState, calibration: DropCalibration): Pick<Card<Key>, 'advice'> {
  const steps = unzeroed(run);
  if (steps)
    return {
      advice: {
        words:
          'Each weighing is the one before and as much again. If the scale was not zeroed between, take the differences.',
        offer: { words: 'Take the differences', type: differences(run, steps) },
      },
    };
  const [odd] = oddOnes(run);
  if (odd)
    return {
      advice: {
        words: `Weighing ${odd.i} is ${formatPlain(odd.ratio, 2)} times the others. Leave it out, or weigh again.`,
        offer: { words: `Leave out weighing ${odd.i}`, type: types(fields.out(odd.i), 'yes') },
      },
    };
  const words = moreWords(run, calibration);
  return words ? { advice: { words } } : {};
}

function differences(run: RunState, steps: readonly number[]): Record<string, string> {
  const { readability } = asked(run);
  const step = answer(run, readability) ?? 0;
  return Object.fromEntries(weighingsOf(run).map(({ i }, at) => [fields.mass(i).name, typedOnScale(steps[at]!, step)]));
}

/** Whether the drop is still what it was: against the calibrations from before. */
function drift(run: RunState, calibration: DropCalibration): string[] {
  const before = earlier(run).map((one) => one.mgPerDrop);
  if (before.length === 0) return [];
  const onDays = [...before, calibration.mgPerDrop].map((drop) => onAnotherDay(drop, 'this'));
  const { change, drifted } = combineCalibrations(onDays, 'this');
  const by = `${formatPlain(Math.abs(change!) * 100, 2)} %`;
  const now = change! < 0 ? `The drop is ${by} lighter than before` : `The drop is ${by} heavier than before`;
  if (drifted)
    return [`${now}, more than chance allows: the tip may be worn or fouled. This calibration counts from now on.`];
  return Math.abs(change!) < AS_BEFORE
    ? ['The drop weighs what it weighed before: old and new weighings count together.']
    : [`${now}, no more than chance allows: old and new weighings count together.`];
}

/** Water checks itself against the dropper of the pharmacopoeias. */
function waterCheck(run: RunState): string[] {
  if (answer(run, asked(run).liquid) !== 'water') return [];
  const { phEur, usp } = checkWaterDropper(counted(run), celsius(answer(run, asked(run).temperature) ?? 20));
  return [phEur.why, usp.why].map((why) => sentenceWords(why));
}

function keep(run: RunState): AnyRecord[] {
  const id = newId();
  const drop = calibrated(run, `calibration:${id}`);
  if (!drop) throw new Refusal('Nothing is weighed yet: type what the scale shows.');
  const now = asked(run);
  const old = find('dropper', answer(run, now.dropper));
  const dropper =
    old ??
    newRecord('dropper', {
      name: answer(run, now.newName)!,
      tip: answer(run, fields.newTip) ?? '',
      outlet: answer(run, now.outlet)!,
    });
  const temperatureC = answer(run, now.temperature);
  const calibration = newRecord('calibration', {
    id,
    from: [dropper.id],
    dropper: dropper.id,
    liquid: { id: answer(run, now.liquid)!, name: nameOf(run).liquid },
    readings: weighingsOf(run).map(({ i: _, ...weighing }) => weighing),
    readabilityG: answer(run, now.readability)!,
    ...(temperatureC === null ? {} : { temperatureC }),
    mgPerDrop: drop.mgPerDrop,
    spread: drop.perDropSpread,
  });
  return old ? [calibration] : [calibration, dropper];
}

/** Weigh counted drops, to know what a drop of this liquid from this dropper weighs. */
export const calibrate: Task<Key> = {
  id: 'calibrate',
  recorded: true,
  title: (run) => ['Calibrate', nameOf(run).dropper === 'the dropper' ? 'drops' : nameOf(run).dropper].join(' · '),
  steps: (run) => [cardStep(run)],
  keep,
  remembers,
  repeats: remembers,
};
