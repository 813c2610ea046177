import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Done } from '../../../src/records/kind/record';
import type { Run, RunEvent } from '../../../src/records/kind/run';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { count } from '../../../src/tasks/count/task';
import { fold } from '../../../src/tasks/engine/fold';
import { leaving, nextKey, problemsOf } from '../../../src/tasks/engine/leaving';
import { placeOf } from '../../../src/tasks/engine/place';
import { recordsOf } from '../../../src/tasks/engine/recordsOf';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { startWalking } from '../walking';
import { material, pipette, vialOf } from './countShelf';

const MATERIALS = ['m1', 'm2', 'm3'];
const SHARES = [5, 3, 1];

/** Hands that slip: drops too many or too few, drops taken back, and which of the ways on is taken. */
const hands = fc.record({
  way: fc.constantFrom('formula', 'hand'),
  purpose: fc.constantFrom('smell', 'taste'),
  planned: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 }),
  slips: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 12, maxLength: 12 }),
  undone: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 12, maxLength: 12 }),
  ways: fc.array(fc.nat(5), { minLength: 12, maxLength: 12 }),
});
type Hands = typeof hands extends fc.Arbitrary<infer H> ? H : never;

/** A count as it is stored, event by event, with the drops that really fell by vial. */
function counted(typed: Record<string, string>, { slips, undone, ways }: Pick<Hands, 'slips' | 'undone' | 'ways'>) {
  const events: RunEvent[] = [];
  const put = (one: Pick<RunEvent, 'type' | 'key'> & Partial<RunEvent>) =>
    void events.push({
      run: 'r',
      seq: events.length,
      at: new Date(1_800_000_000_000 + 1000 * events.length).toISOString(),
      ...one,
    });
  for (const [key, text] of Object.entries(typed)) put({ type: 'typed', key, text });
  const fell = new Map<string, number>();
  const left: { key: string; planned: number; had: number }[] = [];
  for (let n = 0, turn = 0; n < 60; n++) {
    const stepNow = () => {
      const state = fold(events);
      const steps = count.steps(state);
      return { state, steps, step: steps[placeOf(steps, state)]! };
    };
    const { step } = stepNow();
    if (step.pad) {
      const { counter, target } = step.pad;
      const had = fell.get(counter) ?? 0;
      const slip = slips[turn] ?? 0;
      const more = Math.max(had === 0 ? 1 : 0, target! - had + slip);
      const back = Math.min(more, undone[turn] ?? 0);
      for (let i = 0; i < more; i++) put({ type: 'drop', key: counter });
      for (let i = 0; i < back; i++) put({ type: 'undo', key: counter });
      for (let i = 0; i < back; i++) put({ type: 'drop', key: counter });
      fell.set(counter, had + more);
      turn++;
    }
    if (step.key.startsWith('slip.')) {
      const options = step.ask![0]!.options!;
      const about = step.key.slice('slip.count.'.length).replace(/\.\d+$/, '');
      const [, planned] = /, not (\d+)/.exec(step.say)!;
      left.push({ key: about, planned: Number(planned), had: fell.get(`drops.${about}`)! });
      const pick = options[(ways[turn] ?? 0) % options.length]!;
      put({ type: 'typed', key: step.key, text: pick.value });
    }
    const now = stepNow();
    const why = Object.values(problemsOf(now.step, now.state))[0] ?? now.step.problem;
    if (why) throw new Error(`${now.step.key}: ${why}`);
    const next = nextKey(count, now.step, now.state);
    if (next === undefined) return { events, fell, left, at: step.key };
    leaving(now.step, now.state, next).forEach(put);
  }
  throw new Error('the count goes in a circle');
}

/** The trial as the engine stores it, and its run. */
function kept(events: readonly RunEvent[]): { run: Run; vial: Vial; done: Done } {
  const records = recordsOf(count, 'r', { state: fold(events), events, endedAt: '2027-02-01T10:00:00.000Z' });
  const vial = records.find((record) => record.kind === 'vial') as Vial;
  takeIn(records);
  const run = newRecord('run', { id: 'r', task: 'count', kept: records.map(({ id }) => id), title: '' });
  return { run, vial, done: vial.done! };
}

const asked = ({ way, purpose, planned }: Hands): Record<string, string> =>
  way === 'formula'
    ? { formula: 'f', purpose, dropper: 'pip', most: '60', mix: '1' }
    : {
        formula: 'hand',
        dropper: 'pip',
        ...Object.fromEntries(
          MATERIALS.flatMap((id, i) => [
            [`pick.v-${id}`, 'yes'],
            [`plan.v-${id}`, String(planned[i])],
          ]),
        ),
      };

const noSlips = { slips: [], undone: [], ways: [] };
const drops = ({ uses }: Vial) => Object.fromEntries(uses.map((use) => [use.id, use.drops]));

function setUp() {
  shelf.records.value = new Map();
  takeIn([
    ...MATERIALS.map(material),
    ...MATERIALS.map((id, i) => vialOf(`v-${id}`, [0.01, 0.005, 0.02][i]!, { material: id, massG: 1000 })),
    ...pipette,
    newRecord('formula', {
      id: 'f',
      name: 'Orchard',
      root: 'f',
      version: 1,
      notes: '',
      lines: MATERIALS.map((id, i) => ({ material: id, name: `${id} oil`, share: SHARES[i]! })),
    }),
  ]);
}
beforeEach(setUp);

