import { beforeEach, describe, expect, test } from 'vitest';
import { balanceOf } from '../../../src/records/balance';
import { partsOf } from '../../../src/records/lineage';
import type { Batch } from '../../../src/records/kind/batch';
import type { Vial } from '../../../src/records/kind/vial';
import { find, shelf, takeIn } from '../../../src/records/shelf';
import { batch } from '../../../src/tasks/batch/task';
import type { RunState } from '../../../src/tasks/engine/fold';
import { toldOf } from '../../../src/tasks/engine/told';
import { weighAll } from './batchRuns';
import { batchShelf, clearPlan } from './batchShelf';
import { startWalking, type Walker } from '../walking';

beforeEach(() => {
  shelf.records.value = new Map();
  takeIn(batchShelf());
});

/** Walks on to a step, weighing exactly on the way. */
function walkTo(walker: Walker, key: string): void {
  for (let i = 0; i < 60 && walker.step().key !== key; i++) {
    weigh(walker);
    walker.next();
  }
  expect(walker.step().key).toBe(key);
}

/** Types what is asked for at this step, or `times` as much. */
function weigh(walker: Walker, times = 1): void {
  const offer = walker.step().offers?.find(({ words }) => /xactly/.test(words));
  for (const [name, text] of Object.entries(offer?.type ?? {})) walker.type(name, String(times * Number(text)));
}

function take(walker: Walker, words: RegExp): void {
  const offer = walker.step().offers!.find((one) => words.test(one.words))!;
  for (const [name, text] of Object.entries(offer.type!)) walker.type(name, text);
  if (offer.leave) walker.next();
}

/** A syrup that is hardly thrown holds what the drink holds: the concentrate goes into it, before the water. */
const inSyrup = { ...clearPlan, 'throw.n': '0.3' };

const offered = (walker: Walker) => walker.step().offers!.map(({ words }) => words);
const kept = (run: RunState) => batch.keep(run) as [Batch, Vial?];
const used = ({ uses }: Batch | Vial, id: string) => uses.find((use) => use.id === id)?.massG ?? 0;
const doseOf = ({ reached }: Batch) => reached.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0);
const lostOf = ({ lost = [] }: Batch, id: string) =>
  lost.filter((one) => one.id === id).reduce((sum, { massG }) => sum + massG, 0);
/** g typed under keys that match. */
const typedIn = (run: RunState, of: RegExp) =>
  Object.entries(run.typed).reduce((sum, [key, text]) => (of.test(key) ? sum + Number(text) : sum), 0);

/** Keeps what a run ends in, and holds each bottle's balance to what was typed under the keys of its material. */
function balances(run: RunState, materials: readonly string[]): void {
  takeIn(batch.keep(run));
  for (const id of materials) {
    const { full, left, isIn, lost } = balanceOf(find('bottle', `b-${id}`)!)!;
    const sum = (all: readonly { amount: number }[]) => all.reduce((grams, { amount }) => grams + amount, 0);
    expect(full - left).toBeCloseTo(typedIn(run, new RegExp(`^mass\\.c\\d*\\.${id}\\b`)), 9);
    expect(sum(isIn) + sum(lost)).toBeCloseTo(full - left, 9);
  }
}

