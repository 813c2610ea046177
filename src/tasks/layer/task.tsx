import type { AnyRecord } from '../../records/kind/kinds';
import { list, newRecord } from '../../records/shelf';
import { Refusal } from '../../core/text/refusal';
import { labelTagOf, tagOf, tagOfId } from '../../workshop/thing/labelled';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Step, Task, Walk } from '../engine/task';
import { Dipping } from './Dipping';
import { draftOf, draftSteps } from './draft';
import { familyOf } from './families';
import { FanPage } from './FanPage';
import { fields } from './fields';
import { helpingStep } from './helping';
import { noteStep } from './NotePage';
import { closing, dueNotes, headOf, momentText, noteOf, notesOf, noteWords, openNote } from './notes';
import { Picking } from './Picking';
import { ADVISED_STRIPS, codesOf, inFan, inHand, MOST_STRIPS, roomField, shortCodes, stripsOf, toDip } from './strips';
import { proposal, usesFan } from './together';
import { isJudgedWet, judged, verdictLiking, verdictStep } from './verdict';
import { takeUp, WhatNext } from './WhatNext';
import '../shared/tiles.css';
import './layer.css';

const FIVE = `At most ${ADVISED_STRIPS} together until it is refined is the usual advice (common practice, no source).`;

function pickStep(run: RunState): Step {
  const hand = inHand(run);
  const empty = list('vial').length === 0;
  const room = roomField();
  const dips = toDip(run).length;
  return {
    key: 'pick',
    say: hand.length === 0 ? 'Which vials?' : `‹${hand.length} picked›: ${shortCodes(hand)}`,
    more: hand.length > ADVISED_STRIPS ? [FIVE] : [],
    draw: (walk) => <Picking walk={walk} />,
    ask: empty || room.asked ? [] : [room],
    ...(empty ? { offers: [{ words: 'Dilute a material', start: { task: 'dilute', typed: {} } }] } : {}),
    ...(hand.length === 0 ? { problem: 'Tick at least one vial.' } : {}),
    ...(hand.length > MOST_STRIPS
      ? { problem: `${MOST_STRIPS} strips at most: untick ${hand.length - MOST_STRIPS}.` }
      : {}),
    done: dips > 0 ? `Dip ${dips}` : hand.length === 0 ? 'Dip' : 'To the fan',
    next: dips > 0 || hand.length === 0 ? 'dip' : 'fan',
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
    more: next
      ? ['Dip 5 to 10 mm, the same for every strip (common practice, no reference).', ...severalDips(next.dips)]
      : [],
    draw: (walk) => <Dipping walk={walk} />,
    ...(next ? { problem: `${tagOf(next.vial)} is not dipped yet: dip it and tap its field, or skip it.` } : {}),
    done: 'To the fan',
    next: 'fan',
  };
}

/** Steps beside the way: they are there only while the run is at them. */
function asideSteps(run: RunState): Step[] {
  const [page, part = ''] = run.at.split('.');
  switch (page) {
    case 'reading':
    case 'score':
      return [noteStep(run, Number(part), run.at)];
    case 'swap':
    case 'instead':
    case 'add':
    case 'strip':
      return [{ ...fanStep(run), key: run.at, say: besideFan(page, part) }];
    case 'next':
      return [nextStep(run)];
    case 'helps':
      return [helpingStep(run, { key: 'helps', done: 'Back to what is next', next: 'next' })];
    default:
      return [];
  }
}

/** What the pages said that the first version had beside its fan: a run that was left there goes on with the fan. */
function besideFan(page: 'swap' | 'instead' | 'add' | 'strip', vial: string): string {
  const code = tagOfId(vial) ?? 'this strip';
  if (page === 'swap') return 'Which strip goes out?';
  if (page === 'add') return 'Which vial comes in?';
  return page === 'strip' ? `Strip ‹${code}›` : `Instead of ‹${code}›?`;
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

/** The note that is being written is done; the fan stays. */
async function saveNote(walk: Walk): Promise<void> {
  if (await walk.goTo('fan', true)) await walk.happen(...closing(walk.state.peek()));
}

function fanStep(run: RunState): Step {
  const fan = inFan(run);
  const open = openNote(run);
  const note = open === null ? null : noteOf(run, open);
  return {
    key: 'fan',
    say: fan.length > 1 ? 'Fan them, tips 2 to 5 mm apart.' : 'Smell it.',
    draw: (walk) => <FanPage walk={walk} />,
    ...(fan.length === 0 ? { problem: 'No strip is in the fan: add one first.' } : {}),
    ...(note && !note.empty
      ? { told: [[headOf(note), noteWords(note)]], act: saveNote, done: 'Save the note' }
      : { done: 'Give a verdict' }),
    next: 'verdict',
  };
}

function steps(run: RunState): Step[] {
  return [pickStep(run), dipStep(run), ...asideSteps(run), fanStep(run), verdictStep(run), ...draftSteps(run)];
}

function keep(run: RunState): AnyRecord[] {
  if (inFan(run).length === 0) throw new Refusal('A layering needs at least one dipped strip.');
  const iso = (ms: number | null): string | null => (ms === null ? null : new Date(ms).toISOString());
  const strips = stripsOf(run).filter(({ dippedAt }) => dippedAt !== null);
  const room = answer(run, roomField());
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
    readings: notesOf(run),
    verdict: {
      liking: verdictLiking(run),
      decision: answer(run, fields.decision) ?? '',
      words: answer(run, fields.verdictNote) ?? '',
      vials: judged(run).map(({ vial }) => vial.id),
      ...(isJudgedWet(run) ? { wet: true as const } : {}),
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
    dueNotes(run).map(({ minute, at }) => ({
      at,
      words: `Smell ${shortCodes(inFan(run))}, ${minute === 0 ? 'fresh' : `at ${momentText(minute)}`}`,
    })),
  keep,
  repeats,
};
