import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { measured } from '../../src/core/number/measured';
import type { AnyRecord } from '../../src/records/kind/kinds';
import type { Bottle } from '../../src/records/kind/material';
import { newRecord, shelf, takeIn } from '../../src/records/shelf';
import { refusalOfLine, sourceOf } from '../../src/tasks/batch/plan/drinkAsked';
import { instanceOf, notByThemselves, sourceFor } from '../../src/tasks/count/planInstance';
import { freshRun } from '../../src/tasks/engine/fold';
import { poolOf } from '../../src/tasks/layer/together';
import { sourcesOf } from '../../src/workshop/sources';
import { whyNotByItself } from '../../src/workshop/takenByItself';
import { fieldOf, runOf } from '../tasks/batch/batchRuns';
import { batchShelf, clearPlan } from '../tasks/batch/batchShelf';
import { vialOf } from '../tasks/count/countShelf';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] });
  vi.setSystemTime('2026-11-30T08:00:00.000Z');
  shelf.records.value = new Map();
  takeIn(batchShelf());
});
afterEach(() => void vi.useRealTimers());

const line = { material: 'nutmeg', name: 'nutmeg oil', share: 0.4 };
const bottle = (facts: object = {}): Bottle => ({ ...(shelf.records.value.get('b-nutmeg') as Bottle), ...facts });
const second = (facts: object = {}): Bottle => ({
  ...bottle(),
  ...newRecord('bottle', { material: 'nutmeg', supplier: 'Heron Lane', lot: 'N-2', grade: 'fit for drinks', ...facts }),
});
const lots = (run = runOf(clearPlan)) => fieldOf(run, 'lot.nutmeg')!;

describe('why a thing is not taken by itself', () => {
  test('is said in a few words, and nothing is said of what may be the default', () => {
    expect(whyNotByItself(bottle())).toBeNull();
    expect(whyNotByItself(bottle({ useBy: '2026-11-30' }))).toBeNull(); // its last day
    expect(whyNotByItself(bottle({ useBy: '2026-11-29' }))).toBe('past its date (Nov 29, 2026)');
    expect(whyNotByItself(bottle({ archived: '2026-11-01' }))).toBe('archived');
    expect(whyNotByItself(bottle({ amountG: 2 }), { grams: 2.5 })).toBe('down to 2 g, 2.5 g are needed');
    expect(whyNotByItself(bottle({ amountG: 2 }), { grams: 2 })).toBeNull();
    expect(whyNotByItself(bottle({ amountG: undefined }), { grams: 2 })).toBeNull(); // no one said how much there was
    const weighed = [{ at: '2026-11-01T00:00:00Z', left: measured(0, 0, { id: '', words: '' }) }];
    expect(whyNotByItself(bottle({ weighed }))).toBe('empty');
    expect(whyNotByItself(bottle(), { refusal: 'not fit for drinks' })).toBe('smell only');
  });
});

