import { beforeEach, describe, expect, test } from 'vitest';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import type { Vial } from '../../../src/records/kind/vial';
import { layer } from '../../../src/tasks/layer/task';
import { pairsOfFan, proposal, takeJust } from '../../../src/tasks/layer/together';
import { placeOf } from '../../../src/tasks/engine/place';
import { benchRun, noteStrips, vialOnShelf } from './strips';

let vials: Vial[];
beforeEach(() => {
  shelf.records.value = new Map();
  vials = ['AAA', 'BBB', 'CCC', 'DDD', 'EEE', 'FFF', 'GGG'].map((code) => vialOnShelf(code));
});

type Bench = ReturnType<typeof benchRun>;

function fanOf(count: number): Bench {
  const run = benchRun();
  vials.slice(0, count).forEach((vial) => run.dip(0, vial));
  return run;
}

/** Earlier layerings of some vials, liked so much. */
function layered(...tries: readonly (readonly [readonly Vial[], number | null])[]): void {
  takeIn(
    tries.map(([together, liking]) =>
      newRecord('layering', {
        name: '',
        strips: together.map(({ id, code }) => ({ vial: id, code, dips: 1, dippedAt: null, takenOutAt: null })),
        readings: [],
        verdict: { liking, decision: '', words: '' },
      }),
    ),
  );
}

const stepOf = (run: Bench) => layer.steps(run.state())[placeOf(layer.steps(run.state()), run.state())]!;

describe('what to layer next', () => {
  test('seven vials by threes take seven layerings (Fano plane), and following the proposals ends there', () => {
    const run = fanOf(7);
    run.happen(0, 'typed', 'next.size', '3');
    const first = proposal(run.state())!;
    expect(first.plan).toMatchObject({ atLeast: 7, planned: 7 });
    expect(first.possible).toBe(35);
    let layerings = 0;
    for (let next = first; next.vials.length > 0; next = proposal(run.state())!) {
      noteStrips(run, 2 + ++layerings, { words: 'smelled' }, next.vials);
      expect(layerings).toBeLessThanOrEqual(7);
    }
    expect(layerings).toBe(7);
    expect(pairsOfFan(run.state())).toMatchObject({ done: 0, total: 21 }); // no two were smelled by themselves
    run.happen(99, 'go', 'next');
    expect(stepOf(run).say).toBe('What to layer next');
  });

  test('earlier layerings count, and a vial made anew counts as the old one', () => {
    layered([vials.slice(0, 3), null]);
    const anew = { ...vialOnShelf('AA2'), contents: vials[0]!.contents };
    takeIn([anew]);
    const run = benchRun();
    run.happen(0, 'typed', 'next.size', '3');
    expect(proposal(run.state())!.coverage).toMatchObject({ done: 3, total: 21 });
    run.happen(0, 'typed', 'next.size', '2');
    expect(proposal(run.state())!.coverage).toMatchObject({ done: 0, total: 21 });
    expect(proposal(run.state())!.plan).toMatchObject({ atLeast: 21, planned: 21 });
  });

  test('strips taken out before the verdict were not smelled in the fan', () => {
    takeIn([
      newRecord('layering', {
        name: '',
        strips: vials.slice(0, 3).map(({ id, code }, i) => ({
          vial: id,
          code,
          dips: 1,
          dippedAt: null,
          takenOutAt: i === 2 ? '2026-05-04T10:00:00.000Z' : null,
        })),
        readings: [],
        verdict: { liking: null, decision: '', words: '' },
      }),
    ]);
    expect(proposal(benchRun().state())!.coverage.done).toBe(1);
  });

  test('taking a proposal up leaves just its vials in the hand', () => {
    const run = fanOf(3);
    run.happen(0, 'typed', `pick.${vials[6]!.id}`, 'yes');
    const wanted = [vials[0]!.id, vials[4]!.id];
    for (const { type, key, text } of takeJust(run.state(), wanted)) run.happen(1, type, key, text);
    run.happen(1, 'go', 'dip');
    expect(stepOf(run).say).toContain('EEE');
    run.happen(2, 'mark', `dipped.${vials[4]!.id}`);
    expect(layer.title(run.state())).toBe('Layer · AAA 1 % + EEE 1 %');
    for (const { type, key, text } of takeJust(run.state(), [vials[1]!.id])) run.happen(3, type, key, text);
    expect(layer.title(run.state())).toBe('Layer · BBB 1 %');
  });

  test('the main button takes the proposal up, and the way back is the second', () => {
    const run = fanOf(4);
    run.happen(0, 'go', 'next');
    expect(stepOf(run).done).toBe('Smell these together');
    expect(stepOf(run).act).toBeDefined();
    expect(stepOf(run).offers).toEqual([{ words: 'Back to the fan', go: 'fan' }]);
    run.happen(0, 'typed', 'next.pool', 'shelf');
    expect(stepOf(run).done).toBe('Take these');
    const before = benchRun();
    before.happen(0, 'go', 'next');
    expect(stepOf(before).offers).toEqual([{ words: 'Back to the vials', go: 'pick' }]);
  });

  test('when every pair has met, the main button leads back', () => {
    const run = fanOf(3);
    for (const [i, j] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const)
      noteStrips(run, 2 + i + j, { words: 'smelled' }, [vials[i]!.id, vials[j]!.id]);
    run.happen(9, 'go', 'next');
    expect(stepOf(run)).toMatchObject({ done: 'Back to the fan', next: 'fan' });
    expect(stepOf(run).act).toBeUndefined();
  });

  test('a fan of five is one smell: its ten pairs are open, two by two, until two are smelled by themselves', () => {
    const run = fanOf(5);
    noteStrips(run, 3, { liking: '7' });
    expect(pairsOfFan(run.state())).toMatchObject({ done: 0, total: 10, next: [vials[0]!.id, vials[1]!.id] });
    noteStrips(run, 4, { liking: '6' }, [vials[0]!.id, vials[1]!.id]);
    expect(pairsOfFan(run.state())).toMatchObject({ done: 1, total: 10, next: [vials[0]!.id, vials[2]!.id] });
    noteStrips(run, 5, { liking: '5' }, [vials[4]!.id]); // by itself it meets nothing
    expect(pairsOfFan(run.state())).toMatchObject({ done: 1 });
    run.happen(6, 'typed', 'next.size', '5');
    expect(proposal(run.state())!.coverage).toMatchObject({ done: 10, total: 10 });
  });

  test('with one vial there is nothing to propose', () => {
    shelf.records.value = new Map();
    vialOnShelf('ONE');
    const run = benchRun();
    run.happen(0, 'go', 'next');
    expect(proposal(run.state())).toBeNull();
    expect(stepOf(run).say).toBe('What to layer next');
  });
});

