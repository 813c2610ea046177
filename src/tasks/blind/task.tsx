import type { DiscriminationTest } from '../../core/discrimination';
import type { AnyRecord } from '../../records/kinds';
import { newRecord } from '../../records/shelf';
import { textOf, valueOf } from '../fields';
import type { RunState } from '../fold';
import type { Step, Task } from '../task';
import { answersOf } from './answers';
import { designOf, type Design } from './design';
import { fields, isAlone, ladderFields, methodOf, sampleFields, sampleTrouble, type Method } from './fields';
import { outcomeOf } from './outcome';
import { promise } from './promise';
import { Revealed } from './Revealed';
import { Sheet } from './Sheet';
import { tastingSteps } from './tasting';
import { TestChoice } from './TestChoice';
import './blind.css';

const COUNTED = ['triangle', 'duo-trio', 'paired', 'preference'];

function planStep(run: RunState, method: Method): Step {
  const tries = valueOf(run, fields.tries(method.id));
  const risk = Number(valueOf(run, fields.risk) ?? NaN);
  const there = run.at === 'plan'; // the sums take a moment, so they are made only where they are read
  const counted = there && COUNTED.includes(method.id) && tries !== null && risk > 0;
  const ladder = method.id === 'threshold';
  return {
    key: 'plan',
    say: ladder ? 'Which ladder, and how many times?' : 'How many sets?',
    more: counted ? promise(method.id as DiscriminationTest, tries, risk) : [],
    ask: [fields.tries(method.id), ...(ladder ? ladderFields() : [fields.risk])],
    done: 'Lay it out',
  };
}

function sheetStep(run: RunState, design: Design): Step {
  const alone = isAlone(run);
  return {
    key: 'sheet',
    say: alone ? 'Write the codes under the cups, and fill them.' : 'Fill the cups. The taster does not look.',
    more: [
      alone
        ? 'Fill all sets before the first sip; by then nobody remembers a code. Put each set by itself.'
        : 'Codes on the cups, handed over in this order, left to right. Same amount, same warmth.',
      ...(design.method.id === 'duo-trio' ? ['R is the reference: it is marked R, not coded.'] : []),
    ],
    draw: () => <Sheet design={design} />,
    done: alone ? 'All filled: start' : 'Hand over to the taster',
  };
}

function revealStep(run: RunState, design: Design): Step {
  const answers = answersOf(run, design);
  const { sentence, more, results } = outcomeOf(design, answers);
  return {
    key: 'reveal',
    say: sentence,
    more,
    results,
    draw: () => <Revealed design={design} answers={answers} />,
    done: 'Keep in the Book',
  };
}

function steps(run: RunState): Step[] {
  const method = methodOf(run);
  const first: Step = {
    key: 'test',
    say: 'What do you want to know?',
    draw: (walk) => <TestChoice walk={walk} />,
    ...(method ? {} : { problem: 'Tap a test.' }),
  };
  if (!method) return [first];
  const trouble = sampleTrouble(run, method);
  const asked: Step[] = [
    first,
    { key: 'served', say: 'Who fills and serves?', ask: [fields.served] },
    {
      key: 'samples',
      say: 'What is compared?',
      ask: sampleFields(method),
      ...(trouble ? { problem: trouble } : {}),
    },
    planStep(run, method),
  ];
  const design = designOf(run);
  if (!design) return asked;
  const answered = answersOf(run, design).length;
  // Once answers are in, the design stands: its questions are behind.
  const before = answered > 0 ? [] : [...asked, sheetStep(run, design)];
  const all = answered === design.sets.length;
  return [...before, ...tastingSteps(run, design), ...(all ? [revealStep(run, design)] : [])];
}

function keep(run: RunState): AnyRecord[] {
  const design = designOf(run);
  const answers = design ? answersOf(run, design) : [];
  if (!design || answers.length < design.sets.length) throw new RangeError('Not every set has been answered yet.');
  const { sentence, p } = outcomeOf(design, answers);
  return [
    newRecord('test', {
      name: nameOf(run),
      test: design.method.id,
      served: isAlone(run) ? 'alone' : 'served',
      samples: [...design.samples],
      risk: design.risk,
      ...(design.levels.length > 0 ? { steps: [...design.levels], unit: 'mg/kg' } : {}),
      sets: design.sets.map(({ cups }, i) => ({
        cups: cups.map((cup) => ({ ...cup })),
        answer: [...answers[i]!.codes],
        ...(answers[i]!.liking.length > 0 ? { liking: [...answers[i]!.liking] } : {}),
      })),
      outcome: sentence,
      p,
    }),
  ];
}

function nameOf(run: RunState): string {
  const method = methodOf(run);
  const names = method
    ? sampleFields(method).flatMap((field) => (field.name.startsWith('sample.') ? textOf(run, field).trim() || [] : []))
    : [];
  return names.length > 0 ? `${method!.name.split(':')[0]} · ${names.join(', ')}` : 'Blind test';
}

/** Can they tell? Codes, balanced orders, locked answers, and what it means. */
export const blind: Task = { id: 'blind', recorded: true, title: nameOf, steps, keep };
