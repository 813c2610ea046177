import type { AnyRecord } from '../../records/kind/kinds';
import { list, newRecord } from '../../records/shelf';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step, Task } from '../engine/task';
import { familyOf } from './families';
import { Dipping } from './Dipping';
import { draftOf, draftSteps } from './draft';
import { FanHub } from './FanHub';
import { Picking, PuttingIn } from './Picking';
import { helpingStep } from './helping';
import { proposal, usesFan } from './together';
import { takeUp, WhatNext } from './WhatNext';
import { ReadingHead, ReadingScores } from './ReadingParts';
import { begun, dueReadings, headOf, momentText, noteField, readingsOf, wordsField } from './readings';
import { StripPage } from './StripPage';
import { ADVISED_STRIPS, codesOf, inFan, inHand, MOST_STRIPS, roomField, shortCodes, stripsOf, toDip } from './strips';
import { SwapOut } from './SwapOut';
import { decisionField, judged, verdictLiking, verdictStep, verdictWords } from './verdict';
import './layer.css';
import { Refusal } from '../../core/text/refusal';
import { labelTagOf, tagOf, tagOfId } from '../../workshop/labelled';

const FIVE = `At most ${ADVISED_STRIPS} together until it is refined is the usual advice (common practice, no source).`;

function pickStep(run: RunState): Step {
  const hand = inHand(run);
  const empty = list('vial').length === 0;
  return {
    key: 'pick',
    say: hand.length === 0 ? 'Which vials?' : `‹${hand.length} picked›: ${shortCodes(hand)}`,
    more: hand.length > ADVISED_STRIPS ? [FIVE] : [],
    draw: (walk) => <Picking walk={walk} />,
    ask: empty ? [] : [roomField],
    ...(empty ? { offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }] } : {}),
    ...(hand.length === 0 ? { problem: 'Tick at least one vial.' } : {}),
    ...(hand.length > MOST_STRIPS
      ? { problem: `${MOST_STRIPS} strips at most: untick ${hand.length - MOST_STRIPS}.` }
      : {}),
    done: toDip(run).length > 0 || hand.length === 0 ? 'Dip them' : 'To the fan',
    next: toDip(run).length > 0 || hand.length === 0 ? 'dip' : 'fan',
  };
}

/** What several dips of one strip do to its clock. */
function severalDips(dips: number): string[] {
  if (dips === 1) return [];
  return [
    `Tap after dip ‹${dips}›: the clock counts from the last dip, and is known for one dip only. More dries later.`,
  ];
}

function dipStep(run: RunState): Step {
  const [next] = toDip(run);
  return {
    key: 'dip',
    say: next ? `Dip ‹${tagOf(next.vial)}›, shallow, and shake it off.` : 'All strips are dipped.',
    more: next ? ['5 to 10 mm deep, every strip alike (common practice, no source).', ...severalDips(next.dips)] : [],
    draw: (walk) => <Dipping walk={walk} />,
    ...(next ? { problem: `${tagOf(next.vial)} is not dipped yet: dip it and tap its field, or skip it.` } : {}),
    done: 'To the fan',
    next: 'fan',
  };
}

function readingSteps(run: RunState, n: number): Step[] {
  return [
    {
      key: `reading.${n}`,
      say: `Smell ${headOf(run, n)}.`,
      draw: (walk) => <ReadingHead walk={walk} n={n} />,
      ask: [wordsField(n)],
      done: 'Next',
      next: `score.${n}`,
    },
    {
      key: `score.${n}`,
      say: 'How strong, how good?',
      draw: (walk) => <ReadingScores walk={walk} n={n} />,
      ask: [noteField(n)],
      done: 'Keep this reading',
      next: 'fan',
    },
  ];
}

