import { beforeEach, describe, expect, test } from 'vitest';
import { describe as inWords } from '../../../src/app/describe/describe';
import { recordTable } from '../../../src/app/record/paper';
import { sheetRows } from '../../../src/app/sheet/sheetRows';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { measured } from '../../../src/core/number/measured';
import type { Batch } from '../../../src/records/kind/batch';
import type { Tasting } from '../../../src/records/kind/drink';
import type { Use } from '../../../src/records/kind/quantity';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { material, vialOf } from '../../tasks/count/countShelf';

const sure = (value: number) => measured(value, 0, { id: 'x', words: 'x' });
const use = (id: string, drops: number, facts: Partial<Use> = {}): Use => ({
  id,
  massG: 0.015 * drops,
  u: 0.001,
  how: 'counted',
  drops,
  code: id.toUpperCase(),
  name: `${id} oil`,
  strength: '1 % w/v',
  lot: 'L7',
  supplier: 'Pebblewick',
  dropper: { id: 'pip', name: 'Pipette 1' },
  ...facts,
});
const trial = {
  ...vialOf('t', 0.005),
  uses: [use('ging', 3), use('swor', 12, { lot: 'S2' })],
  done: {
    from: '2026-05-04T10:00:00.000Z',
    to: '2026-05-04T10:20:00.000Z',
    plan: {
      lines: [
        { id: 'ging', code: 'GING', drops: 2 },
        { id: 'swor', code: 'SWOR', drops: 12 },
      ],
      error: 0.073,
    },
    slips: [{ id: 'ging', what: 'GING', planned: 2, counted: 3, unit: 'drops' as const, way: 'Left as it is' }],
  },
};
const tasting: Tasting = newRecord('tasting', {
  base: { name: 'soda', volumeMl: 250, brix: 7, abv: 0, densityGPerMl: 1.026 },
  doses: [{ vial: 't', code: 'T1', drops: 8, massG: sure(0.12) }],
  reached: ['ging', 'swor'].map((id, i) => ({ material: id, name: `${id} oil`, mgPerKg: sure(12 - 4 * i) })),
  verdict: 'Good.',
  liking: 7,
  uses: [use('t', 8, { code: 'T1' })],
});
const factsOf = (record: Parameters<typeof inWords>[0]) => inWords(record).facts!;

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn([material('ging'), material('swor')]);
});

describe('the page of a trial', () => {
  test('shows its drops by vial, with strength, mg and lot, the plan, and what did not go by it', () => {
    const facts = factsOf(trial);
    expect(facts).toContainEqual(['GING 1 %', '3 drops, 45.0 ± 2.0 mg', 'counted with Pipette 1, Pebblewick, lot L7']);
    expect(facts).toContainEqual([
      'SWOR 1 %',
      '12 drops, 180.0 ± 2.0 mg',
      'counted with Pipette 1, Pebblewick, lot S2',
    ]);
    expect(facts).toContainEqual(['Drops in all', '15 drops']);
    expect(facts).toContainEqual(['Planned', '2 drops GING, 12 drops SWOR; at most 7.3 % off']);
    expect(facts).toContainEqual(['Not as planned: GING', '3 drops, not 2: Left as it is']);
    expect(facts.map(([label]) => label)).not.toContain('What went in');
    expect(inWords(trial).did).toBe('3 drops GING 1 %, 12 drops SWOR 1 %');
  });

  test('tells its drops as they were when the vials are gone or have another code by now', () => {
    takeIn([{ ...vialOf('ging', 0.02), code: 'OTHER' } as never]);
    expect(factsOf(trial)[1]![0]).toBe('GING 1 %');
  });

  test('of the first version says that the drops were not kept, and shows the grams that were', () => {
    const old = { ...trial, uses: [{ id: 'v', massG: 0.18 }], done: undefined };
    takeIn([vialOf('v', 0.01)]);
    const facts = factsOf(old as never);
    expect(facts).toContainEqual(['V 1 % w/w', '180 mg', 'Saltmarsh, lot 1']);
    expect(facts).toContainEqual(['What went in', 'Made with an earlier version: the drops were not kept.']);
    expect(inWords(old as never).did).toBeUndefined();
  });

  test('as a table has a row for each, with its ±', () => {
    const rows = recordTable(trial).split('\r\n');
    expect(rows).toContain('went in,how,drops,mL,g,± g (k = 2),dropper,supplier,lot');
    expect(rows.find((row) => row.startsWith('GING 1 %,counted'))).toMatch(
      /,counted,3,,0\.0450,0\.0020,Pipette 1,Pebblewick,L7$/,
    );
  });
});

describe('the page of a drink', () => {
  test('shows its drops and, first of its numbers, all of it together', () => {
    const { results, facts, did } = inWords(tasting);
    expect(results![0]).toMatchObject({ label: 'All neat material together', unit: 'mg/kg', amount: { value: 20 } });
    expect(facts!.map(([label, text]) => [label, text.split(',')[0]])).toContainEqual(['T1 1 %', '8 drops']);
    expect(did).toBe('8 drops T1 1 % into 250 mL');
  });

  test('of the first version shows the drops that it kept', () => {
    const old: Tasting = { ...tasting, uses: [{ id: 't', massG: 0.12 }] };
    expect(inWords(old).facts).toContainEqual(['T1', '8 drops']);
  });
});

test('page, sheet and table of a batch name what was not as planned, and what was lost', () => {
  const batch = newRecord('batch', {
    name: 'First 20 L',
    formula: { id: 'f', name: 'Orchard', version: 1 },
    lines: [],
    asked: {},
    weighed: [],
    drink: { litres: sure(20), brix: sure(7), abv: sure(0), densityGPerMl: sure(1.026), emulsion: false },
    reached: [],
    checks: [],
    jurisdiction: 'EU',
    madeOn: '2026-05-04',
    notes: '',
    uses: [],
  });
  const slips = [
    { id: 'x', what: 'rhubarb', planned: 0.272, counted: 0.35, unit: 'g' as const, way: 'All scaled up to it' },
  ];
  const over: Batch = { ...batch, done: { from: '', to: '', slips } };
  const words = (one: Batch) => sheetRows(one).map((row) => row.words);
  expect(words(over)).toContain('rhubarb: 0.35 g, not 0.272 g: All scaled up to it');
  expect(batchTable(over)).toContain('rhubarb,0.272,0.35,All scaled up to it');
  expect(words(batch)).not.toContain('Not as planned');
  const why = 'in a vessel that was begun again';
  const spilt: Batch = {
    ...batch,
    uses: [use('ging', 0, { massG: 0.5, how: 'weighed', strength: 'neat' })],
    lost: [{ id: 'ging', massG: 0.123456, why }],
  };
  expect(inWords(spilt).facts).toContainEqual(['Lost: GING neat', '0.123 g', `${why}, lot L7`]);
  expect(words(spilt)).toEqual(expect.arrayContaining(['Lost: GING neat', `${why}, lot L7`]));
  expect(batchTable(spilt)).toContain(`Lost: GING neat,0.123 g,"${why}, lot L7"`);
  expect(batchTable(batch)).not.toContain('Lost');
});
