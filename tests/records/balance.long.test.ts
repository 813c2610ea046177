import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { measured } from '../../src/core/number/measured';
import type { Batch } from '../../src/records/kind/batch';
import type { AnyRecord } from '../../src/records/kind/kinds';
import { balanceOf } from '../../src/records/balance';
import { amountIn } from '../../src/records/recall';
import { find, newRecord, shelf, takeIn } from '../../src/records/shelf';
import { leftOf, type Stocked } from '../../src/records/stock';
import { batch } from '../../src/tasks/batch/task';
import { count } from '../../src/tasks/count/task';
import { dilute } from '../../src/tasks/dilute/task';
import { dose } from '../../src/tasks/dose/task';
import { freshRun, type RunState } from '../../src/tasks/engine/fold';
import type { Task } from '../../src/tasks/engine/task';
import { leftBottle, madeByHand } from '../tasks/batch/batchHand';
import { batchShelf, clearPlan } from '../tasks/batch/batchShelf';
import { seeded } from '../core/seeded';

const MG = 0.001;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] });
  vi.setSystemTime('2026-05-01T08:00:00.000Z');
  shelf.records.value = new Map();
  takeIn(batchShelf());
});
afterEach(() => void vi.useRealTimers());

const one = (id: string) => shelf.records.value.get(id)! as Stocked;
const run = (typed: Record<string, string>, drops: Record<string, number> = {}): RunState => ({
  ...freshRun,
  typed,
  drops,
});

/** What the hand of the test took out of each thing, g, apart from all that the program counts. */
class Hand {
  readonly taken = new Map<string, number>();
  readonly vials: string[] = [];
  constructor(private readonly random: () => number) {}

  private grams(most: number): string {
    return (MG + this.random() * most).toFixed(3);
  }
  private pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.random() * from.length)]!;
  }
  /** A tenth of what it is made from, % w/w: whatever is weighed then, it is stronger or weaker than that. */
  private asked(source: string): string {
    const vial = find('vial', source);
    return String(10 * (vial ? vial.contents.reduce((sum, { strength }) => sum + strength.value, 0) : 1));
  }
  private inUse(): string[] {
    return this.vials.filter((id) => !one(id).archived);
  }
  private take(id: string, grams: number): void {
    this.taken.set(id, (this.taken.get(id) ?? 0) + grams);
  }
  /** Ends a run as the engine does: what it kept names the run. A run that is thrown away keeps nothing. */
  private end(task: Task, state: RunState): AnyRecord[] {
    vi.advanceTimersByTime(60_000);
    const kept = task.keep!(state).map((record) => ({ ...record, from: [...record.from, 'run'] }) as AnyRecord);
    takeIn(kept);
    this.vials.push(...kept.flatMap(({ kind, id }) => (kind === 'vial' ? id : [])));
    return kept;
  }

  dilute(): void {
    const source = this.random() < 0.6 || this.inUse().length === 0 ? 'b-nutmeg' : this.pick(this.inUse());
    const [material, solvent] = [this.grams(0.2), this.grams(9)];
    const code = `V${this.vials.length}`;
    const amounts = { 'material.g': material, 'solvent.own': 'yes', 'solvent.g': solvent, overshoot: 'keep' };
    const how = {
      strength: this.asked(source),
      basis: '% w/w',
      size: '10',
      measure: 'scale',
      way: 'mass',
      readability: '0.001',
    };
    const label = { 'vial.code': code, 'vial.made': '2026-05-01', 'vial.useBy': '2027-05-01' };
    this.end(dilute, run({ bottle: source, solvent: 'pack', ...how, ...amounts, ...label }));
    this.take(source, Number(material));
    this.take('pack', Number(solvent));
  }
  dose(): void {
    if (this.inUse().length === 0) return;
    const [vial, grams] = [this.pick(this.inUse()), this.grams(0.3)];
    const drink = { 'base.name': 'soda', 'base.brix': '0', 'base.abv': '0', 'base.ml': '250', 'base.slack': '0' };
    const reason = { although: 'nobody drinks a test' }; // where it is over a limit
    this.end(dose, run({ vial, dropper: 'scale', massG: grams, base: 'new', ...drink, ...reason }));
    this.take(vial, Number(grams));
  }
  count(): void {
    const [first, second] = [this.pick(this.inUse()), this.pick(this.inUse())];
    if (!first || !second || first === second) return; // nothing to count from, or one thing twice
    const drops = { [`drops.${first}`]: 1 + Math.floor(this.random() * 6), [`drops.${second}`]: 3 };
    const planned = {
      [`plan.${first}`]: '3',
      [`plan.${second}`]: '3',
      [`pick.${first}`]: 'yes',
      [`pick.${second}`]: 'yes',
    };
    const name = { name: 'Trial', code: `T${this.vials.length}`, size: '5' };
    const kept = this.end(count, run({ formula: 'hand', dropper: 'typical', ...planned, ...name }, drops));
    const trial = kept.find(({ kind }) => kind === 'vial') as { uses: { id: string; massG: number }[] };
    for (const { id, massG } of trial.uses) this.take(id, massG); // the mass of a typical drop is not the hand's to know
    expect(trial.uses.map(({ id }) => id)).toEqual([first, second]);
  }
  batch(): void {
    const plan = { ...clearPlan, fine: this.pick(['0.001', '0.01']), spare: this.pick(['0', '25']) };
    const left = this.pick(['keep', 'away']);
    const did = madeByHand({ ...plan, left, 'lot.propylene-glycol': 'pg' }, this.random);
    const [made] = this.end(batch, did.walker.state()) as [Batch];
    holdsWhatItsStrengthsSay(made);
    for (const id of ['nutmeg', 'linalool', 'maltol', 'vanillin', 'propylene-glycol']) {
      const bottle = id === 'propylene-glycol' ? 'pg' : `b-${id}`;
      this.take(bottle, leftBottle(did, id, 'propylene-glycol'));
    }
  }
  weigh(): void {
    const id = this.pick(['b-nutmeg', 'pack', 'pg']);
    vi.advanceTimersByTime(60_000);
    const left = measured(leftOf(one(id))!.value - this.random() * 0.1, 0, { id: '', words: '' });
    const weighed = [...(one(id).weighed ?? []), { at: new Date().toISOString(), left }];
    takeIn([{ ...one(id), weighed } as AnyRecord]);
  }
  archive(): void {
    const id = this.pick(this.inUse());
    if (id) takeIn([{ ...one(id), archived: new Date().toISOString() } as AnyRecord]);
  }
  throwAway(): void {
    takeIn([newRecord('run', { task: 'count', kept: [], title: 'thrown away', open: 1 } as never)]);
  }
}

