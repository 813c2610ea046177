import { beforeEach, describe, expect, test } from 'vitest';
import type { Batch } from '../../../src/records/kind/batch';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { procedureOf } from '../../../src/app/describe/procedure';
import { daysFrom, duesUntil } from '../../../src/workshop/made/trials';
import { batch } from '../../../src/tasks/batch/task';
import { massOf } from '../../../src/tasks/batch/plan/goods';
import { planOf } from '../../../src/tasks/batch/plan/plan';
import { fieldOf, keysOf, recipeOf, runOf, stepOf, weighAll, wordsIn } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';

beforeEach(() => {
  shelf.records.value = new Map();
  const orange = newRecord('material', {
    id: 'orange',
    name: 'sweet orange oil',
    code: 'ORAN',
    cas: '8008-57-9',
    sort: 'natural',
    form: 'liquid',
    cautions: [],
    density: { gPerMl: 0.8435, atC: 20, source: 'made up for the test' },
  });
  const bottle = newRecord('bottle', {
    id: 'b-orange',
    material: 'orange',
    supplier: 'Saltmarsh Supplies',
    lot: 'L-orange',
    grade: 'fit for drinks',
    amountG: 500,
  });
  const formula = newRecord('formula', {
    id: 'orange-cloudy',
    name: 'Cloudy orange',
    root: 'orange-cloudy',
    version: 1,
    notes: '',
    lines: [
      { material: 'orange', name: 'sweet orange oil', share: 95 },
      { material: 'vanillin', name: 'vanillin', share: 5 },
    ],
  });
  takeIn([...batchShelf(), orange, bottle, formula]);
});

const cloudy = {
  ...clearPlan,
  what: 'orange-cloudy',
  dose: '100',
  brix: '11',
  make: 'emulsion',
  agent: 'agent-126-13-6',
};
const slotsWrong = (typed: Record<string, string>) =>
  Object.entries(recipeOf(runOf(typed)).card!.slots!).flatMap(([name, { wrong, mend }]) => (wrong ? [{ name, wrong, mend }] : [])); // prettier-ignore

