import { amount, choice, given, optionalAmount, pick } from '../../engine/fields';

/** Questions of a batch that are asked only of some: ingredients of one's own, what is lost, and the vessel. */
export const moreFields = {
  own: (n: number) => pick({ name: `own.${n}`, title: 'Ingredient of your own' }),
  ownPerL: (n: number) =>
    amount({ name: `own.${n}.g`, title: 'In a litre of drink', unit: 'g/L', above: 0, max: 1500 }),
  ownInto: (n: number) =>
    choice({
      name: `own.${n}.into`,
      title: 'Where it goes',
      preset: 'syrup',
      options: [
        { value: 'syrup', label: 'Into the syrup' },
        { value: 'drink', label: 'Into the drink', hint: 'after the syrup and its water' },
      ],
    }),
  loss: amount({
    name: 'loss',
    title: 'Lost on the way to the bottle',
    unit: '%',
    min: 0,
    max: 50,
    preset: '0',
    help: 'In vessels, hoses and filters. So much more is made.',
  }),
  vessel: optionalAmount({
    name: 'vessel',
    title: 'Largest vessel',
    unit: 'L',
    above: 0,
    max: 100_000,
    help: 'Optional. The drink then has to fit it, with room to stir.',
  }),
  /** Said when the page is left: each weighing goes on the scale that suits it. Runs of older versions have two scales for two vessels. */
  byCapacity: given('weighing', ['yes']),
};
