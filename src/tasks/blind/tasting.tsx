import { textOf } from '../fields';
import type { RunState } from '../fold';
import { likingWords, Scale } from '../Scale';
import type { Step } from '../task';
import { answersOf, codesIn, isComplete } from './answers';
import { CodeTiles } from './CodeTiles';
import type { Design } from './design';
import { fields, isAlone } from './fields';
import { REST_SECONDS, RestClock } from './RestClock';

const SITTING = 6; // sets; our choice, after “no more than half a dozen” (trade habit, no source)
const PLACES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** The tasting, one cup a screen: sets already answered keep one locked screen each, later ones are not there yet. */
export function tastingSteps(run: RunState, design: Design): Step[] {
  const answered = answersOf(run, design).length;
  const steps: Step[] = [];
  for (let i = 0; i <= Math.min(answered, design.sets.length - 1); i++) {
    const locked = i < answered;
    if (!locked) steps.push(...cupSteps(run, design, i));
    steps.push(answerStep(run, design, i));
    if (locked && i + 1 < design.sets.length) steps.push(restStep(run, i));
  }
  return steps;
}

/** One screen a cup. Alone, cups are told by their place, since their codes are under them. */
function cupSteps(run: RunState, design: Design, i: number): Step[] {
  const alone = isAlone(run);
  const { cups } = design.sets[i]!;
  const duo = design.method.id === 'duo-trio';
  return cups.map(({ code }, k) => {
    const place = duo && k === 0 ? 'the reference' : `the ${PLACES[duo ? k - 1 : k]} cup`;
    const liking = design.method.id === 'hedonic';
    const name = `like.${i}.${k}`;
    return {
      key: `taste.${i}.${k}`,
      say: alone || (duo && k === 0) ? `Taste ${place} of set ‹${i + 1}›.` : `Taste ‹${code}›.`,
      more: [
        ...(alone && k === 0 ? ['Shuffle the cups of the set first, without looking under them.'] : []),
        'A sip of water before each.',
      ],
      ...(liking
        ? {
            draw: (walk) => (
              <Scale {...{ walk, name, from: 1, to: 9, words: likingWords }} title="How do you like it?" />
            ),
          }
        : {}),
      ...(liking && !run.typed[name] ? { problem: 'Tap how you like it first.' } : {}),
      done: 'Tasted',
    };
  });
}

function answerStep(run: RunState, design: Design, i: number): Step {
  const { method } = design;
  const set = design.sets[i]!;
  const locked = run.typed[`answer.${i}`] !== undefined;
  const scored = method.id === 'hedonic';
  const ordered = scored || method.id === 'ranking';
  const alone = isAlone(run);
  const served = set.cups.map(({ code }) => code);
  const chosen = scored && !alone ? served : codesIn(run.typed[`choice.${i}`]);
  const complete = isComplete(design, set, chosen);
  if (scored && !alone && !locked)
    return {
      key: `answer.${i}`,
      say: `Set ‹${i + 1}› is scored.`,
      done: 'Lock it',
      types: { [`answer.${i}`]: served.join(' ') },
    };
  return {
    key: `answer.${i}`,
    say: locked ? `Set ‹${i + 1}› is answered, and stays so.` : questionOf(run, design),
    more: locked
      ? []
      : [...(alone ? [turnOver(design)] : []), 'Guess if you must. The answer is locked when you go on.'],
    draw: (walk) => <CodeTiles {...{ walk, design, i, ordered, locked }} />,
    ...(complete || locked ? {} : { problem: ordered ? 'Tap all codes, in order.' : 'Tap one code.' }),
    ...(locked ? {} : { types: { [`answer.${i}`]: chosen.join(' ') } }),
    done: locked ? 'On' : 'Lock this answer',
  };
}

function turnOver({ method }: Design): string {
  if (method.id === 'hedonic') return 'Turn the cups over and tap their codes, in the order in which you tasted them.';
  if (method.id === 'ranking') return 'Put the cups in order, turn them over, and tap their codes from least to most.';
  return 'Decide, then turn that cup over and tap its code.';
}

function questionOf(run: RunState, { method }: Design): string {
  if (method.id === 'hedonic') return 'Which cup was which?';
  const attribute = textOf(run, fields.attribute).trim();
  return attribute && (method.id === 'paired' || method.id === 'ranking')
    ? `${method.question}: ${attribute}`
    : method.question;
}

function restStep(run: RunState, i: number): Step {
  const since = Date.parse(run.done[`answer.${i}`] ?? '') || 0;
  return {
    key: `rest.${i}`,
    say: 'Rest. Water, and a breath of fresh air.',
    more: [
      `${REST_SECONDS} s is our choice; longer does no harm.`,
      ...((i + 1) % SITTING === 0 ? [`${SITTING} sets are enough for one sitting: pause with ✕ and go on later.`] : []),
    ],
    draw: () => <RestClock since={since} />,
    done: `To set ${i + 2}`,
  };
}
