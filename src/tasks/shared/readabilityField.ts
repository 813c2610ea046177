import { amount } from '../engine/fields';

/** The readability of the scale that something is weighed on, g; a pocket scale's until it is said. Common practice. */
export const readability = amount({
  name: 'readability',
  title: 'Readability of the scale',
  unit: 'g',
  above: 0,
  max: 1,
  preset: '0.01',
});
