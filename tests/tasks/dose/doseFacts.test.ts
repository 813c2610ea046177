import { beforeEach, expect, test } from 'vitest';
import type { Tasting } from '../../../src/records/kind/drink';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { dose } from '../../../src/tasks/dose/task';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { askedIn } from '../../../src/tasks/engine/lastTime';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { material, pipette, vialOf } from '../count/countShelf';
import { asLeft } from '../walking';

const drink = { 'base.name': 'soda', 'base.brix': '7', 'base.abv': '0', 'base.ml': '250' };
const typed = {
  vial: 'v1',
  dropper: 'pip',
  aim: '12',
  ...drink,
  'more.1': 'yes',
  'vial.2': 'v2',
  'dropper.2': 'pip',
  liking: '7',
};

function walked(answers: Record<string, string>, drops: Record<string, number>): RunState {
  const all = [
    ...Object.entries(answers).map(([key, text]) => ({ type: 'typed' as const, key, text })),
    ...Object.entries(drops).map(([key, by]) => ({ type: 'count' as const, key, by })),
  ];
  return asLeft(dose, fold(all.map((one, seq) => ({ run: 'r', seq, at: '', ...one }))));
}

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('card'), material('hex'), ...pipette]);
  takeIn([vialOf('v1', 0.01, { material: 'card' }), vialOf('v2', 0.005, { material: 'hex' })]);
});

test('a drink keeps its drops with lots and dropper; what was asked for and fell otherwise is told', () => {
  const run = walked(typed, { drops: 22, 'drops.2': 5 });
  const [tasting] = dose.keep(run) as [Tasting];
  expect(tasting.uses).toMatchObject([
    { id: 'v1', how: 'counted', drops: 22, code: 'V1', strength: '1 % w/w', lot: '1', dropper: { id: 'pip' } },
    { id: 'v2', how: 'counted', drops: 5, code: 'V2', strength: '0.5 % w/w' },
  ]);
  expect(tasting.uses.map(({ massG }) => massG)).toEqual(tasting.doses.map(({ massG }) => massG.value));
  const { plan, slips } = dose.done!(run, []);
  expect(plan!.lines).toMatchObject([{ id: 'v1', code: 'V1 1 % w/w' }]);
  expect(slips).toEqual([
    { id: 'v1', what: 'V1 1 % w/w', planned: plan!.lines[0]!.drops, counted: 22, unit: 'drops', way: 'By taste' },
  ]);
});

test('made again it begins with the drops of then, in the drink of then, vial after vial', () => {
  const run = walked(typed, { drops: 22, 'drops.2': 5 });
  const kept = dose.keep(run);
  takeIn(kept);
  const then = newRecord('run', { id: 'r', task: 'dose', kept: kept.map(({ id }) => id), title: '' });
  const again = repeatOf(dose, then, run);
  expect(again.differences).toEqual([]);
  const steps = dose.steps(walked(again.typed, {}));
  expect(steps.map(({ key }) => key)).toEqual(['glass.1', 'glass.2']);
  expect([steps[0]!.counting!.target, steps[1]!.counting!.target]).toEqual([22, 5]);
  const [first, second] = [
    kept[0] as Tasting,
    dose.keep(walked({ ...again.typed, liking: '6' }, { drops: 22, 'drops.2': 5 }))[0] as Tasting,
  ];
  expect(second.base).toEqual(first.base);
  expect(second.reached).toEqual(first.reached);
});

test('with a vial erased since, every question is asked again', () => {
  const run = walked(typed, { drops: 22, 'drops.2': 5 });
  const kept = dose.keep(run);
  takeIn(kept);
  const then = newRecord('run', { id: 'r', task: 'dose', kept: kept.map(({ id }) => id), title: '' });
  const left = new Map(shelf.records.value);
  left.delete('v2');
  shelf.records.value = left;
  const again = repeatOf(dose, then, run);
  expect(again.differences).toEqual([
    { words: 'V2 0.5 % w/w is no longer on the Shelf', then: 'V2 0.5 % w/w', now: 'no other is known' },
  ]);
  const steps = dose.steps(walked(again.typed, {}));
  expect(steps.map(({ key }) => key)).toEqual(['glass.1', 'glass.2']);
  expect(steps[1]!.counting).toBeUndefined(); // the second vial is asked for
});

test('a repeat that the first version began still counts to the drops of then', () => {
  const { aim: _, ...rest } = typed;
  const run = walked({ ...rest, exactly: 't1', 'again.drops': '22', 'again.drops.2': '5' }, {});
  expect(dose.steps(run).map(({ counting }) => counting!.target)).toEqual([22, 5]);
  expect(dose.steps(run)[0]!.card!.slots!['aim']!.shows).toBe('22 drops');
});

test('the next drink of the material begins as this one: vial, dropper, drink, amount, target', () => {
  const { 'more.1': _, 'vial.2': __, 'dropper.2': ___, ...one } = typed;
  const run = walked(one, { drops: 22 });
  const [tasting, base] = dose.keep(run) as [Tasting, Tasting];
  takeIn([{ ...tasting, done: { from: '', to: '', asked: askedIn(run, dose.remembers!) } }, base]);
  const asked = dose.steps(fold([]))[0]!.ask!;
  const inThem = Object.fromEntries(asked.map(({ name, preset }) => [name, preset]));
  expect(inThem).toEqual({ vial: 'v1', 'base.ml': '250', base: base.id, aim: '12', dropper: 'pip' });
  const other = dose.steps(walked({ vial: 'v2' }, {}))[0]!.ask!.find(({ name }) => name === 'aim')!;
  expect(other.preset).toBe(''); // a level is not that of another material
});