describe('a count, with whatever slips and rescues', () => {
  test('what is stored is what the events say, and the vial weighs what went in to the last milligram', () => {
    fc.assert(
      fc.property(hands, (hand) => {
        setUp();
        const { events, fell, left } = counted(asked(hand), hand);
        const { vial, done } = kept(events);
        const told = Object.fromEntries([...fell].map(([counter, n]) => [counter.slice('drops.'.length), n]));
        expect(drops(vial)).toEqual(told);
        const grams = vial.uses.reduce((sum, { massG }) => sum + massG, 0);
        expect(Math.abs(grams - vial.massG.value)).toBeLessThan(1e-9);
        expect(
          vial.uses.every(({ how, lot, dropper }) => how === 'counted' && lot === '1' && dropper?.id === 'pip'),
        ).toBe(true);
        expect((done.slips ?? []).map(({ id, planned, counted: had }) => ({ key: id, planned, had }))).toEqual(left);
        expect([done.from, done.to]).toEqual([events[0]!.at, '2027-02-01T10:00:00.000Z']);
      }),
      { numRuns: 40 },
    );
  });

  test('made again it is the same drops of the same vials, and nothing is planned or asked', () => {
    fc.assert(
      fc.property(hands, (hand) => {
        setUp();
        const { events } = counted(asked(hand), hand);
        const { run, vial } = kept(events);
        const { typed, differences } = repeatOf(count, run, fold(events));
        expect(differences).toEqual([]);
        const first = count.steps(
          fold(Object.entries(typed).map(([key, text], seq) => ({ run: 'r2', seq, at: '', type: 'typed', key, text }))),
        )[0]!;
        expect(first.pad).toBeDefined();
        const again = kept(counted(typed, noSlips).events);
        expect(drops(again.vial)).toEqual(drops(vial));
        expect(again.done.slips).toBeUndefined();
        expect(again.vial.contents.map(({ strength }) => strength.value)).toEqual(
          vial.contents.map(({ strength }) => expect.closeTo(strength.value, 12)),
        );
        const formulas = [vial, again.vial].map(({ from }) =>
          from.filter((id) => shelf.records.value.get(id)?.kind === 'formula'),
        );
        expect(formulas[1]).toEqual(formulas[0]); // no second formula is written
      }),
      { numRuns: 25 },
    );
  });
});

describe('a count that was chosen from the curve', () => {
  const plan = { formula: 'f', purpose: 'smell', dropper: 'pip', most: '60', mix: '1' };

  test('keeps the plan, how far it was off, and what was done about a slip', () => {
    const { events } = counted(plan, { slips: [1], undone: [], ways: [0, 0] });
    const { done, vial } = kept(events);
    expect(done.plan!.lines.map(({ code }) => code).sort()).toEqual(['V-M1 1 % w/w', 'V-M2 0.5 % w/w', 'V-M3 2 % w/w']);
    expect(done.plan!.error).toBeGreaterThan(0);
    const [slip] = done.slips!;
    expect(slip!.counted - slip!.planned).toBe(1);
    expect(slip!.way).not.toBe('');
    expect(slip!.what).toMatch(/^V-M/);
    expect(drops(vial)[slip!.id]).toBeGreaterThanOrEqual(slip!.counted);
  });

  test('made again, a first line left without a drop is asked about, and the label tells what is in it', () => {
    const { run } = kept(counted(plan, noSlips).events);
    const walk = startWalking(count, repeatOf(count, run, fold(counted(plan, noSlips).events)).typed);
    walk.next(); // at the first pad, before anything was tapped
    expect(walk.step().say).toMatch(/^‹0 drops› of /);
    walk.type(walk.step().ask![0]!.name, walk.step().ask![0]!.options![0]!.value);
    const all = counted(walk.state().typed, noSlips);
    const { vial } = kept(all.events);
    const true100 = vial.contents.reduce((sum, { strength }) => sum + strength.value, 0) * 100;
    expect(Math.abs(vial.label.value / true100 - 1)).toBeLessThan(0.05);
  });

  test('made again with a vial put away, the same drops fall from the nearest one, and that is said', () => {
    const { events } = counted(plan, noSlips);
    const { run, vial } = kept(events);
    const away = { ...vialOf('v-m2', 0.005, { material: 'm2', massG: 1000 }), archived: '2027-01-01T00:00:00Z' };
    takeIn([away, vialOf('w', 0.006, { material: 'm2', massG: 1000 })]);
    const { typed, differences } = repeatOf(count, run, fold(events));
    expect(differences.map(({ words, now }) => [words.split(' ')[0], now.split(' ')[0]])).toEqual([['V-M2', 'W']]);
    const again = kept(counted(typed, noSlips).events);
    expect(drops(again.vial)['w']).toBe(drops(vial)['v-m2']);
  });

  test('a trial of the first version is made again from the drops in its run', () => {
    const { events } = counted(plan, { slips: [1, 0, -1], undone: [2], ways: [1, 1, 1] });
    const { run, vial } = kept(events);
    const { done: _, ...old } = { ...vial, uses: vial.uses.map(({ id, massG }) => ({ id, massG })) };
    takeIn([old]);
    const again = kept(counted(repeatOf(count, run, fold(events)).typed, noSlips).events);
    expect(drops(again.vial)).toEqual(drops(vial));
  });

  test('with a later version of the formula, that one is planned anew where it is chosen', () => {
    const { events } = counted(plan, noSlips);
    const { run } = kept(events);
    takeIn([{ ...shelf.records.value.get('f')!, id: 'f2', version: 2 } as never]);
    const { typed, newer } = repeatOf(count, run, fold(events));
    expect(typed['formula']).toBe('f');
    expect(newer!.typed).toMatchObject({ formula: 'f2', purpose: 'smell' });
    expect(newer!.typed['plan']).toBeUndefined();
    expect(newer!.typed['exactly']).toBeUndefined();
  });
});
