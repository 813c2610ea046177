import { beforeEach, expect, test } from 'vitest';
import { linesNow } from '../../../src/app/bench/linesNow';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { count } from '../../../src/tasks/count/task';
import { dilute } from '../../../src/tasks/dilute/task';
import { dose } from '../../../src/tasks/dose/task';
import { sentenceText } from '../../../src/tasks/engine/card';
import { freshRun } from '../../../src/tasks/engine/fold';
import { material, vialOf } from '../../tasks/count/countShelf';

const vial = {
  ...vialOf('card', 0.01),
  code: 'CARD',
  label: { value: 1, basis: '% w/v' as const },
  sort: 'dilution' as const,
};
const test1 = newRecord('test', {} as never);

beforeEach(() => {
  shelf.records.value = new Map();
});

test('a task that was never done keeps its hint', () => expect(linesNow()).toEqual({}));

test('what a tile says is what its card opens with: the bottle that no vial was made from, as strong as last time', () => {
  const [card, lime] = [material('card'), material('lime')];
  const bottles = [card, lime].map(({ id }) =>
    newRecord('bottle', { id: `b-${id}`, material: id, supplier: '', lot: '', grade: 'fit for drinks' }),
  );
  const made = { ...vial, label: { value: 5, basis: '% w/v' as const }, uses: [{ id: 'b-card', massG: 0.1 }] };
  takeIn([card, lime, ...bottles, made]);
  const { dilute: line } = linesNow([dilute]);
  expect(line).toBe('LIME neat to 5 %');
  const [first] = dilute.steps(freshRun);
  expect(sentenceText(freshRun, first!)).toMatch(/^LIME neat to 5 % w\/v/);
});

test('Count and Dose say the formula and the drink of their cards', () => {
  const formula = newRecord('formula', {
    id: 'f',
    root: 'f',
    notes: '',
    name: 'Aperitif 3',
    version: 2,
    lines: [{ material: 'card', name: 'card oil', share: 1 }],
  });
  const base = newRecord('base', {
    name: 'rhubarb soda',
    volumeMl: 330,
    brix: 7,
    abv: 0,
    densityGPerMl: 1.03,
  });
  takeIn([material('card'), vial, formula, base]);
  expect(linesNow([count, dose])).toEqual({ count: 'Aperitif 3, version 2', dose: 'rhubarb soda, 330 mL' });
  expect(sentenceText(freshRun, count.steps(freshRun)[0]!)).toContain('Aperitif 3');
  expect(sentenceText(freshRun, dose.steps(freshRun)[0]!)).toMatch(/330 mL of rhubarb soda|rhubarb soda.*330 mL/);
});

test('without a vial or a bottle they keep their hints', () => {
  expect(linesNow([dilute, count, dose])).toEqual({});
});

test('strips are called by their codes, those that stayed in the fan', () => {
  const strip = (code: string, takenOutAt: string | null) => ({
    vial: code,
    code,
    dips: 1,
    dippedAt: null,
    takenOutAt,
  });
  const layering = newRecord('layering', {
    name: 'fan',
    strips: [strip('PGF', null), strip('RHU', null), strip('HEX', '2026-05-01T10:00:00Z')],
    readings: [],
    verdict: { liking: null, decision: '', words: '' },
  });
  takeIn([layering]);
  expect(linesNow()).toEqual({ layer: 'PGF + RHU last time' });
});

test('a record that breaks its line leaves the others', () => {
  const batch = { ...newRecord('batch', {} as never), name: 'B', drink: undefined };
  shelf.records.value = new Map([
    [test1.id, test1],
    [batch.id, batch as never],
  ]);
  expect(linesNow()).toEqual({ blind: expect.stringMatching(/^Last /) as string });
});
