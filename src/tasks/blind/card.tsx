import type { DiscriminationTest } from '../../core/sensory/discrimination';
import { list } from '../../records/shelf';
import { attempt, Refused } from '../../workshop/attempt';
import { dropsText } from '../../workshop/dropWords';
import { answer, asTyped, isBegun, types } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, asIfLeft, lastTime } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import type { SlotFacts, Step, Walk } from '../engine/task';
import { balanceWords, aloneWords } from './balance';
import { carriedText } from './blanks';
import { shuffleOf, type Design } from './design';
import { attribute, expectedOrder, fields, isAlone } from './fields';
import { cupField, weakestField, dropFields, ladderFields, levelsOf, unitField, unitOf } from './ladder';
import { methodField, methodOf, METHODS, type Method } from './methods';
import { powerWords } from './powerWords';
import { ALL_SMELLED, areSmelled, sampleFields, samplesOfRun, sampleTrouble } from './samples';
import { SamplesSheet } from './SamplesSheet';
import { Sheet } from './Sheet';

const COUNTED = ['triangle', 'duo-trio', 'paired', 'preference'];

/** The questions as they are asked now: the test, who serves and the risk as last time. */
const asked = oncePerRun((run: RunState) => {
  const last = [lastTime(list('test'))];
  const method = asBefore(run, methodField, last, 'triangle');
  const id = answer(run, method) ?? '';
  const same = last.filter((answers) => answers[methodField.name] === id);
  return {
    method,
    served: asBefore(run, fields.served, last, 'alone'),
    tries: asBefore(run, fields.tries(id), same),
    risk: asBefore(run, fields.risk, last, '0.05'),
  };
});

/** The run as it would be with its card left as it is. */
export const settled = oncePerRun((run: RunState): RunState => asIfLeft(run, Object.values(asked(run))));

/** What the next test begins with. */
export const remembers = ['test', 'served', 'tries', 'risk', 'factor', 'levels', 'unit'];

/** All that is asked before the first sip, on one screen. */
export function cardStep(run: RunState): Step {
  const now = settled(run);
  const method = methodOf(now) ?? METHODS[0]!; // what was typed may be none; then its slot asks for one
  const trouble = sampleTrouble(now, method) || orderTrouble(now, method) || ladderTrouble(now, method);
  return {
    key: 'card',
    say: 'What is compared, and how.',
    ask: fieldsOf(run, now, method),
    card: { sentence: sentenceOf(now, method), slots: slotsOf(now, method) },
    draw: (walk) => <SamplesSheet walk={walk} method={method} />,
    more: isOpen(run) ? moreOf(now, method).map((line) => line.replace(/[‹›]/g, '')) : [],
    ...(trouble ? { problem: trouble } : {}),
    act: (walk) => prepared(walk),
    done: 'Prepare the sheet',
  };
}

/** With the sheet the number is drawn that codes and orders follow from. */
async function prepared(walk: Walk): Promise<void> {
  const seed = String(crypto.getRandomValues(new Uint32Array(1))[0]!);
  const drawn = isBegun(walk.state.peek(), fields.seed);
  if (drawn || (await walk.happen(...asTyped(types(fields.seed, seed))))) await walk.goTo('sheet', true);
}

/** Whether the card is in sight: elsewhere its sums are worked out for nothing. */
function isOpen({ at }: RunState): boolean {
  return !/^(sheet|taste|answer|card|rest|reveal|smell-now)(\.|$)/.test(at) || at === 'card';
}

function fieldsOf(run: RunState, now: RunState, method: Method): Field[] {
  const { method: test, served, tries, risk } = asked(run);
  const ranking = method.id === 'ranking';
  const ladder = method.id === 'threshold';
  return [
    test,
    ...sampleFields(now, method),
    ...(ranking || method.id === 'paired' ? [attribute] : []),
    ...(ladder ? [...ladderFields(now), unitField, ...(unitOf(now) === 'drops' ? dropFields(now) : [])] : []),
    tries,
    served,
    fields.assessor,
    ...(ranking ? [fields.expected] : []),
    ...(ladder ? [] : [risk]),
  ];
}

function sentenceOf(now: RunState, method: Method): string {
  const samples = sampleFields(now, method).map(({ name }) => `{${name}}`);
  const [first, second] = samples;
  const end =
    method.id === 'threshold'
      ? '{tries}, {served}, {assessor}'
      : '{tries}, {served}, {assessor}, false-alarm risk {risk}';
  switch (method.id) {
    case 'paired':
      return `{test}: more {attribute} in ${second} than in ${first}? ${end}`;
    case 'ranking':
      return `{test} by {attribute}: ${samples.join(', ')}, {expected}, ${end}`;
    case 'hedonic':
      return `{test}: ${samples.join(', ')}, ${end}`;
    case 'threshold':
      return `{test} of ${second} in ${first}: ${ladderWords(now)}, ${end}`;
    default:
      return `{test}: ${first} and ${second}, ${end}`;
  }
}

