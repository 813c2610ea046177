import { describe, expect, test } from 'vitest';
import { waterDensity } from '../../src/core/liquid/water';
import { celsius } from '../../src/core/number/units';
import { Refusal } from '../../src/core/text/refusal';
import { attempt, outcome, Refused } from '../../src/workshop/attempt';

const endless = (n: number): number => endless(n + 1) + 1;

describe('an attempt', () => {
  test('hands back what the work gives', () => {
    expect(attempt(() => 3)).toBe(3);
    expect(attempt(() => null)).toBeNull();
    expect(outcome(() => null)).toEqual({ value: null, problem: null });
  });

  test('hands back the sentence of a refusal, with the names that the person knows', () => {
    const hot = attempt(() => waterDensity(celsius(60)));
    expect(hot).toBeInstanceOf(Refused);
    expect(hot).toEqual({ problem: 'Water density is known for 0–40 °C, not for 60 °C.' });
    const empty = () => {
      throw new Refusal('{vial} is empty', { vial: { id: 'v1' } });
    };
    expect(attempt(empty, () => 'CI-10')).toEqual({ problem: 'CI-10 is empty.' });
    expect(outcome(empty)).toEqual({ value: null, problem: 'V1 is empty.' });
  });

  test.each([
    ['an invalid date', () => new Date(NaN).toISOString()],
    ['endless recursion', () => endless(0)],
    ['200 decimals', () => (1).toFixed(200)],
    ['a list of a negative length', () => new Array(-1)],
    ['nothing where something was expected', () => (null as unknown as { x: number }).x],
    [
      'any other error',
      () => {
        throw new Error('no');
      },
    ],
  ])('lets a fault through: %s', (_, work) => {
    expect(() => attempt<unknown>(work)).toThrow(Error);
    expect(() => attempt<unknown>(work)).not.toThrow(Refusal);
  });
});