describe('the bottle that a batch begins with', () => {
  test('is never past its date: the next one is, and the old one may be chosen with its reason shown', () => {
    takeIn([bottle({ useBy: '2026-11-02' }), second({ id: 'b2', amountG: 50 })]);
    expect(lots().preset).toBe('b2');
    expect(lots().options!.find(({ value }) => value === 'b-nutmeg')!.hint).toContain('past its date (Nov 2, 2026)');
    expect(sourceOf(runOf({ ...clearPlan, 'lot.nutmeg': 'b-nutmeg' }), line)!.id).toBe('b-nutmeg');
    expect(refusalOfLine(runOf({ ...clearPlan, 'lot.nutmeg': 'b-nutmeg' }), line)).toBeNull();
  });

  // 40 % of 50 mg/kg in 20 L of 1.0381 kg/L: 0.4152 g
  test('never holds too little for the drink that is asked for', () => {
    takeIn([bottle({ amountG: 0.41 }), second({ id: 'b2', amountG: 50 })]);
    expect(lots().preset).toBe('b2');
    takeIn([bottle({ amountG: 0.42 })]);
    expect(lots().preset).toBe('b-nutmeg');
    expect(lots(runOf({ ...clearPlan, spare: '25' })).preset).toBe('b2');
  });

  test('is none where nothing will do, and each reason is said', () => {
    takeIn([bottle({ useBy: '2026-11-02' }), second({ id: 'b2', amountG: 0.1 })]);
    expect(lots().preset).toBe('');
    expect(refusalOfLine(runOf(clearPlan), line)).toMatch(
      /Nothing is taken by itself .*N-2 is down to 0\.1 g, 0\.415 g are needed; .*L-b-nutmeg is past its date \(Nov 2, 2026\)\. Choose one/,
    );
    takeIn([bottle({ grade: 'smell only' }), second({ id: 'b2', grade: 'smell only' })]);
    expect(lots().preset).toBe('');
    expect(refusalOfLine(runOf(clearPlan), line)).toContain('smell only, it never goes into a drink');
  });

  test('stays the one that stood on the screen when it was left, whatever the day; in a run of an older version the first', () => {
    takeIn([bottle({ useBy: '2026-12-02' }), second({ id: 'b2', amountG: 50 })]);
    const left = { ...runOf(clearPlan), presets: { 'lot.nutmeg': 'b-nutmeg' } };
    const older = { ...runOf(clearPlan), done: { lots: '2026-11-30T08:00:00Z' } };
    vi.setSystemTime('2026-12-24T08:00:00.000Z');
    expect(sourceOf(left, line)!.id).toBe('b-nutmeg');
    expect(sourceOf(runOf(clearPlan), line)!.id).toBe('b2');
    expect(sourceOf(older, line)).toBe(sourcesOf('nutmeg')[0]);
  });
});

describe('the vials that a count is planned from', () => {
  const asked = { formula: 'f', purpose: 'smell', dropper: 'typical' };
  const formula = newRecord('formula', {
    id: 'f',
    name: 'Nutmeg',
    root: 'f',
    version: 1,
    notes: '',
    lines: [{ material: 'nutmeg', name: 'nutmeg oil', share: 1 }],
  });
  const planned = (typed: Record<string, string> = {}) =>
    instanceOf({ ...freshRun, typed: { ...asked, ...typed } }).components[0]!.stocks.map(({ id }) => id);

  test('are not past their date while there is another; chosen ones stay; with no other it is said', () => {
    const old = { ...vialOf('old', 0.01, { material: 'nutmeg' }), useBy: '2026-11-02' };
    const fresh = { ...vialOf('fresh', 0.01, { material: 'nutmeg' }), useBy: '2027-11-02' };
    takeIn([formula, old, fresh, bottle({ archived: '2026-11-01' })]);
    expect(planned()).toEqual(['fresh']);
    expect(planned({ plan: 'old=3' })).toEqual(expect.arrayContaining(['fresh', 'old']));
    takeIn([{ ...fresh, archived: '2026-11-03' } as AnyRecord]);
    expect(planned()).toEqual(['old']);
    expect(notByThemselves(['old'])).toEqual(['OLD 1 % w/w is past its date (Nov 2, 2026).']);
  });
});

describe('what is proposed elsewhere', () => {
  test('for a layering or a dilution is neither empty nor past its date', () => {
    const old = { ...vialOf('v1', 0.01, { material: 'nutmeg' }), useBy: '2026-11-02' };
    const empty = vialOf('v2', 0.1, { material: 'vanillin', massG: 0 });
    takeIn([old, empty, vialOf('v3', 0.01, { material: 'maltol' }), bottle({ useBy: '2026-11-02' })]);
    expect([...poolOf(freshRun).vialOf.values()]).toEqual(['v3']);
    expect(sourceFor(freshRun, 'nutmeg')).toBeUndefined();
    expect(sourceFor(freshRun, 'vanillin')).toBe('b-vanillin');
  });
});
