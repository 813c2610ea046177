import { beforeEach, describe, expect, test } from 'vitest';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { calledOf, labelTagOf, strengthWords, tagOf, tagOfId } from '../../../src/workshop/thing/labelled';
import { freeVialCode, numberedBatchCode } from '../../../src/workshop/thing/vialCode';
import { vialRecord } from '../../browser/benchRecords';

const card = (facts: object = {}) => ({ ...vialRecord({ code: 'CARD', name: 'cardamom oil' }), ...facts });
const usedUp = { weighed: [{ at: '2026-06-01T10:00:00Z', left: { value: 0, sources: [] } }] };

beforeEach(() => void (shelf.records.value = new Map()));

describe('the tag of a vial', () => {
  test.each([
    [1, '% w/v', '1 %'],
    [0.1, '% w/v', '0.1 %'],
    [0.05, '% w/v', '0.05 %'],
    [1.067, '% w/v', '1.07 %'],
    [1, '% w/w', '1 % w/w'],
    [2.5, '% v/v', '2.5 % v/v'],
    [250, 'mg/kg', '250 mg/kg'],
    [100, 'mg/L', '100 mg/L'],
  ])('%s %s is written as %s: the usual basis of the bench goes without saying', (value, basis, words) => {
    expect(strengthWords({ value, basis })).toBe(words);
    expect(tagOf(card({ label: { value, basis } }))).toBe(`CARD ${words}`);
  });

  test('of a trial and a concentrate is their own code', () => {
    expect(tagOf(card({ code: 'T3', sort: 'trial' }))).toBe('T3');
    expect(tagOf(card({ code: 'C2', sort: 'concentrate' }))).toBe('C2');
  });

  test('of a trial of the first version, which does not say so, is its code; of its dilution code and strength', () => {
    const [part] = card().contents;
    const contents = [part!, { ...part!, material: 'm-2', name: 'rose base' }];
    expect(tagOf(card({ code: 'T1', contents }))).toBe('T1');
    expect(tagOf(card({ code: 'T1', contents, sort: 'dilution' }))).toBe('T1 1 %');
  });

  test('has its day while another one in use has the same', () => {
    const [may, june] = [card(), card({ madeOn: '2026-06-09' })];
    takeIn([may, june]);
    expect([may, june].map(tagOf)).toEqual(['CARD 1 % of May 4', 'CARD 1 % of Jun 9']);
    expect([may, june].map(labelTagOf)).toEqual(['CARD 1 %', 'CARD 1 %']);
    expect(tagOfId(june.id)).toBe('CARD 1 % of Jun 9');
    const old: typeof june = { ...june, madeOn: '2025-05-04' };
    takeIn([old]);
    expect(tagOf(may)).toBe('CARD 1 % of May 4, 2026');
  });

  test('a used-up or archived vial leaves the plain tag to the one in use', () => {
    const [may, june] = [card(usedUp), card({ madeOn: '2026-06-09' })];
    const away = card({ madeOn: '2026-07-01', archived: '2026-08-01T10:00:00Z' });
    takeIn([may, june, away]);
    expect([may, june, away].map(tagOf)).toEqual(['CARD 1 % of May 4', 'CARD 1 %', 'CARD 1 % of Jul 1']);
  });

  test('a second strength is another tag', () => {
    const weak = card({ label: { value: 0.1, basis: '% w/v' } });
    takeIn([card(), weak]);
    expect(tagOf(weak)).toBe('CARD 0.1 %');
  });
});

describe('the tag of a bottle', () => {
  const material = newRecord('material', {
    name: 'rose base',
    code: 'ROS',
    sort: 'natural',
    form: 'liquid',
    cautions: [],
  });
  const bottle = (lot: string) =>
    newRecord('bottle', { material: material.id, supplier: 'made up', lot, grade: 'fit for drinks' });

  test('says that it is neat, and the lot where there are two', () => {
    const [one, other] = [bottle('R-1'), bottle('R-2')];
    takeIn([material, one]);
    expect(tagOf(one)).toBe('ROS neat');
    takeIn([other]);
    expect([one, other].map(tagOf)).toEqual(['ROS neat, lot R-1', 'ROS neat, lot R-2']);
  });
});

describe('a batch', () => {
  const sure = (value: number) => ({ value, sources: [] });
  const batch = (facts: object = {}) => ({
    ...newRecord('batch', {
      name: 'Orchard',
      madeOn: '2026-05-04',
      jurisdiction: 'EU',
      notes: '',
      uses: [],
      asked: {},
      formula: { id: 'f', name: 'Orchard', version: 1 },
      lines: [],
      reached: [],
      checks: [],
      weighed: [],
      drink: { litres: sure(20), brix: sure(10), abv: sure(0), densityGPerMl: sure(1.04), emulsion: false },
    }),
    ...facts,
  });

  test('goes by its number; the next one is counted on, also past one that is put away', () => {
    expect(numberedBatchCode()).toBe('B1');
    takeIn([batch({ code: 'B1' }), batch({ code: 'B2', archived: '2026-06-01T10:00:00Z' })]);
    expect(numberedBatchCode()).toBe('B3');
    expect(tagOf(batch({ code: 'B3' }))).toBe('B3');
  });

  test('of the first version says what it is, and its day beside another', () => {
    const [may, june] = [batch(), batch({ madeOn: '2026-06-09' })];
    takeIn([may]);
    expect(tagOf(may)).toBe('BATCH');
    takeIn([june]);
    expect([may, june].map(tagOf)).toEqual(['BATCH of May 4', 'BATCH of Jun 9']);
    expect(calledOf(may).name).toBe('Orchard');
  });
});

describe('a code for a new vial', () => {
  test('has a letter only where strength and day are those of one in use', () => {
    const label = { value: 1, basis: '% w/v' };
    takeIn([card()]);
    expect(freeVialCode('CARD', label, '2026-05-04')).toBe('CARDB');
    expect(freeVialCode('CARD', label, '2026-05-05')).toBe('CARD');
    expect(freeVialCode('CARD', { value: 0.1, basis: '% w/v' }, '2026-05-04')).toBe('CARD');
    expect(freeVialCode('HEX3', label, '2026-05-04')).toBe('HEX3');
  });
});
