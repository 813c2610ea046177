import type { Test } from '../../records/kind/test';
import type { Result } from '../../ui/controls/result';
import type { Design } from './design';
import { METHODS } from './methods';
import { outcomeOf } from './outcome';

/** The numbers of a blind test in the Book, each with how it was worked out; worked out again from its locked answers. */
export function resultsOfTest(test: Test): readonly Result[] {
  const method = METHODS.find(({ id }) => id === test.test);
  if (!method) return [];
  const levels = test.steps ?? [];
  const design: Design = {
    method,
    levels,
    samples: test.samples,
    risk: test.risk,
    unit: test.unit ?? '',
    sets: test.sets.map(({ cups }) => ({ cups })),
    expected: test.expected ?? null,
    drops: null, // the drink in the cups is not kept; what it came to stands in the outcome
    shuffle: 'none',
  };
  const answers = test.sets.map(({ answer, liking = [] }) => ({ codes: answer, liking }));
  return outcomeOf(design, answers).results;
}