describe('a concentrate that was weighed over, with the drink kept as planned', () => {
  const aside = (typed: Record<string, string> = {}) => {
    const walker = startWalking(batch, { ...clearPlan, ...typed });
    walkTo(walker, 'c.linalool');
    weigh(walker, 1.25);
    take(walker, /^Keep 20 L; set the rest/);
    return walker;
  };

  test('all of the concentrate is made larger, 20 L take their share of it, and the rest becomes a vial', () => {
    const run = weighAll(aside().state().typed);
    const [made, vial] = kept(run);
    expect(made.drink.litres.value).toBeCloseTo(20, 1);
    expect(Math.abs(doseOf(made) / 50 - 1)).toBeLessThan(0.003);
    for (const [i, target] of [20, 15, 10, 5].entries())
      expect(Math.abs(made.reached[i]!.mgPerKg.value / target - 1)).toBeLessThan(0.01);
    expect(made.weighed.find(({ id }) => id === 'concentrate')!.massG.value).toBeCloseTo(20, 1);
    expect(vial!.massG.value).toBeCloseTo(5, 1); // a quarter more than the 20 g that the drink needs
    expect(vial!.sort).toBe('concentrate');
    for (const { material, mgPerKg } of made.reached) {
      const strength = vial!.contents.find((one) => one.material === material)!.strength.value;
      expect(strength / (mgPerKg.value / doseOf(made))).toBeCloseTo((50 * 1.0381) / 1000, 3); // 1 g/L
    }
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('is told where it is chosen, and by what went wrong in the record', () => {
    const walker = aside();
    walker.back('c.linalool');
    expect(walker.step().more!.join(' ')).toContain('Chosen: the drink stays as planned');
    const run = weighAll(walker.state().typed);
    expect(batch.done!(run, []).slips).toMatchObject([
      { what: 'linalool', way: 'The rest of the concentrate set aside' },
    ]);
    const pouring = batch.steps(run).find(({ key }) => key === 's.concentrate')!;
    expect(pouring.more).toContain('What is left of it can be kept as a vial at the end.');
  });

  test('not kept, the rest is lost by its lots, and the bottles go down by all that was weighed', () => {
    const run = weighAll({ ...aside().state().typed, left: 'away' });
    const [made, vial] = kept(run);
    expect(vial).toBeUndefined();
    expect(lostOf(made, 'b-linalool') / used(made, 'b-linalool')).toBeCloseTo(0.2, 2);
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('a later slip may scale all up: the drink is larger by that one alone', () => {
    const walker = aside();
    walkTo(walker, 'c.nutmeg');
    weigh(walker, 1.1);
    take(walker, /^Scale all up/);
    const [made, vial] = kept(weighAll(walker.state().typed));
    expect(made.drink.litres.value).toBeCloseTo(22, 1);
    expect(Math.abs(doseOf(made) / 50 - 1)).toBeLessThan(0.003);
    expect(vial!.massG.value).toBeCloseTo(5.5, 1);
  });

  test('of an emulsion in the same way; never of what goes into the drink itself', () => {
    const walker = aside({ make: 'emulsion', agent: 'agent-8050-30-4', dosage: '2' });
    const made = kept(weighAll(walker.state().typed));
    expect(made[0].drink.litres.value).toBeCloseTo(20, 1);
    expect(Math.abs(made[1]!.massG.value / 10 - 1)).toBeLessThan(0.01);
    const drink = startWalking(batch, clearPlan);
    walkTo(drink, 's.sugar');
    weigh(drink, 1.1);
    expect(offered(drink).join()).not.toContain('aside');
  });
});

describe('a vessel that is begun again', () => {
  const begun = (typed: Record<string, string> = {}) => {
    const walker = startWalking(batch, { ...clearPlan, ...typed });
    walkTo(walker, 'c.linalool');
    weigh(walker, 1.5);
    take(walker, /^Begin this vessel again$/);
    return walker;
  };

  test('is not offered while nothing is in it; else always, over or not', () => {
    const walker = startWalking(batch, clearPlan);
    walkTo(walker, 'c.vanillin');
    expect(offered(walker).join()).not.toContain('Begin');
    weigh(walker);
    expect(offered(walker)).toEqual(['Begin this vessel again']);
    walker.next();
    expect(offered(walker)).toContain('Begin this vessel again'); // before anything of the second is typed
  });

  test('says what is lost, and asks for the targets of the plan from the first one on', () => {
    const walker = begun();
    const { say, more, told } = walker.step();
    expect([walker.step().key, say]).toEqual(['c.linalool', 'Empty this vessel: it begins again.']);
    expect(more!.join(' ')).toMatch(/^vanillin, .*lot L-b-vanillin: ‹0\.104 g›\..*linalool, .*: ‹0\.467 g›/);
    expect(more!.at(-1)).toBe('What left its bottles for this is counted as lost.');
    expect(toldOf(walker.step(), walker.state()).answers).toEqual(told);
    walker.next();
    expect(walker.step()).toMatchObject({ key: 'c2.vanillin', say: expect.stringContaining('‹0.104 g›') });
    walkTo(walker, 'c2.linalool');
    expect(walker.step().say).toContain('‹0.311 g›'); // 15 mg/kg of 20.76 kg, not half as much again
  });

  test('the drink is as planned, and what was in the vessel is lost with its lots: the bottles go down by both', () => {
    const walker = begun();
    walker.next();
    const run = weighAll(walker.state().typed);
    const [made, vial] = kept(run);
    expect(vial).toBeUndefined();
    expect(made.drink.litres.value).toBeCloseTo(20, 1);
    expect(Math.abs(doseOf(made) / 50 - 1)).toBeLessThan(0.003);
    expect(made.weighed.filter(({ id }) => id === 'linalool')).toHaveLength(1);
    const lost = made.lost!.filter(({ why }) => why === 'in a vessel that was begun again');
    expect(lost.map(({ id }) => id).sort()).toEqual(['b-linalool', 'b-maltol', 'b-vanillin'].sort());
    expect(lostOf(made, 'b-linalool')).toBeCloseTo(1.5 * 0.311, 6);
    expect(made.uses.find(({ id }) => id === 'b-linalool')).toMatchObject({ lot: 'L-b-linalool', how: 'weighed' });
    expect(batch.done!(run, []).slips).toMatchObject([{ what: 'linalool', way: 'The vessel begun again' }]);
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('undone, all is as before; once something new is in, it cannot be undone any more', () => {
    const walker = begun();
    take(walker, /^Undo/);
    expect(walker.step().key).toBe('c.linalool');
    expect(offered(walker)).toHaveLength(4);
    expect(walker.state().typed['mass.c.vanillin']).toBe('0.104');
    take(walker, /^Begin/);
    walker.next();
    weigh(walker);
    walker.back('c.linalool');
    expect(walker.step()).toMatchObject({ key: 'c.linalool', say: 'Empty this vessel: it begins again.' });
    expect(walker.step().offers).toBeUndefined();
    walker.back('lots');
    expect(walker.keys()).not.toContain('c.linalool'); // who walks on from there empties nothing a second time
  });

  test('a second and a third time: each time what was in is lost', () => {
    const walker = begun();
    walker.next();
    walkTo(walker, 'c2.nutmeg');
    weigh(walker);
    take(walker, /^Begin/);
    walker.next();
    expect(walker.step().key).toBe('c3.vanillin');
    const run = weighAll(walker.state().typed);
    expect(lostOf(kept(run)[0], 'b-vanillin')).toBeCloseTo(2 * 0.104, 6);
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('with other lots from then on, those of before have lost what they gave, and are not in the drink', () => {
    takeIn([{ ...find('bottle', 'b-vanillin')!, id: 'b-other' }]);
    const walker = begun({ 'lot.vanillin': 'b-vanillin' });
    walker.type('lot.vanillin', 'b-other');
    const [made] = kept(weighAll(walker.state().typed));
    expect(lostOf(made, 'b-vanillin')).toBeCloseTo(0.104, 6);
    expect(used(made, 'b-vanillin')).toBeCloseTo(0.104, 6);
    expect(used(made, 'b-other')).toBeCloseTo(0.104, 6);
    takeIn([made]);
    const isIn = partsOf(made).map(({ id }) => id);
    expect(isIn).toContain('b-other');
    expect(isIn).not.toContain('b-vanillin');
  });

  test('a dilution for the scale is lost with it, also one of which only the material was weighed', () => {
    const walker = startWalking(batch, { ...clearPlan, fine: '0.01' }); // on this scale all four are diluted first
    walkTo(walker, 't.maltol');
    walker.type('mass.t.maltol', '0.5');
    walker.back('c.vanillin');
    take(walker, /^Begin this vessel again$/);
    walker.next();
    expect(walker.step().key).toBe('t2.vanillin');
    const run = weighAll(walker.state().typed);
    const [made] = kept(run);
    for (const id of ['maltol', 'vanillin'])
      expect(used(made, `b-${id}`)).toBeCloseTo(typedIn(run, new RegExp(`^mass\\.t\\d*\\.${id}$`)), 9);
    expect(lostOf(made, 'b-maltol')).toBeGreaterThan(0.5); // with the rest of the second dilution
    expect(lostOf(made, 'b-vanillin')).toBeGreaterThan(Number(run.typed['mass.t.vanillin']));
  });

  test('of the drink, before its concentrate is in: only sugar and water are gone', () => {
    const walker = startWalking(batch, clearPlan);
    walkTo(walker, 's.sugar');
    weigh(walker, 1.2);
    take(walker, /^Begin this vessel again$/);
    expect(walker.step().more!.join(' ')).toMatch(/sugar: ‹\d+ g›/);
    expect(walker.step().more!.join(' ')).not.toContain('lost');
    const [made] = kept(weighAll(walker.state().typed));
    expect(made.lost).toBeUndefined();
    expect(made.drink.brix.value).toBeCloseTo(10, 1);
  });

  test('of the drink with all of the concentrate in it: the concentrate begins again too', () => {
    const walker = startWalking(batch, inSyrup);
    walkTo(walker, 'd.water');
    take(walker, /^Begin this vessel again, and the concentrate$/);
    expect(walker.step()).toMatchObject({ key: 'd.water', say: expect.stringContaining('Empty both vessels') });
    walker.next();
    expect(walker.step().key).toBe('c2.vanillin');
    const run = weighAll(walker.state().typed);
    const [made] = kept(run);
    expect(Math.abs(doseOf(made) / 50 - 1)).toBeLessThan(0.003);
    expect(lostOf(made, 'b-nutmeg') / used(made, 'b-nutmeg')).toBeCloseTo(0.5, 6);
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('of the drink where enough of the concentrate is left: that is taken, and what was poured is lost', () => {
    const walker = startWalking(batch, { ...inSyrup, spare: '150' });
    walkTo(walker, 'd.water');
    take(walker, /^Begin this vessel again$/);
    walker.next();
    expect(walker.step().key).toMatch(/^s2\./);
    const run = weighAll(walker.state().typed);
    const [made, vial] = kept(run);
    expect(made.weighed.find(({ id }) => id === 'concentrate')!.massG.value).toBeCloseTo(20, 1);
    expect(vial!.massG.value).toBeCloseTo(10, 1); // 50 made, twice 20 poured
    expect(lostOf(made, 'b-nutmeg')).toBeCloseTo(0.4 * 50 * 20 * 1.0381e-3, 2);
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('of the concentrate after it was poured: the drink that it is in begins again too', () => {
    const walker = startWalking(batch, { ...inSyrup, spare: '150' });
    walkTo(walker, 'd.water');
    walker.back('c.maltol');
    take(walker, /^Begin this vessel again, and the drink$/);
    const run = weighAll(walker.state().typed);
    expect(run.typed['mass.s2.concentrate']).toBeDefined();
    balances(run, ['nutmeg', 'linalool', 'maltol', 'vanillin']);
  });

  test('made again, it is made as it became: the plan, without what was lost on the way', () => {
    const walker = begun();
    const [made] = kept(weighAll(walker.state().typed));
    expect(Object.keys(made.asked).filter((key) => /begun|mass|over/.test(key))).toEqual([]);
    const [second] = kept(weighAll({ what: 'f1', ...made.asked }));
    const grams = ({ weighed }: Batch) => weighed.map(({ id, massG }) => [id, massG.value]);
    expect(grams(second)).toEqual(grams(made));
  });
});
