import { beforeEach, describe, expect, test } from 'vitest';
import { kinds } from '../../../src/records/kind/kinds';
import type { Proportions } from '../../../src/records/kind/proportions';
import { readRecord } from '../../../src/records/kind/record';
import type { Vial } from '../../../src/records/kind/vial';
import { shelf } from '../../../src/records/shelf';
import { describeProportions } from '../../../src/app/describe/describeProportions';
import { firstOpen, sentenceText, slotsOf } from '../../../src/tasks/engine/card';
import { placeOf } from '../../../src/tasks/engine/place';
import { layout } from '../../../src/tasks/proportions/asked';
import { boundsOf, candidatesOf, firstDrops, laidOut, sharesOf } from '../../../src/tasks/proportions/blends';
import type { Laid } from '../../../src/tasks/proportions/fields';
import { laidVial, vialOptions } from '../../../src/tasks/proportions/onHand';
import { foundIn, searchKept, searchOf } from '../../../src/tasks/proportions/search';
import { repeatWords } from '../../../src/tasks/proportions/outcome';
import { proportions } from '../../../src/tasks/proportions/task';
import { newRecord, takeIn } from '../../../src/records/shelf';
import { benchRun, vialOnShelf } from '../layer/strips';

let card: Vial, hex: Vial, pgf: Vial;
beforeEach(() => {
  shelf.records.value = new Map();
  [card, hex, pgf] = [vialOnShelf('CARD'), vialOnShelf('HEX3'), vialOnShelf('PGF')];
});

const NONE = { least: null, most: null };
type Bench = ReturnType<typeof benchRun>;
const stepOf = (run: Bench) => proportions.steps(run.state())[placeOf(proportions.steps(run.state()), run.state())]!;
const planOf = (...vials: Vial[]): Omit<Laid, 'blends'> => ({
  vials: vials.map(laidVial),
  bounds: [...boundsOf(vials.map(() => NONE), true)], // prettier-ignore
  total: vials.length === 3 ? 6 : 8,
});

/** A nose without error that likes 60 % of the first and 40 % of the second best. */
const likingOf = (shares: readonly number[]) =>
  Math.max(1, Math.round(8 - 7 * ((shares[0]! - 0.6) ** 2 + (shares[1]! - 0.4) ** 2 + (shares[2] ?? 0) ** 2)));

function begun(laid: Laid): Bench {
  const run = benchRun();
  laid.vials.forEach(({ id }, i) => run.happen(0, 'typed', `vial.${i}`, id));
  run.happen(0, 'typed', 'laid', JSON.stringify(laid));
  run.happen(0, 'go', proportions.steps(run.state())[1]!.key, 'card');
  return run;
}

/** Judges the blend that the run is at, with one touch. */
function judge(run: Bench, minute: number): void {
  const [, n] = stepOf(run).key.split('.');
  const laid = JSON.parse(run.state().typed['laid']!) as Laid;
  const proposed = run.state().typed[`blend.${n}`];
  const drops = laid.blends[Number(n)]?.drops ?? (JSON.parse(proposed!) as number[]);
  run.happen(minute, 'typed', `like.${n}`, String(likingOf(sharesOf(drops, laid.vials))));
  const steps = proportions.steps(run.state());
  run.happen(minute, 'go', steps[placeOf(steps, run.state()) + 1]!.key, `judge.${n}`);
}

function judgeAll(run: Bench, count: number): void {
  for (let n = 0, minute = 1; n < count; n++, minute += 2) {
    if (stepOf(run).key.startsWith('rest.')) run.happen(minute, 'go', `judge.${n}`, `rest.${n}`);
    judge(run, minute);
  }
}

