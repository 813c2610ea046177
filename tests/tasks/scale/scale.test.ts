import { expect, test } from 'vitest';
import { scale } from '../../../src/tasks/scale/task';
import { startWalking } from '../walking';

const known = { readability: '0.01', capacity: '200' };

test('a scale is kept with its step, what it carries, and what a coin weighed each time', () => {
  const walk = startWalking(scale, { ...known, name: 'Pocket', 'coin.1': '3.06', 'coin.2': '3,06', 'coin.3': '3.07' });
  expect(walk.keep()).toMatchObject([
    { kind: 'scale', name: 'Pocket', readabilityG: 0.01, capacityG: 200, coinG: [3.06, 3.06, 3.07] },
  ]);
});

test('what was not tried is not known: no coin, or one time only', () => {
  const [none] = startWalking(scale, { readability: '0.01' }).keep();
  expect(none).toMatchObject({ name: 'Scale', readabilityG: 0.01 });
  expect(none).not.toHaveProperty('coinG');
  expect(none).not.toHaveProperty('capacityG');
  expect(startWalking(scale, { ...known, 'coin.1': '3.06' }).keep()[0]).not.toHaveProperty('coinG');
});

test('without its step nothing is kept', () => {
  expect(() => startWalking(scale).next()).toThrow(/still empty/);
  expect(() => startWalking(scale).keep()).toThrow('Choose its smallest step');
});
