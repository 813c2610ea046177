import { beforeEach, describe, expect, test } from 'vitest';
import type { Test } from '../../../src/records/kind/test';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { panelOf, panelOutcome } from '../../../src/workshop/sensory/panel';

beforeEach(() => void (shelf.records.value = new Map()));

const triangle = (assessor: string | undefined, right: number, tries: number, samples = ['old', 'new']): Test =>
  newRecord('test', {
    name: 'Triangle',
    test: 'triangle',
    served: 'served',
    samples,
    risk: 0.05,
    outcome: '',
    p: null,
    ...(assessor === undefined ? {} : { assessor }),
    sets: Array.from({ length: tries }, (_, i) => ({
      cups: [
        { code: 1, sample: 0 },
        { code: 2, sample: 1 },
        { code: 3, sample: 0 },
      ],
      answer: [i < right ? 2 : 3],
    })),
  });

describe('the panel of a test', () => {
  test('is of the same method and samples, sessions of one nose together; without an id there is none', () => {
    const first = triangle('N1', 4, 6);
    takeIn([
      first,
      triangle('N1', 2, 6),
      triangle('N2', 5, 6),
      triangle('N3', 6, 6, ['old', 'other']),
      triangle(undefined, 6, 6),
    ]);
    expect(panelOf(first).map(({ id, sessions }) => [id, sessions.length])).toEqual([
      ['N1', 2],
      ['N2', 1],
    ]);
    const outcome = panelOutcome(first);
    expect(outcome).toMatchObject({ kind: 'told', result: { noses: 2, right: 11, tries: 18 } });
    expect(panelOutcome(triangle(undefined, 6, 6))).toBeNull();
  });

  test('of a ranking each nose is one row: six sessions of one nose are no six noses', () => {
    const ranked = (assessor: string, order: readonly number[]): Test => ({
      ...triangle(assessor, 0, 0, ['a', 'b', 'c']),
      test: 'ranking',
      sets: [{ cups: [0, 1, 2].map((sample) => ({ code: sample + 1, sample })), answer: [...order] }],
    });
    const alone = Array.from({ length: 6 }, () => ranked('N1', [1, 2, 3]));
    takeIn(alone);
    const of = panelOutcome(alone[0]!)!;
    expect(of.noses).toHaveLength(1);
    expect(of.kind === 'ordered' && of.p).toBeCloseTo(1, 9);
    takeIn(['N2', 'N3', 'N4'].map((id) => ranked(id, [1, 2, 3])));
    const all = panelOutcome(alone[0]!)!;
    expect(all.kind === 'ordered' && all.means).toEqual([1, 2, 3]);
    expect(all.kind === 'ordered' && all.p).toBeLessThan(0.01);
  });
});
