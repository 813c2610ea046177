import { list } from '../../records/shelf';
import { Refused } from '../../workshop/attempt';
import { dropsText } from '../../workshop/dropWords';
import { tagOf } from '../../workshop/thing/labelled';
import { answer, asTyped, types } from '../engine/answers';
import { chips } from '../engine/card';
import type { RunState } from '../engine/fold';
import type { SlotFacts, Step, Walk } from '../engine/task';
import { asked, layout, limitsOf, preview, settled, vialsOf } from './asked';
import { laidOut, limitsWords, unbroken, type Drops } from './blends';
import { fields } from './fields';
import { dropsLeft } from './onHand';
import { earlierOf, laidIn } from './search';

/** All that is asked before the first blend, on one screen. */
export function cardStep(run: RunState): Step {
  const { vials, what, idea, on, total, ends, blind, session, most, least } = asked(run);
  const blends = laidIn(run) && run.at !== 'card' ? null : preview(run); // later on it would be worked out for nothing
  const known = blends === null || blends instanceof Refused ? null : blends;
  const own = answer(run, what) === 'own';
  return {
    key: 'card',
    say: 'Which vials are blended, and how they are judged.',
    ask: [...vials, what, on, total, ends, blind, session, ...most, ...least],
    card: {
      sentence: sentenceOf(run),
      slots: {
        ...vialSlots(run),
        asked: own ? { beside: [idea], shows: answer(settled(run), idea) ?? 'my own question' } : {},
        total: {
          by: 1,
          usual: chips(['6', '8', '12', '16'], ''),
          ...(blends instanceof Refused ? { wrong: blends.problem } : {}),
        },
        session: { by: 1, shows: `${answer(settled(run), session) ?? 6} a session` },
      },
      chips: most.map(({ name }) => name),
      ...(known ? { answer: answerOf(run, known) } : {}),
    },
    cautions: known && !earlierOf(run) ? shortOf(run, known) : [],
    ...(list('vial').length < 2
      ? { offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }] }
      : {}),
    act: begin,
    done: answer(settled(run), fields.blind) === 'yes' ? 'Make the first blends' : 'Make the first blend',
  };
}

function sentenceOf(run: RunState): string {
  const limited = vialsOf(run).map(({ id }) => limitsWords(limitsOf(run, id)) !== '');
  const [first, second, ...more] = asked(run).vials.map(({ name }, i) =>
    limited[i] ? `{${name}} ({most.${vialsOf(run)[i]!.id}})` : `{${name}}`,
  );
  const others = more.map((one) => `, ${one}`).join('');
  return `Find the proportions of ${first} and ${second}${others}. Judge {asked}: {total} a blend, {on}, {ends}, {blind}, {session}.`;
}

function vialSlots(run: RunState): Record<string, SlotFacts> {
  const missing = ['the first vial', 'the second vial'];
  const vials = asked(run).vials.map(({ name }, i): [string, SlotFacts] => {
    if (i < 2) return [name, { missing: missing[i]! }];
    return [name, { optional: true, ...(vialsOf(run)[i] ? {} : { shows: 'no other' }) }];
  });
  const limits = vialsOf(run).map((vial, i): [string, SlotFacts] => {
    const shows = limitsWords(limitsOf(run, vial.id));
    const facts = { missing: `limit for ${tagOf(vial)}`, usual: chips(['25', '50', '75'], '%') };
    return [
      `most.${vial.id}`,
      { ...facts, optional: true, beside: [asked(run).least[i]!], ...(shows === '' ? {} : { shows }) },
    ];
  });
  const least = asked(run).least.map(({ name }): [string, SlotFacts] => [name, { optional: true }]);
  return Object.fromEntries([...vials, ...limits, ...least]);
}

/** How many blends it comes to, and what of each vial. */
function answerOf(run: RunState, blends: readonly Drops[]) {
  const earlier = earlierOf(run);
  if (earlier)
    return { big: 'One at a time', lines: [`Continues from ${earlier.blends.length} blends that were judged.`] };
  const each = layout(run)!.vials.map(({ tag }, i) => unbroken(`${needed(blends, i)} ${tag}`));
  return {
    big: `${blends.length + 1} blends`,
    lines: [
      `About ${dropsText(blends.reduce((sum, drops) => sum + countOf(drops), 0))}: ${each.join(', ')}.`,
      'One comes up twice, unannounced. After that, one suggestion at a time.',
    ],
  };
}

function needed(blends: readonly Drops[], i: number): number {
  return blends.reduce((sum, drops) => sum + drops[i]!, 0);
}

function countOf(drops: Drops): number {
  return drops.reduce((sum, count) => sum + count, 0);
}

/** Vials that do not hold what the first blends take. */
function shortOf(run: RunState, blends: readonly Drops[]): string[] {
  return vialsOf(run).flatMap((vial, i) => {
    const [left, takes] = [dropsLeft(vial), needed(blends, i)];
    if (left === null || left >= takes) return [];
    return [`${tagOf(vial)}: about ${dropsText(left)} left, and the first blends take ${takes}.`];
  });
}

/** With the first blend the number is drawn that their order follows from, and all of them are written down. */
async function begin(walk: Walk): Promise<void> {
  const run = walk.state.peek();
  const plan = layout(run);
  const blends = preview(run);
  if (!plan || blends === null || blends instanceof Refused) return;
  const seed = crypto.getRandomValues(new Uint32Array(1))[0]!;
  const laid = earlierOf(run)
    ? { ...plan, blends: [] }
    : laidOut(plan, seed, answer(settled(run), fields.blind) === 'yes');
  if (await walk.happen(...asTyped(types(fields.laid, laid)))) await walk.goTo(walk.steps.peek()[1]!.key, true);
}
