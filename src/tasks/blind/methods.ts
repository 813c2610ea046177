import { answer } from '../engine/answers';
import { choice } from '../engine/fields';
import type { RunState } from '../engine/fold';

/** A method of tasting blind. */
export interface Method {
  readonly id: 'triangle' | 'duo-trio' | 'paired' | 'preference' | 'ranking' | 'threshold' | 'hedonic';
  readonly name: string;
  readonly more: string;
  /** How a set is answered. */
  readonly question: string;
  /** Tries proposed; one try is one set of cups, for a threshold one run up the ladder. */
  readonly usual: number;
  readonly most: number;
}

export const METHODS: readonly Method[] = [
  {
    id: 'triangle',
    name: 'Triangle',
    more: 'Three cups, one is odd: is there a difference? (ISO 4120)',
    question: 'Which one is odd?',
    usual: 12,
    most: 60,
  },
  {
    id: 'duo-trio',
    name: 'Duo-trio',
    more: 'A reference and two cups: which is like it? (ISO 10399)',
    question: 'Which one is like the reference?',
    usual: 16,
    most: 60,
  },
  {
    id: 'paired',
    name: 'Paired: which has more?',
    more: 'Two cups: the second sample should have more of it (ISO 5495)',
    question: 'Which one has more of it?',
    usual: 12,
    most: 60,
  },
  {
    id: 'preference',
    name: 'Paired: which is liked?',
    more: 'Two cups, no right answer (ISO 5495)',
    question: 'Which one do you like better?',
    usual: 12,
    most: 60,
  },
  {
    id: 'ranking',
    name: 'Ranking',
    more: 'Three to six samples in order (ISO 8587)',
    question: 'From least to most',
    usual: 6,
    most: 30,
  },
  {
    id: 'threshold',
    name: 'Threshold',
    more: 'Weak to strong, three cups each step, one holds it (ASTM E679 type)',
    question: 'Which one holds it?',
    usual: 2,
    most: 6,
  },
  {
    id: 'hedonic',
    name: 'Liking',
    more: 'Two to six samples on the nine-point scale',
    question: 'How do you like it?',
    usual: 4,
    most: 30,
  },
];

/** The question for the method. */
export const methodField = choice({
  name: 'test',
  title: 'Test',
  options: METHODS.map(({ id, name, more }) => ({ value: id, label: name, hint: more, short: name.split('?')[0]! })),
});

/** The method chosen. */
export function methodOf(run: RunState): Method | undefined {
  return METHODS.find(({ id }) => id === answer(run, methodField));
}
