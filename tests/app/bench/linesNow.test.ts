import { beforeEach, expect, test } from 'vitest';
import { linesNow } from '../../../src/app/bench/linesNow';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { vialOf } from '../../tasks/count/countShelf';

const vial = {
  ...vialOf('card', 0.01),
  code: 'CARD',
  label: { value: 1, basis: '% w/v' as const },
  sort: 'dilution' as const,
};
const tasting = newRecord('tasting', {
  base: { name: 'rhubarb soda', volumeMl: 250, brix: 7, abv: 0, densityGPerMl: 1.03 },
  doses: [],
  reached: [],
  verdict: '',
  liking: null,
  uses: [],
});

beforeEach(() => {
  shelf.records.value = new Map();
});

test('a task that was never done keeps its hint', () => expect(linesNow()).toEqual({}));

test('a task says what it would do now, by what was done last', () => {
  takeIn([vial, tasting]);
  expect(linesNow()).toEqual({ dilute: 'CARD to 1 %, as last time', dose: 'rhubarb soda, 250 mL' });
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
    [tasting.id, tasting],
    [batch.id, batch as never],
  ]);
  expect(linesNow()).toEqual({ dose: 'rhubarb soda, 250 mL' });
});
