import { choice, valueOf, whole, words, type Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { METHODS } from './methods';

/** Of what a sample has more, where that is asked. */
export const attribute = words({
  name: 'attribute',
  title: 'More of what?',
  help: 'Bitter, sweet, grapefruit …',
  max: 40,
});

/** The questions of a blind test, but for its samples and its ladder. */
export const fields = {
  served: choice({
    name: 'served',
    title: 'Who fills and serves?',
    options: [
      { value: 'alone', label: 'I am alone', hint: 'codes are hidden, you shuffle, and what is what shows at the end' },
      { value: 'served', label: 'Somebody else', hint: 'fills and hands over in the order shown' },
    ],
  }),
  expected: choice({
    name: 'expected',
    title: 'Do you expect an order?',
    preset: 'no',
    options: [
      { value: 'no', label: 'No', hint: 'do they differ at all? (Friedman’s test)' },
      { value: 'yes', label: 'Yes', hint: 'I say it now; is it so? (Page’s test, notices more)' },
    ],
  }),
  tries: (method: string): Field<number> => {
    const { usual, most } = METHODS.find(({ id }) => id === method) ?? METHODS[0]!;
    return whole({
      name: 'tries',
      title: method === 'threshold' ? 'Runs up the ladder' : method === 'triangle' ? 'Triads' : 'Sets of cups',
      unit: method === 'threshold' ? 'runs' : 'sets',
      min: 1,
      max: most,
      preset: String(usual),
    });
  },
  risk: choice({
    name: 'risk',
    title: 'Risk of calling a difference that is not there',
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
  return valueOf(run, fields.served) !== 'served';
}

/** Places of the samples in the order expected, lowest first; null when none is expected, or not all are named yet. */
export function expectedOrder(run: RunState, samples: number): number[] | null {
  if (valueOf(run, fields.expected) !== 'yes') return null;
  const order = (run.typed['order'] ?? '').split(' ').filter(Boolean).map(Number);
  return order.length === samples && order.every((place) => place < samples) ? order : null;
}