/** The bottles here are pure: the grams of them in a drink are those of its mg/kg, which come from what was weighed. */
function holdsWhatItsStrengthsSay(made: Batch): void {
  const drinkG = made.drink.litres.value * 1000 * made.drink.densityGPerMl.value;
  for (const { material, mgPerKg } of made.reached) {
    const grams = (mgPerKg.value / 1e6) * drinkG;
    expect(Math.abs(amountIn(`b-${material}`, made)!.value / grams - 1)).toBeLessThan(0.001); // rests within the scale's ±
  }
}

const pack = (id: string, solvent: string) =>
  newRecord('supply', {
    id,
    name: solvent,
    sort: 'solvent',
    solvent,
    grade: 'fit for drinks',
    unit: 'g',
    amount: 1000,
    supplier: 'made up',
    lot: id,
  });

describe('what left a bottle', () => {
  test('is in things or named as lost, to the milligram, whatever was made, weighed, put away or thrown away', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.array(fc.constantFrom('dilute', 'dose', 'count', 'batch', 'weigh', 'archive', 'throwAway'), {
          maxLength: 12,
        }),
        (seed, acts) => {
          shelf.records.value = new Map();
          takeIn([...batchShelf(), pack('pack', 'ethanol-96'), pack('pg', 'propylene-glycol')]);
          const hand = new Hand(seeded(seed));
          for (const act of acts) hand[act]();
          takeIn([{ ...one('b-nutmeg'), archived: new Date().toISOString() } as AnyRecord]);
          const all = ['b-nutmeg', 'b-linalool', 'b-maltol', 'b-vanillin', 'pack', 'pg', ...hand.vials];
          for (const id of all) closes(id, hand.taken.get(id) ?? 0);
        },
      ),
      { numRuns: 30 },
    );
  });
});

/** The balance closes, and what it counts as gone (found by weighing apart) is what the hand took. */
function closes(id: string, taken: number): void {
  const { full, left, isIn, lost } = balanceOf(one(id))!;
  const sum = (list: readonly { amount: number }[]) => list.reduce((all, { amount }) => all + amount, 0);
  expect(Math.abs(full - left - sum(isIn) - sum(lost))).toBeLessThan(MG / 1000);
  const counted = sum(isIn) + sum(lost.filter(({ why }) => /rest|not kept|begun again/.test(why)));
  expect(Math.abs(counted - taken)).toBeLessThan(MG / 1000);
  for (const { record, amount } of isIn) {
    const inIt = amountIn(id, record)!; // through its other parts too: never less than what it took itself
    expect(inIt.value).toBeGreaterThan(amount - MG / 1000);
  }
}
