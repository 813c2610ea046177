import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { Liking } from '../../ui/controls/Scale';
import type { Step } from '../engine/task';
import { answersOf, codesIn, isComplete } from './answers';
import { CardTiles, CodeTiles } from './CodeTiles';
import type { Design } from './design';
import { attribute, fields } from './fields';
import { RestClock, REST_SECONDS } from './RestClock';
import { ALL_SMELLED, areSmelled } from './samples';
import { PLACES } from './words';

const SITTING = 6; // sets; our choice, after “no more than half a dozen” (trade habit, no source)

/** Said once where a sample became smell only while the test was under way: from then on all are smelled. Null where it is known. */
export function smellNowStep(run: RunState, answered: number): Step | null {
  if (!areSmelled(run) || answer(run, fields.smelled) === 'yes') return null;
  return {
    key: 'smell-now',
    say: '‹Taste nothing more›: one of them is smell only now.',
    more: [
      ALL_SMELLED,
      ...(answered === 0
        ? []
        : [answered === 1 ? 'The first set was tasted.' : `The first ${answered} sets were tasted.`]),
    ],
    problem: ALL_SMELLED,
    offers: [{ words: 'Continue, smelling only', type: types(fields.smelled, 'yes') }],
  };
}

/** The tasting, one cup a screen: sets already answered keep one locked screen each, later ones are not there yet. */
export function tastingSteps(run: RunState, design: Design): Step[] {
  const answered = answersOf(run, design).length;
  const steps: Step[] = [];
  for (let i = 0; i <= Math.min(answered, design.sets.length - 1); i++) {
    const locked = answer(run, fields.locked(i)) !== null;
    if (!locked) steps.push(...cupSteps(run, design, i));
    steps.push(answerStep(run, design, i));
    if (locked && design.shuffle === 'cards') steps.push(cardStep(run, design, i));
    if (i < answered && i + 1 < design.sets.length) steps.push(restStep(run, i));
  }
  return steps;
}

/** One screen a cup. Alone, cups are given by their place, since their codes are hidden. */
function cupSteps(run: RunState, design: Design, i: number): Step[] {
  const { cups } = design.sets[i]!;
  const duo = design.method.id === 'duo-trio';
  const alone = design.shuffle !== 'none';
  const smelled = areSmelled(run);
  const verb = smelled ? 'Smell' : 'Taste';
  return cups.map(({ code }, k) => {
    const place = duo && k === 0 ? 'the reference' : `the ${PLACES[duo ? k - 1 : k]} cup`;
    const liking = design.method.id === 'hedonic';
    const field = fields.like(i, k);
    return {
      key: `taste.${i}.${k}`,
      say: alone || (duo && k === 0) ? `${verb} ${place} of set ‹${i + 1}›.` : `${verb} ‹${code}›.`,
      more: [...(k === 0 ? beforeSet(design) : []), smelled ? 'Fresh air before each.' : 'A sip of water before each.'],
      ...(liking
        ? {
            draw: (walk) => (
              <Liking
                chosen={Number(answer(walk.state.value, field)) || null}
                onChoose={(text) => void walk.happen({ type: 'typed', key: field.name, text })}
              />
            ),
          }
        : {}),
      ...(liking && answer(run, field) === null ? { problem: 'Tap how you like it first.' } : {}),
      done: 'Next',
    };
  });
}

function beforeSet({ shuffle }: Design): string[] {
  if (shuffle === 'cards') return ['Take any card that is left, arrow to the left. Do not look underneath.'];
  return shuffle === 'cups' ? ['Shuffle the cups of the set first, without looking under them.'] : [];
}

function answerStep(run: RunState, design: Design, i: number): Step {
  const { method, shuffle } = design;
  const set = design.sets[i]!;
  const key = `answer.${i}`;
  const locked = answer(run, fields.locked(i)) !== null;
  const scored = method.id === 'hedonic';
  const ordered = scored || method.id === 'ranking';
  const served = set.cups.map(({ code }) => code);
  if (scored && shuffle !== 'cups' && !locked)
    return { key, say: `Set ‹${i + 1}› is scored.`, done: 'Lock it', types: { [key]: served.join(' ') } };
  const chosen = codesIn(answer(run, fields.choice(i)));
  const open = locked || isComplete(design, set, chosen);
  return {
    key,
    say: locked ? `Set ‹${i + 1}› is answered, and stays so.` : questionOf(run, design),
    more: locked
      ? []
      : [...(shuffle === 'cups' ? [turnOver(design)] : []), 'Guess if unsure. The answer is locked when you continue.'],
    draw: (walk) => <CodeTiles {...{ walk, design, i, ordered, locked }} />,
    ...(open ? {} : { problem: missing(design, ordered) }),
    ...(locked ? {} : { types: { [key]: chosen.join(' ') } }),
    done: locked ? 'On' : 'Lock this answer',
  };
}

function missing({ shuffle }: Design, ordered: boolean): string {
  if (shuffle === 'cards') return ordered ? 'Tap all cups, in order.' : 'Tap one cup.';
  return ordered ? 'Tap all codes, in order.' : 'Tap one code.';
}

/** Which card it was: asked when the answer is locked, told once. */
function cardStep(run: RunState, design: Design, i: number): Step {
  const key = `card.${i}`;
  const code = answer(run, fields.card(i));
  const locked = code !== null;
  const turned = codesIn(answer(run, fields.turned(i)));
  const left = design.sets.slice(i).some(({ card }) => card === turned[0]);
  return {
    key,
    say: locked ? `Set ‹${i + 1}› was card ‹${code}›.` : 'Turn the card over. Which code?',
    more: locked ? [] : ['Your answer is locked. Put the card out of sight.'],
    draw: (walk) => <CardTiles {...{ walk, design, i, locked }} />,
    ...(locked || left ? {} : { problem: 'Tap the code of the card.' }),
    ...(locked ? {} : { types: { [key]: turned.join(' ') } }),
    done: 'On',
  };
}

function turnOver({ method }: Design): string {
  if (method.id === 'hedonic') return 'Turn the cups over and tap their codes, in the order in which you tasted them.';
  if (method.id === 'ranking') return 'Put the cups in order, turn them over, and tap their codes from least to most.';
  return 'Decide, then turn that cup over and tap its code.';
}

function questionOf(run: RunState, { method }: Design): string {
  if (method.id === 'hedonic') return 'Which cup was which?';
  const asked = answer(run, attribute);
  return asked && (method.id === 'paired' || method.id === 'ranking')
    ? `${method.question}: ${asked}`
    : method.question;
}

function restStep(run: RunState, i: number): Step {
  const since = Date.parse(run.done[`answer.${i}`] ?? '') || 0;
  return {
    key: `rest.${i}`,
    say: 'Rest. Water, and a breath of fresh air.',
    more: [
      `${REST_SECONDS} s is our choice; longer does no harm.`,
      ...((i + 1) % SITTING === 0
        ? [`${SITTING} sets are enough for one session: pause under ⋯ and continue later.`]
        : []),
    ],
    draw: () => <RestClock since={since} />,
    done: `To set ${i + 2}`,
  };
}
