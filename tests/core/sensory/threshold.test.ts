import { describe, expect, test } from 'vitest';
import { bestEstimate, groupThreshold, ladder } from '../../../src/core/sensory/threshold';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

const steps = [0.5, 1, 2, 4, 8, 16]; // g/L sucrose

describe('ascending 3-AFC', () => {
  test('six tasters of sucrose: the six estimates, 2.52 g/L together (course exercise, worked by ASTM E679)', () => {
    const answers = ['001111', '010111', '000111', '111111', '001001', '000011'];
    const estimates = answers.map((row) =>
      bestEstimate(
        steps,
        [...row].map((one) => one === '1'),
      ),
    );
    const worked = [1.414214, 2.828427, 2.828427, 0.353553, 11.313708, 5.656854];
    let worst = 0;
    estimates.forEach(({ value }, i) => (worst = Math.max(worst, Math.abs(value - worked[i]!))));
    console.info(`E679 exercise, six best estimates: worst ${worst.toExponential(1)} g/L`);
    expect(worst).toBeLessThan(5e-7);
    expect(estimates.map(({ outside }) => outside)).toEqual([null, null, null, 'below', null, null]);
    const group = groupThreshold(estimates.map(({ value }) => value));
    expect(group.value).toBeCloseTo(2 ** (4 / 3), 12);
    expect(group.sdLog10).toBeCloseTo(0.5184944933092871, 12);
  });

  test('who misses the top lies above the ladder by half a step', () => {
    expect(bestEstimate(steps, [true, true, true, true, true, false])).toEqual({
      value: 16 * Math.SQRT2,
      outside: 'above',
    });
  });

  test('a ladder of factor 3 up to 405 is the published one: 1.667, 5, 15, 45, 135, 405 µg/mL', () => {
    ladder(405, 3, 6).forEach((step, i) => expect(step).toBeCloseTo([1.667, 5, 15, 45, 135, 405][i]!, 3));
  });

  test('who only guesses misses the top in two runs of three', () => {
    const random = seeded(679);
    let above = 0;
    for (let run = 0; run < 6000; run++)
      if (
        bestEstimate(
          steps,
          steps.map(() => random() < 1 / 3),
        ).outside === 'above'
      )
        above++;
    expect(Math.abs(above / 6000 - 2 / 3)).toBeLessThan(4 * Math.sqrt(2 / 9 / 6000));
  });

  test('a ladder that does not rise, or lacks an answer, is refused', () => {
    expect(() => bestEstimate([1, 1], [true, true])).toThrow(Refusal);
    expect(() => bestEstimate([1, 2], [true])).toThrow('2 steps need as many answers, not 1');
    expect(() => ladder(16, 1, 6)).toThrow(Refusal);
    expect(() => groupThreshold([])).toThrow(Refusal);
    expect(groupThreshold([3])).toEqual({ value: expect.closeTo(3, 12), sdLog10: 0 });
  });
});