/** Steps beside the way: they are there only while the run stands at them. */
function asideSteps(run: RunState): Step[] {
  const [page, vial = ''] = run.at.split('.');
  const back = { key: run.at, done: 'Back to the fan', next: 'fan' };
  const code = tagOfId(vial) ?? 'this strip';
  switch (page) {
    case 'swap':
      return [{ ...back, say: 'Which strip goes out?', draw: (walk) => <SwapOut walk={walk} /> }];
    case 'instead':
      return [{ ...back, say: `Instead of ‹${code}›?`, draw: (walk) => <PuttingIn walk={walk} instead={vial} /> }];
    case 'add':
      return [{ ...back, say: 'Which vial comes in?', draw: (walk) => <PuttingIn walk={walk} /> }];
    case 'strip':
      return [{ ...back, say: `Strip ‹${code}›`, draw: (walk) => <StripPage walk={walk} vial={vial} /> }];
    case 'next':
      return [nextStep(run)];
    case 'helps':
      return [helpingStep(run, { ...back, done: 'Back to what is next', next: 'next' })];
    default:
      return [];
  }
}

function nextStep(run: RunState): Step {
  const there = inFan(run).length > 0;
  const back = there ? 'Back to the fan' : 'Back to the vials';
  const codes = (proposal(run)?.vials ?? []).flatMap((id) => tagOfId(id) ?? []);
  return {
    key: 'next',
    say: codes.length > 0 ? `Next: ${codes.join(' + ')}` : 'What to layer next',
    draw: (walk) => <WhatNext walk={walk} />,
    ...(codes.length > 0
      ? {
          act: takeUp,
          done: usesFan(run) ? 'Smell these together' : 'Take these',
          offers: [{ words: back, go: there ? 'fan' : 'pick' }],
        }
      : { done: back, next: there ? 'fan' : 'pick' }),
  };
}

function fanStep(run: RunState): Step {
  const fan = inFan(run);
  return {
    key: 'fan',
    say: fan.length > 1 ? 'Fan them, tips 2 to 5 mm apart.' : 'Smell it.',
    draw: (walk) => <FanHub walk={walk} />,
    ...(fan.length === 0 ? { problem: 'No strip is in the fan: add one first.' } : {}),
    done: 'Write a verdict',
    next: 'verdict',
  };
}

function steps(run: RunState): Step[] {
  return [
    pickStep(run),
    dipStep(run),
    ...begun(run).flatMap((n) => readingSteps(run, n)),
    ...asideSteps(run),
    fanStep(run),
    verdictStep(run),
    ...draftSteps(run),
  ];
}

function keep(run: RunState): AnyRecord[] {
  if (inFan(run).length === 0) throw new Refusal('A layering needs at least one dipped strip.');
  const iso = (ms: number | null): string | null => (ms === null ? null : new Date(ms).toISOString());
  const strips = stripsOf(run).filter(({ dippedAt }) => dippedAt !== null);
  const room = valueOf(run, roomField);
  const layering = newRecord('layering', {
    from: strips.map(({ vial }) => vial.id),
    name: codesOf(judged(run)),
    strips: strips.map(({ vial, dips, dippedAt, takenOutAt, driedAt }) => ({
      vial: vial.id,
      code: labelTagOf(vial),
      dips,
      family: familyOf(run, vial.id),
      dippedAt: iso(dippedAt),
      takenOutAt: iso(takenOutAt),
      ...(driedAt === null ? {} : { driedAt: iso(driedAt)! }),
    })),
    ...(room === null ? {} : { roomC: room }),
    readings: readingsOf(run),
    verdict: {
      liking: verdictLiking(run),
      decision: valueOf(run, decisionField) ?? '',
      words: valueOf(run, verdictWords) ?? '',
      vials: judged(run).map(({ vial }) => vial.id),
    },
  });
  return [layering, ...draftOf(run, layering.id)];
}

/** What a repeat begins with. */
const repeats = ['pick.', 'dips.', 'family.'];

/** Dip strips, fan them, smell them together over a day, and say what you think. */
export const layer: Task = {
  id: 'layer',
  recorded: true,
  title: (run) => (inHand(run).length === 0 ? 'Layer strips' : `Layer · ${shortCodes(inHand(run))}`),
  steps,
  due: (run) =>
    dueReadings(run).map(({ minute, at }) => ({
      at,
      words: `${momentText(minute)} reading of ${shortCodes(inFan(run))}`,
    })),
  keep,
  repeats,
};