describe('an emulsion', () => {
  test('of 56 % gum in 7 % water is refused, with the dosage that works', () => {
    const [first] = slotsWrong({ ...cloudy, dosage: '1' });
    expect(first!.name).toBe('dosage');
    expect(first!.wrong).toMatch(/gum in its own water need at least [\d.]+ g\/L of concentrate, not 1 g\/L/);
    const { dosage } = first!.mend!.type!;
    expect(slotsWrong({ ...cloudy, dosage: dosage! })).toEqual([]);
    const plan = planOf(runOf({ ...cloudy, dosage: dosage! }))!;
    const { gum, water } = plan.emulsion!;
    expect(gum / (gum + water)).toBeLessThanOrEqual(0.3);
    expect(plan.emulsion!.agentMgPerL).toBeLessThanOrEqual(300 * (1 + 1e-9)); // E 444, 300 mg/L
  });

  test('names as the least what also works, where the dosage is a little under it', () => {
    const almost = { ...cloudy, agent: 'none', dose: '202.2', gum: '0.65', dosage: '1' }; // 200.2 mg of oil in a litre, and a fifth may be oil
    expect(slotsWrong(almost)[0]!.wrong).toContain('need at least 1.01 g/L of concentrate, not 1 g/L');
    expect(slotsWrong({ ...almost, dosage: '1.01' })).toEqual([]);
  });

  test('is weighed into two vessels, each tared empty and each with what it holds', () => {
    const run = runOf({ ...cloudy, dosage: '4', agent: 'none' });
    const said = (key: string) => stepOf(run, key).more!.join(' ');
    expect(said('c.orange')).toContain('Put the empty vessel on the scale and tare it.');
    expect(said('c.vanillin')).toMatch(/into the water vessel.*Put the empty vessel on the scale and tare it\./);
    const inWater = massOf(planOf(run)!.concentrate.filter(({ goods }) => goods.id !== 'orange'));
    expect(said('c.gum-arabic')).toContain(`without that it shows ‹${inWater.toFixed(3)} g›`);
  });

  const made = { ...cloudy, dosage: '4' };

  test('has two vessels: oils with the agent, and water with what is no oil, then the gum', () => {
    const run = runOf(made);
    const keys = keysOf(run).filter((key) => /^[cte]\./.test(key));
    expect(keys).toEqual([
      'c.agent-126-13-6',
      'c.orange',
      'e.oil',
      'c.vanillin',
      'c.emulsion-water',
      'c.gum-arabic',
      'e.water',
      'e.coarse',
      'e.fine',
    ]);
    expect(stepOf(run, 'c.orange').more!.join(' ')).toContain('into the oil vessel');
    expect(stepOf(run, 'c.vanillin').more!.join(' ')).toContain('into the water vessel');
    expect(wordsIn(run, 'Emulsion')).toContain('Not oil, so in its water: vanillin.');
  });

  test('counts gum for what is oil, and not for what is dissolved in its water', () => {
    const plan = planOf(runOf({ ...made, agent: 'none' }))!;
    const oil = plan.concentrate.find(({ goods }) => goods.id === 'orange')!.mass;
    expect(plan.emulsion!.gum).toBeCloseTo(1.5 * oil, 9);
    const all = plan.concentrate.reduce((sum, { mass }) => sum + mass, 0);
    expect(all).toBeCloseTo(4 * 20, 9); // g/L times L: mass is conserved
  });

  test('matched by its agent, no ring is told but for how long none comes', () => {
    expect(wordsIn(runOf(made), 'Emulsion')).toMatch(
      /: matched\..*Matched as far as densities are known: .* no ring for ‹[\d.]+ days› and more/,
    );
  });

  test('measured droplets change the ring that is told, and are kept with the batch', () => {
    const words = (d90: string) => stepOf(runOf({ ...made, agent: 'none', d90 }), 'e.fine').more!.join(' ');
    expect(words('3')).toContain('Larger than planned: pass it again');
    expect(words('0.5')).not.toContain('Larger');
    const days = (text: string) => Number(/after about ‹([\d.]+)/.exec(text)![1]);
    expect(days(words('0.5'))).toBeGreaterThan(30 * days(words('3')));
    const [kept] = batch.keep(weighAll({ ...made, d90: '0.8' })) as [Batch];
    expect(kept.asked['d90']).toBe('0.8');
    expect(procedureOf(kept)[0]!.does.join(' ')).toContain('90 % of the oil in droplets under 0.8 µm, measured');
  });

  test('ends in a ring trial, whose days are due on the Bench; without one where it is not wanted', () => {
    const trials = (ring?: string) => {
      const [kept] = batch.keep(weighAll({ ...made, ...(ring ? { ring } : {}) })) as [Batch];
      takeIn([kept]);
      return duesUntil('2999-01-01').filter((due) => due.batch.id === kept.id);
    };
    const [due] = trials();
    expect(due!.trial!.trial).toMatchObject({ fact: 'trial', sort: 'ring' });
    expect(daysFrom(due!.trial!.trial.begun, due!.day)).toBe(1);
    expect(due!.trial!.trial.dues).toHaveLength(5);
    expect(trials('no')).toEqual([]);
  });

  test.each([
    ['modified-starch', 'gum.modified-starch', '0.5'],
    ['quillaia', 'gum.quillaia', '0.1'],
  ])('with %s has a ratio of its own, %s: %s', (emulsifier, name, usual) => {
    const run = runOf({ ...made, emulsifier });
    expect(fieldOf(run, name)!.preset).toBe(usual);
    expect(keysOf(run)).toContain(`c.${emulsifier}`);
    expect(keysOf(run)).not.toContain('c.gum-arabic');
  });

  test('with too little emulsifier, or in strong spirit, is refused', () => {
    expect(slotsWrong({ ...made, gum: '0.3' })[0]!.wrong).toContain('leaves droplets bare; tried are 0.6 to 2');
    const [strong] = slotsWrong({ ...made, abv: '30', 'spirit.food': 'yes', 'throw.n': '0' });
    expect(strong!.wrong).toContain('Over 20 % ABV gum arabic comes out and the emulsion breaks');
    expect(strong!.mend!.type).toEqual({ make: 'clear' });
  });

  test('begun in an older version stays in one vessel, without new limits', () => {
    const old = {
      ...runOf({ ...cloudy, dosage: '1', dose: '60' }),
      at: 'c.orange',
      done: { recipe: '2026-05-04T10:00:00.000Z' },
    };
    const keys = keysOf(old).filter((key) => /^[ce]\./.test(key));
    expect(keys.slice(-2)).toEqual(['c.gum-arabic', 'c.emulsion-water']);
    expect(keys.some((key) => key.startsWith('e.'))).toBe(false);
  });
});