describe('which ones help', () => {
  /** Every three of six vials; the first vial adds two points, nothing else does. */
  function tries(count: number) {
    const threes = vials
      .slice(0, 6)
      .flatMap((a, i) => vials.slice(i + 1, 6).flatMap((b, j) => vials.slice(i + j + 2, 6).map((c) => [a, b, c])));
    const shuffled = threes.map((_, i) => threes[(i * 7) % threes.length]!); // 7 and 20 have no common divisor
    return shuffled.slice(0, count).map((three) => [three, three.includes(vials[0]!) ? 7 : 5] as const);
  }

  test('before there are tries enough nothing is said but how many there are', () => {
    layered(...tries(10));
    const run = benchRun();
    run.happen(0, 'go', 'helps');
    expect(stepOf(run).results ?? []).toEqual([]);
    expect(stepOf(run).say).toContain('Too early');
    expect(stepOf(run).more![0]).toContain('10 layerings');
  });

  test('with tries enough the vial that helps stands first, with its ±', () => {
    layered(...tries(20));
    const run = benchRun();
    run.happen(0, 'go', 'helps');
    const best = stepOf(run).results![0]!;
    expect(best.label).toBe('AAA 1 %');
    expect(best.amount.value).toBeGreaterThan(1);
    expect(best.amount.value).toBeLessThan(2); // shrunk
    expect(best.amount.sources[0]!.u).toBeGreaterThan(0);
  });
});

describe('the due list', () => {
  test('names what is due and when, first to last', () => {
    const run = fanOf(2);
    const due = layer.due!(run.state());
    expect(due[0]).toEqual({ at: run.at(2), words: 'Smell AAA 1 % + BBB 1 %, fresh' });
    expect(due.map(({ at }) => (at - run.at(0)) / 60_000)).toEqual([2, 5, 15, 60, 240, 1440]);
    noteStrips(run, 61, { words: 'thin' });
    expect(layer.due!(run.state()).map(({ words }) => words)).toEqual([
      'Smell AAA 1 % + BBB 1 %, at 4 h',
      'Smell AAA 1 % + BBB 1 %, at 24 h',
    ]);
  });

  test('a run without strips waits for nothing', () => {
    expect(layer.due!(benchRun().state())).toEqual([]);
  });
});