function ladderWords(now: RunState): string {
  return unitOf(now) === 'drops'
    ? '{levels} from {weakest} up, {factor}, in {unit} of {ladderVial} with {dropper} into {cupG}'
    : '{levels} up to {top}, {factor}, in {unit}';
}

/** What the empty slot of a sample says, where its title would not fit the sentence. */
const MISSING: Readonly<Record<string, string>> = {
  'Plain (the drink alone)': 'the plain drink',
  'What is in the other': 'what is tested',
};

/** What an empty slot says; one that is optional is never empty. */
function slotsOf(now: RunState, method: Method): Record<string, SlotFacts> {
  const samples = sampleFields(now, method).flatMap(({ name, title, read }): [string, SlotFacts][] => {
    const missing = MISSING[title] ?? title.charAt(0).toLowerCase() + title.slice(1);
    const isLeftOut = read('').ok && !isNamed(now, name);
    return [[name, { missing, ...(isLeftOut ? { shows: 'one more' } : {}) }]];
  });
  const weakest = answer(now, weakestField);
  return {
    ...Object.fromEntries(samples),
    attribute: { missing: 'of what' },
    top: { missing: 'the strongest' },
    ladderVial: { missing: 'which vial' },
    tries: { by: 1 },
    levels: { by: 1 },
    weakest: { by: 1, ...(weakest === null ? {} : { shows: dropsText(weakest) }) },
    assessor: assessorSlot(now),
    ...(answer(now, cupField) === null ? { cupG: { shows: 'each cup' } } : {}),
  };
}

/** Whose nose it is; outside of a panel it is yours. */
function assessorSlot(now: RunState): SlotFacts {
  const id = answer(now, fields.assessor);
  return { missing: 'whose nose', optional: true, shows: id ? `nose ${id}` : 'one nose' };
}

function isNamed(now: RunState, name: string): boolean {
  return answer(now, fields.sample(Number(name.split('.')[1]))) !== null;
}

function orderTrouble(now: RunState, method: Method): string {
  if (method.id !== 'ranking' || answer(now, fields.expected) !== 'yes') return '';
  return expectedOrder(now, samplesOfRun(now)?.length ?? 0) ? '' : 'Tap every sample once, from lowest to highest.';
}

function ladderTrouble(now: RunState, method: Method): string {
  const levels = method.id === 'threshold' ? attempt(() => levelsOf(now)) : null;
  return levels instanceof Refused ? levels.problem : '';
}

/** What that many sets can show, and whether their orders are balanced; of a series what its drops bring into a cup. */
function moreOf(now: RunState, method: Method): string[] {
  const tries = answer(now, fields.tries(method.id));
  const risk = Number(answer(now, fields.risk) ?? NaN);
  const samples = samplesOfRun(now)?.length ?? 0;
  if (tries === null) return [];
  return [
    ...(COUNTED.includes(method.id) && risk > 0 ? powerWords(method.id as DiscriminationTest, tries, risk) : []),
    ...(samples > 1 ? [balanceWords(method, tries, samples, shuffleOf(method, tries, isAlone(now)))] : []),
    ...(method.id === 'threshold' ? carriedText(now) : []),
  ];
}

/** What is filled into which cup, and how it is hidden. */
export function sheetStep(run: RunState, design: Design): Step {
  const alone = design.shuffle !== 'none';
  const smelled = areSmelled(run);
  return {
    key: 'sheet',
    say: alone ? 'Fill all sets before the first one is tried.' : 'Pour the cups. The taster does not watch.',
    more: [
      ...(alone
        ? aloneWords(design.method, design.shuffle)
        : ['Codes on the cups, handed over in this order, left to right. Same amount, same temperature.']),
      ...(design.method.id === 'duo-trio' ? ['R is the reference: it is marked R, not coded.'] : []),
      ...(design.method.id === 'threshold' ? carriedText(run) : []),
    ],
    ...(smelled ? { cautions: [ALL_SMELLED], types: types(fields.smelled, 'yes') } : {}),
    draw: () => <Sheet design={design} />,
    done: alone ? 'All filled: start' : 'Hand over to the taster',
  };
}