describe('the blends', () => {
  test('ten of three vials as whole drops of one amount, and one of them twice', () => {
    const { blends } = laidOut(planOf(card, hex, pgf), 7, false);
    expect(blends).toHaveLength(11);
    expect(new Set(blends.map(({ drops }) => drops.join())).size).toBe(10);
    expect(new Set(blends.map(({ drops }) => drops.reduce((sum, n) => sum + n, 0)))).toEqual(new Set([6]));
    expect(blends.map(({ drops }) => drops.join())).toContain('4,1,1');
  });

  test('where drops weigh differently, the amount stays about the same and the true shares are told', () => {
    const plan = { ...planOf(card, hex, pgf) };
    const vials = plan.vials.map((vial, i) => ({ ...vial, mg: [10, 20, 30][i]! }));
    const mean = 6 * 20;
    for (const drops of firstDrops({ ...plan, vials })) {
      const mg = drops.reduce((sum, n, i) => sum + n * vials[i]!.mg, 0);
      expect(Math.abs(mg / mean - 1)).toBeLessThan(0.34);
      expect(sharesOf(drops, vials).reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
    }
    expect(sharesOf([3, 1, 0], vials)).toEqual([0.6, 0.4, 0]);
  });

  test('a limit is kept by the drops themselves, in the first blends and in what is proposed', () => {
    const plan = planOf(card, hex, pgf);
    const vials = plan.vials.map((vial, i) => ({ ...vial, mg: [13, 9, 11][i]! }));
    const asked = {
      ...plan,
      vials,
      bounds: [...boundsOf([{ least: null, most: 50 }, NONE, { least: 10, most: 75 }], true)],
    };
    for (const drops of [...firstDrops(asked), ...candidatesOf(asked)]) {
      const [first, , third] = sharesOf(drops, vials);
      expect(first).toBeLessThanOrEqual(0.5 + 1e-9);
      expect(third).toBeLessThanOrEqual(0.75 + 1e-9);
      expect(third).toBeGreaterThanOrEqual(0.1 - 1e-9);
    }
    expect(firstDrops(asked).length).toBeGreaterThanOrEqual(8);
  });

  test('vials whose layerings were liked come first, and that is said', () => {
    const verdict = (liking: number, vials: string[]) => ({ liking, decision: 'keep', words: '', vials });
    takeIn([
      newRecord('layering', { name: '', strips: [], readings: [], verdict: verdict(8, [pgf.id, hex.id]) }),
      newRecord('layering', { name: '', strips: [], readings: [], verdict: verdict(4, [hex.id, card.id]) }),
    ]);
    const options = vialOptions([]);
    expect(options.map(({ short }) => short)).toEqual(['PGF 1 %', 'HEX3 1 %', 'CARD 1 %']);
    expect(options[0]!.hint).toContain('in 1 layering, liked 8 of 9');
    expect(options[1]!.hint).toContain('in 2 layerings, liked 6 of 9');
  });
});

describe('the card', () => {
  test('says how many blends it comes to and what they take, and what is short', () => {
    const run = benchRun();
    expect(stepOf(run).card!.answer).toBeUndefined();
    [card, hex, pgf].forEach(({ id }, i) => run.happen(0, 'typed', `vial.${i}`, id));
    expect(stepOf(run).card!.answer!.big).toBe('11 blends');
    expect(stepOf(run).card!.answer!.lines[0]).toMatch(
      /^About 60 drops: 20\sCARD\s1\s%, 20\sHEX3\s1\s%, 20\sPGF\s1\s%\.$/,
    );
    expect(stepOf(run).cautions).toEqual([]);
    run.happen(0, 'typed', 'total', '60');
    expect(stepOf(run).cautions!.length).toBe(0);
    const short: Vial = { ...card, massG: { value: 0.1, sources: [] } };
    takeIn([short]);
    run.happen(0, 'typed', 'total', '12');
    expect(stepOf(run).cautions![0]).toContain('left, and the first blends take 40');
  });

  test('a search that goes on lays no first blends down, and says nothing of what they take', () => {
    const run = begun(laidOut(planOf(card, hex), 5, false));
    judgeAll(run, 6);
    const [record] = proportions.keep(run.state()) as [Proportions];
    const nearly: Vial = { ...card, massG: { value: 0.1, sources: [] } };
    takeIn([record, nearly]);
    const on = benchRun();
    [card, hex].forEach(({ id }, i) => on.happen(0, 'typed', `vial.${i}`, id));
    expect(stepOf(on).cautions).toHaveLength(1);
    on.happen(0, 'typed', 'earlier', record.id);
    expect(stepOf(on).card!.answer!.big).toBe('One at a time');
    expect(stepOf(on).cautions).toEqual([]);
  });

  test('at least and at most of a vial are asked on one sheet, said in the sentence, kept by the blends and told on the page', () => {
    const run = benchRun();
    [card, hex, pgf].forEach(({ id }, i) => run.happen(0, 'typed', `vial.${i}`, id));
    run.happen(0, 'typed', `least.${card.id}`, '20');
    expect(sentenceText(run.state(), stepOf(run))).toContain('CARD 1 % (at least 20 %) and HEX3 1 %');
    run.happen(0, 'typed', `most.${card.id}`, '50');
    expect(sentenceText(run.state(), stepOf(run))).toContain('CARD 1 % (at least 20 %, at most 50 %) and');
    expect(firstOpen(slotsOf(run.state(), stepOf(run)))).toBeUndefined();
    expect(stepOf(run).card!.slots![`most.${card.id}`]!.beside!.map(({ name }) => name)).toEqual([`least.${card.id}`]);
    const laid = laidOut(layout(run.state())!, 7, false);
    const going = begun(laid);
    judgeAll(going, laid.blends.length);
    const [record] = proportions.keep(going.state()) as [Proportions];
    for (const { shares } of [...record.blends, record.best]) {
      expect(shares[0]).toBeGreaterThanOrEqual(0.2 - 1e-9);
      expect(shares[0]).toBeLessThanOrEqual(0.5 + 1e-9);
    }
    expect(describeProportions(record).facts).toContainEqual(['Limits', 'CARD 1 % at least 20 %, at most 50 %']);
    run.happen(0, 'typed', `least.${card.id}`, '60');
    expect(stepOf(run).card!.slots!['total']!.wrong).toContain('its least below its most');
  });

  test('limits that leave no blend are said at their slot', () => {
    const run = benchRun();
    [card, hex].forEach(({ id }, i) => run.happen(0, 'typed', `vial.${i}`, id));
    run.happen(0, 'typed', `most.${card.id}`, '40');
    run.happen(0, 'typed', `most.${hex.id}`, '40');
    expect(stepOf(run).card!.slots!['total']!.wrong).toContain('less than the whole');
  });
});

describe('the judging', () => {
  test('one touch a blend; after so many the session ends; then it stands, with one proposal', () => {
    const run = begun(laidOut(planOf(card, hex, pgf), 7, false));
    expect(stepOf(run).key).toBe('judge.0');
    expect(stepOf(run).problem).toContain('Tap how it is');
    judgeAll(run, 6);
    expect(stepOf(run).key).toBe('rest.6');
    run.happen(60, 'go', 'judge.6', 'rest.6');
    judgeAll(run, 5);
    const look = stepOf(run);
    expect(look.key).toBe('look.11');
    expect(look.say).toMatch(/^Best so far: ‹(4|3) drops CARD\s1\s% \+ (2|3) drops HEX3\s1\s%›$/);
    expect(repeatWords(searchOf(run.state())!)).toContain('came twice');
    expect(look.done).toMatch(/^Next: \d/);
    expect(look.results![0]!.amount.value).toBeGreaterThan(6.5);
  });

  test('what is kept are true drops and likings, what was taken, and the layering that it came from', () => {
    takeIn([
      newRecord('layering', {
        id: 'l1',
        name: 'liked',
        strips: [],
        readings: [],
        verdict: { liking: 8, decision: 'keep', words: '', vials: [card.id, hex.id, pgf.id] },
      }),
    ]);
    const laid = laidOut(planOf(card, hex, pgf), 3, false);
    const run = begun(laid);
    run.happen(0, 'typed', 'had.0.1', '5');
    judgeAll(run, 11);
    run.happen(90, 'typed', 'stop', 'yes');
    const [record] = proportions.keep(run.state()) as [Proportions];
    expect(readRecord(kinds.proportions, record)).toMatchObject({ ok: true });
    expect(record.from).toEqual([card.id, hex.id, pgf.id, 'l1']);
    expect(record.blends).toHaveLength(11);
    expect(record.blends[0]!.drops[1]).toBe(5);
    expect(record.blends[0]!.shares).toEqual(sharesOf(record.blends[0]!.drops, laid.vials));
    const drops = record.blends.reduce((sum, blend) => sum + blend.drops[0]!, 0);
    expect(record.uses[0]).toMatchObject({ id: card.id, drops, how: 'counted' });
    expect(record.uses[0]!.massG).toBeCloseTo((drops * laid.vials[0]!.mg) / 1000, 9);
    expect(record.best.shares[0]).toBeGreaterThan(record.best.shares[2]!);
  });

  test('blind, all of a session are made first under their codes, and only the code is said', () => {
    const run = begun(laidOut(planOf(card, hex), 5, true));
    expect(stepOf(run).key).toBe('make.0');
    run.happen(1, 'go', 'judge.0', 'make.0');
    expect(stepOf(run).say).toMatch(/^Smell ‹\d{3}›\.$/);
    expect(stepOf(run).offers).toEqual([]);
  });

  test('on the pad the drops counted are what enters, not those asked for', () => {
    const run = begun(laidOut(planOf(card, hex), 5, false));
    run.happen(1, 'typed', 'pad', 'yes');
    const pads = proportions.steps(run.state()).filter(({ pad }) => pad);
    expect(pads.length).toBeGreaterThan(0);
    const { counter, target } = pads[0]!.pad!;
    for (let i = 0; i <= target!; i++) run.happen(1, 'drop', counter);
    run.happen(2, 'typed', 'like.0', '7');
    const counted = Number(counter.split('.')[1]);
    expect(searchOf(run.state())!.judged[0]!.drops[counted]).toBe(target! + 1);
  });

  test('fewer than three blends are refused, and the same likings propose the same blend', () => {
    const run = begun(laidOut(planOf(card, hex), 5, false));
    judgeAll(run, 2);
    expect(() => proportions.keep(run.state())).toThrow('at least 3 blends');
    const again = begun(laidOut(planOf(card, hex), 5, false));
    for (const one of [run, again]) judgeAll(one, one === run ? 4 : 6);
    const [first, second] = [run, again].map((one) => foundIn(searchOf(one.state())!));
    expect(first!.nextDrops).toEqual(second!.nextDrops);
  });

  test('a search goes on from an earlier one: its likings count, and the first proposal comes at once', () => {
    const run = begun(laidOut(planOf(card, hex), 5, false));
    judgeAll(run, 6);
    const [record] = proportions.keep(run.state()) as [Proportions];
    takeIn([record]);
    expect(searchKept(record)).toBe(searchKept(record)); // so that it is fitted once
    const on = benchRun();
    on.happen(0, 'typed', 'earlier', record.id);
    on.happen(0, 'typed', 'laid', JSON.stringify({ ...planOf(card, hex), blends: [] }));
    on.happen(0, 'go', 'look.0', 'card');
    expect(stepOf(on).key).toBe('look.0');
    expect(searchOf(on.state())!.judged).toHaveLength(6);
    expect(stepOf(on).done).toMatch(/Next|Save/);
  });
});
