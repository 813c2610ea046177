import type { AnyRecord } from '../../records/kinds';
import { find, list, newRecord } from '../../records/shelf';
import { choice, valueOf, words } from '../fields';
import type { RunState } from '../fold';
import type { Step, Task } from '../task';
import { Dipping } from './Dipping';
import { FanHub } from './FanHub';
import { Picking, PuttingIn } from './Picking';
import { ReadingHead, ReadingScores } from './ReadingParts';
import { begun, headOf, noteField, readingsOf, wordsField } from './readings';
import { likingWords, Scale } from './Scale';
import { StripPage } from './StripPage';
import { ADVISED_STRIPS, codesOf, inFan, inHand, MOST_STRIPS, roomField, stripsOf, toDip } from './strips';
import { SwapOut } from './SwapOut';
import './layer.css';

const FIVE = `At most ${ADVISED_STRIPS} together until it is refined is the usual advice (common practice, no source).`;

const decisionField = choice({
  name: 'verdict.decision',
  title: 'What now?',
  options: [
    { value: 'keep', words: 'Keep', more: 'worth a formula' },
    { value: 'try again', words: 'Try again', more: 'other dips, another strip' },
    { value: 'drop', words: 'Drop', more: 'not these together' },
  ],
});
const verdictWords = words({ name: 'verdict.words', title: 'In your words', optional: true, max: 500 });

function pickStep(run: RunState): Step {
  const hand = inHand(run);
  const empty = list('vial').length === 0;
  return {
    key: 'pick',
    say: hand.length === 0 ? 'Which vials?' : `‹${hand.length} picked›: ${codesOf(hand)}`,
    more: hand.length > ADVISED_STRIPS ? [FIVE] : [],
    draw: (walk) => <Picking walk={walk} />,
    ask: empty ? [] : [roomField],
    ...(empty ? { offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }] } : {}),
    ...(hand.length === 0 ? { problem: 'Tick at least one vial.' } : {}),
    ...(hand.length > MOST_STRIPS
      ? { problem: `${MOST_STRIPS} strips at most: untick ${hand.length - MOST_STRIPS}.` }
      : {}),
    done: toDip(run).length > 0 ? 'Dip them' : 'To the fan',
    next: toDip(run).length > 0 || hand.length === 0 ? 'dip' : 'fan',
  };
}

function dipStep(run: RunState): Step {
  const [next] = toDip(run);
  return {
    key: 'dip',
    say: next ? `Dip ‹${next.vial.code}›, shallow, and shake it off.` : 'All strips are dipped.',
    more: next ? ['5 to 10 mm deep, every strip alike (common practice, no source).'] : [],
    draw: (walk) => <Dipping walk={walk} />,
    ...(next ? { problem: `${next.vial.code} is not dipped yet: dip it and tap its field, or skip it.` } : {}),
    done: 'To the fan',
    next: 'fan',
  };
}

function readingSteps(run: RunState, n: number): Step[] {
  return [
    {
      key: `reading.${n}`,
      say: `Smell ${headOf(run, n)}.`,
      more: ['About 1 cm from the nose, one or two short sniffs.'],
      draw: (walk) => <ReadingHead walk={walk} n={n} />,
      ask: [wordsField(n), noteField(n)],
      done: 'Next',
      next: `score.${n}`,
    },
    {
      key: `score.${n}`,
      say: 'How strong, how good?',
      draw: (walk) => <ReadingScores walk={walk} n={n} />,
      done: 'Keep this reading',
      next: 'fan',
    },
  ];
}

/** Steps beside the way: they are there only while the run stands at them. */
function asideSteps(run: RunState): Step[] {
  const [page, vial = ''] = run.at.split('.');
  const back = { key: run.at, done: 'Back to the fan', next: 'fan' };
  const code = find('vial', vial)?.code ?? 'this strip';
  switch (page) {
    case 'swap':
      return [{ ...back, say: 'Which strip goes out?', draw: (walk) => <SwapOut walk={walk} /> }];
    case 'instead':
      return [{ ...back, say: `Instead of ‹${code}›?`, draw: (walk) => <PuttingIn walk={walk} instead={vial} /> }];
    case 'add':
      return [{ ...back, say: 'Which vial comes in?', draw: (walk) => <PuttingIn walk={walk} /> }];
    case 'strip':
      return [{ ...back, say: `Strip ‹${code}›`, draw: (walk) => <StripPage walk={walk} vial={vial} /> }];
    default:
      return [];
  }
}

function fanStep(run: RunState): Step {
  const fan = inFan(run);
  return {
    key: 'fan',
    say: fan.length > 1 ? 'Fan them, tips apart.' : 'Smell it.',
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
    {
      key: 'verdict',
      say: `Your verdict on ${codesOf(inFan(run))}`,
      draw: (walk) => (
        <Scale {...{ walk, name: 'verdict.liking', from: 1, to: 9, words: likingWords }} title="How do you like it?" />
      ),
      ask: [decisionField, verdictWords],
      done: 'Keep in the Book',
    },
  ];
}

function keep(run: RunState): AnyRecord[] {
  const fan = inFan(run);
  if (fan.length === 0) throw new RangeError('A layering needs at least one dipped strip.');
  const iso = (ms: number | null): string | null => (ms === null ? null : new Date(ms).toISOString());
  const strips = stripsOf(run).filter(({ dippedAt }) => dippedAt !== null);
  const room = valueOf(run, roomField);
  const liking = run.typed['verdict.liking'];
  return [
    newRecord('layering', {
      from: strips.map(({ vial }) => vial.id),
      name: codesOf(fan),
      strips: strips.map(({ vial, dips, dippedAt, takenOutAt, driedAt }) => ({
        ...{ vial: vial.id, code: vial.code, dips },
        dippedAt: iso(dippedAt),
        takenOutAt: iso(takenOutAt),
        ...(driedAt === null ? {} : { driedAt: iso(driedAt)! }),
      })),
      ...(room === null ? {} : { roomC: room }),
      readings: readingsOf(run),
      verdict: {
        liking: liking ? Number(liking) : null,
        decision: valueOf(run, decisionField)!,
        words: valueOf(run, verdictWords) ?? '',
      },
    }),
  ];
}

/** Dip strips, fan them, smell them together over a day, and say what you think. */
export const layer: Task = {
  id: 'layer',
  recorded: true,
  title: (run) => (inHand(run).length === 0 ? 'Layer strips' : `Layer · ${codesOf(inHand(run))}`),
  steps,
  keep,
};
