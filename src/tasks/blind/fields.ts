import { answer } from '../engine/answers';
import { choice, given, whole, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { METHODS } from './methods';

/** Of what a sample has more, where that is asked. */
export const attribute = words({
  name: 'attribute',
  title: 'More of what?',
  help: 'Bitter, sweet, grapefruit …',
  max: 40,
});

/** The questions of a blind test, but for its method and its ladder. */
export const fields = {
  /** The number that codes and orders follow from. */
  seed: words({ name: 'seed', title: 'Drawn' }),
  sample: (i: number, title = 'Sample', optional = false) => words({ name: `sample.${i}`, title, max: 40, optional }),
  /** The record of the Shelf that a sample is. */
  from: (i: number) => words({ name: `from.${i}`, title: 'From the Shelf' }),
  /** Places of the samples in the order expected, lowest first. */
  order: words({ name: 'order', title: 'From lowest to highest' }),
  /** Said once that all are smelled. */
  smelled: given('smelled', ['yes']),
  /** What is tapped for a set, and what was locked: codes with spaces between. */
  choice: (i: number) => words({ name: `choice.${i}`, title: 'Tapped' }),
  locked: (i: number) => words({ name: `answer.${i}`, title: 'Answer' }),
  turned: (i: number) => words({ name: `turned.${i}`, title: 'Card tapped' }),
  card: (i: number) => words({ name: `card.${i}`, title: 'Card' }),
  like: (i: number, k: number) => words({ name: `like.${i}.${k}`, title: 'Liking' }),
  served: choice({
    name: 'served',
    title: 'Who fills and serves?',
    options: [
      {
        value: 'alone',
        label: 'I am alone',
        short: 'poured by me alone',
        hint: 'codes are hidden, you shuffle, and what is what shows at the end',
      },
      {
        value: 'served',
        label: 'Someone else',
        short: 'served by someone else',
        hint: 'fills and hands over in the order shown',
      },
    ],
  }),
  /** Whose nose it is, of a panel. */
  assessor: words({
    name: 'assessor',
    title: 'Whose nose',
    max: 12,
    optional: true,
    help: 'An id of a panel, no name: N1, N2 … Tests of the same samples with ids are looked at together, each nose once.',
  }),
  expected: choice({
    name: 'expected',
    title: 'Do you expect an order?',
    preset: 'no',
    options: [
      {
        value: 'no',
        label: 'No',
        short: 'no order expected',
        hint: 'do they differ at all? (Friedman’s test)',
      },
      {
        value: 'yes',
        label: 'Yes',
        short: 'an order expected',
        hint: 'I name it now; is it so? (Page’s test, more sensitive)',
      },
    ],
  }),
  tries: (method: string): Field<number> => {
    const { usual, most } = METHODS.find(({ id }) => id === method) ?? METHODS[0]!;
    const count = { name: 'tries', min: 1, max: most, preset: String(usual) };
    if (method === 'threshold') return whole({ ...count, title: 'Runs through the series', unit: 'runs' });
    return whole({ ...count, title: method === 'triangle' ? 'Triads' : 'Sets of cups', unit: 'sets of cups' });
  },
  risk: choice({
    name: 'risk',
    title: 'False-alarm risk (α): seeing a difference that is not there',
    preset: '0.05',
    options: [
      { value: '0.05', label: '5 in 100', hint: 'usual' },
      { value: '0.01', label: '1 in 100' },
      { value: '0.1', label: '10 in 100', hint: 'for a first look' },
    ],
  }),
};

/** Whether the taster fills the cups, too. */
export function isAlone(run: RunState): boolean {
  return answer(run, fields.served) !== 'served';
}

/** Places of the samples in the order expected, lowest first; null when none is expected, or not all are named yet. */
export function expectedOrder(run: RunState, samples: number): number[] | null {
  if (answer(run, fields.expected) !== 'yes') return null;
  const order = (answer(run, fields.order) ?? '').split(' ').filter(Boolean).map(Number);
  return order.length === samples && order.every((place) => place < samples) ? order : null;
}
