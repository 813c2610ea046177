import { beforeEach, expect, test } from 'vitest';
import { procedureOf } from '../../../src/app/describe/procedure';
import type { Batch } from '../../../src/records/kind/batch';
import { list, takeIn } from '../../../src/records/shelf';
import { batch } from '../../../src/tasks/batch/task';
import { weighAll } from '../../tasks/batch/batchRuns';
import { batchShelf, clearPlan } from '../../tasks/batch/batchShelf';

beforeEach(() => takeIn(batchShelf()));

const kept = () => batch.keep(weighAll({ ...clearPlan, fine: '0.01' }))[0] as Batch; // on this scale all four are diluted first
const dilutions = (made: Batch) =>
  procedureOf(made).flatMap(({ does }) => does.filter((words) => words.startsWith('Dilute first')));

test('what was diluted to be weighed is told first, with its strength by mass', () => {
  expect(dilutions(kept())).toHaveLength(4);
  expect(dilutions(kept())[0]).toMatch(
    /^Dilute first: [\d.]+ g made up to [\d.]+ g with the carrier, for .*, diluted to [\d.]+ % w\/w\.$/,
  );
});

test('also where its name is in another language; a batch of the first version tells it by its name alone', () => {
  const made = kept();
  const named = (name: string, row: Batch['weighed'][number]) => (row.share === undefined ? row : { ...row, name });
  const translated = made.weighed.map((row) => named('Vanillin, verdünnt', row));
  expect(dilutions({ ...made, weighed: translated })).toHaveLength(4);
  const first = made.weighed.map((row) => ({ ...named('vanillin, thinned to 20 %', row), share: undefined }));
  expect(dilutions({ ...made, weighed: first as Batch['weighed'] })).toHaveLength(4);
  const none = first.map((row) => ({ ...row, name: 'vanillin' }));
  expect(dilutions({ ...made, weighed: none as Batch['weighed'] })).toEqual([]);
});

test('the drink is all of the syrup with its water, by volume or by mass as it was planned, and says what it weighs', () => {
  const told = (asked: object) => procedureOf(batch.keep(weighAll({ ...clearPlan, ...asked }))[0] as Batch).at(-1)!;
  expect(told({}).does[0]).toBe('Mix all of the syrup with the water: 1 + 5 by volume.');
  expect(told({ 'throw.by': 'mass' }).does[0]).toBe('Mix all of the syrup with the water: 1 + 5 by mass.');
  expect(told({}).makes).toMatch(/^20\.76 kg: 20\.\d+ ± [\d.]+ L, 10 °Brix/); // 20 L at 1.038 g/mL
});

test('the sugar of a juice in the syrup counts in its °Brix', () => {
  const made = kept();
  const bottle = list('bottle')[0]!;
  const juiceBottle = { ...bottle, id: 'b-juice', holds: { brix: 65 } };
  takeIn([juiceBottle]);
  const syrup = made.weighed.filter(({ into }) => into === 'syrup');
  const sum = (rows: Batch['weighed']) => rows.reduce((all, { massG }) => all + massG.value, 0);
  const massG = { value: 1000, sources: [] };
  const juice = {
    into: 'syrup',
    id: 'juice',
    name: 'juice',
    source: 'b-juice',
    lot: '',
    plannedG: 1000,
    massG,
    own: true,
  } as const;
  const told = procedureOf({ ...made, weighed: [...made.weighed, juice] })
    .map(({ makes = '' }) => makes)
    .join(' ');
  const [, brix] = /([\d.]+) °Brix from its sugar/.exec(told)!;
  const sugar = sum(syrup.filter(({ id }) => id === 'sugar'));
  expect(Number(brix)).toBeCloseTo((100 * (sugar + 650)) / (sum(syrup) + 1000), 1);
});
