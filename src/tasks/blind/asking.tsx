import type { DiscriminationTest } from '../../core/sensory/discrimination';
import { attempt, Refused } from '../../workshop/attempt';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';
import { codesIn } from './answers';
import { aloneWords, balanceWords } from './balance';
import { designOf, shuffleOf, type Design } from './design';
import { expectedOrder, fields, isAlone } from './fields';
import { dropFields, ladderFields, unitFields, unitOf } from './ladder';
import type { Method } from './methods';
import { OrderTiles } from './OrderTiles';
import { powerWords as powerWords } from './powerWords';
import {
  ALL_SMELLED,
  areSmelled,
  SMELLED,
  placesOf,
  sampleFields,
  samplesOfRun,
  samplesTyped,
  sampleTrouble,
} from './samples';
import { Sheet } from './Sheet';
import { placesLeft, ShelfPick } from './ShelfPick';

const COUNTED = ['triangle', 'duo-trio', 'paired', 'preference'];

/** The questions before the first sip, but for the choice of the test. */
export function askingSteps(run: RunState, method: Method): Step[] {
  const trouble = sampleTrouble(run, method);
  return [
    { key: 'served', say: 'Who fills and serves?', ask: [fields.served] },
    {
      key: 'samples',
      say: 'What is compared?',
      ask: sampleFields(run, method),
      offers: [{ words: 'Pick from the Shelf', go: 'shelf' }],
      next: method.id === 'ranking' ? 'expected' : method.id === 'threshold' ? 'unit' : 'plan',
      ...(trouble ? { problem: trouble } : {}),
    },
    ...(run.at === 'shelf' ? [shelfStep(run, method)] : []),
    ...(method.id === 'ranking' ? expectedSteps(run) : []),
    ...(method.id === 'threshold' ? unitSteps(run) : []),
    planStep(run, method),
  ];
}

function shelfStep(run: RunState, method: Method): Step {
  const next = placesLeft(run, method)[0];
  return {
    key: 'shelf',
    say: next === undefined ? 'All are picked.' : `Tap ‹${placesOf(method)[next]!}›.`,
    more:
      samplesTyped(run, method).length > 0
        ? [
            samplesTyped(run, method)
              .map(({ name }) => name)
              .join(', '),
          ]
        : [],
    draw: (walk) => <ShelfPick walk={walk} method={method} />,
    done: 'Back to the samples',
    next: 'samples',
  };
}

/** Whether an order is expected, and which: said before the first sip, or it proves nothing. */
function expectedSteps(run: RunState): Step[] {
  const ask: Step = {
    key: 'expected',
    say: 'Do you expect an order?',
    more: ['It counts only when it is said before the first sip.'],
    ask: [fields.expected],
  };
  if (valueOf(run, fields.expected) !== 'yes') return [ask];
  const samples = samplesOfRun(run) ?? [];
  const order: Step = {
    key: 'order',
    say: 'Tap them from least to most.',
    draw: (walk) => (
      <OrderTiles
        ordered
        label="Samples, from least to most"
        tiles={samples.map(({ name }, value) => ({ value, words: name }))}
        chosen={codesIn(walk.state.value.typed['order']).filter((place) => place < samples.length)}
        onChoose={(chosen) => void walk.happen({ type: 'typed', key: 'order', text: chosen.join(' ') })}
      />
    ),
    ...(expectedOrder(run, samples.length) ? {} : { problem: 'Tap every sample once, from least to most.' }),
  };
  return [ask, order];
}

function unitSteps(run: RunState): Step[] {
  const unit: Step = { key: 'unit', say: 'How is the strength told?', ask: unitFields() };
  if (unitOf(run) !== 'drops') return [unit];
  return [
    unit,
    {
      key: 'drops',
      say: 'Drops of what, into how much?',
      more: ['Only vials that are fit for drinks stand here.'],
      ask: dropFields(run),
    },
  ];
}

function planStep(run: RunState, method: Method): Step {
  const tries = valueOf(run, fields.tries(method.id));
  const risk = Number(valueOf(run, fields.risk) ?? NaN);
  const there = run.at === 'plan'; // the sums take a moment, so they are made only where they are read
  const ladder = method.id === 'threshold';
  const laid = there ? attempt(() => designOf(run)) : null;
  const counted = there && COUNTED.includes(method.id) && tries !== null && risk > 0;
  const samples = samplesOfRun(run)?.length ?? 0;
  return {
    key: 'plan',
    say: ladder ? 'Which ladder, and how many times?' : 'How many sets?',
    more: [
      ...(counted ? powerWords(method.id as DiscriminationTest, tries, risk) : []),
      ...(there && tries !== null && samples > 1
        ? [balanceWords(method, tries, samples, shuffleOf(method, tries, isAlone(run)))]
        : []),
    ],
    ask: [fields.tries(method.id), ...(ladder ? ladderFields(run) : [fields.risk])],
    ...(laid instanceof Refused ? { problem: laid.problem } : {}),
    done: 'Lay it out',
  };
}

/** What is filled into which cup, and how it is hidden. */
export function sheetStep(run: RunState, design: Design): Step {
  const alone = design.shuffle !== 'none';
  const smelled = areSmelled(run);
  return {
    key: 'sheet',
    say: alone ? 'Fill all sets before the first sip.' : 'Fill the cups. The taster does not look.',
    more: [
      ...(alone
        ? aloneWords(design.method, design.shuffle)
        : ['Codes on the cups, handed over in this order, left to right. Same amount, same warmth.']),
      ...(design.method.id === 'duo-trio' ? ['R is the reference: it is marked R, not coded.'] : []),
    ],
    ...(smelled ? { cautions: [ALL_SMELLED], types: { [SMELLED]: 'yes' } } : {}),
    draw: () => <Sheet design={design} />,
    done: alone ? 'All filled: start' : 'Hand over to the taster',
  };
}
