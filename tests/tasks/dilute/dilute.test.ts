import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { RecordOf } from '../../../src/records/kind/kinds';
import type { RunEvent } from '../../../src/records/kind/run';
import { ancestors } from '../../../src/records/lineage';
import { list, newRecord, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { alcoholOfVial } from '../../../src/workshop/thing/carrier';
import { dilute } from '../../../src/tasks/dilute/task';
import { refusalOf } from '../../../src/workshop/drinkable/grade';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { relativeUncertainty } from '../../core/uncertainty';
import { asLeft, startWalking } from '../walking';

const material = newRecord('material', {
  name: 'cardamom oil',
  code: 'CARD',
  sort: 'natural',
  form: 'liquid',
  cautions: [],
});
const crystals = newRecord('material', {
  name: 'vanillin',
  code: 'VAN',
  sort: 'substance',
  form: 'solid',
  cautions: [],
});
const bottle = newRecord('bottle', { material: material.id, supplier: 'made up', lot: 'L1', grade: 'fit for drinks' });
const solid = newRecord('bottle', { material: crystals.id, supplier: 'made up', lot: 'L2', grade: 'fit for drinks' });
const dropper = newRecord('dropper', { name: 'P1', tip: 'glass' });
const forty = newRecord('calibration', {
  dropper: dropper.id,
  liquid: { id: material.id, name: 'cardamom oil' },
  readings: [{ drops: 20, massG: 0.8 }],
  readabilityG: 0.001,
  mgPerDrop: { value: 40, sources: [] },
  spread: 0.05,
});

/** A run with these fields typed and that many drops tapped. */
function walked(typed: Record<string, string>, drops = 0): RunState {
  const events = [
    ...Object.entries(typed).map(([key, text]) => ({ type: 'typed' as const, key, text })),
    ...Array.from({ length: drops }, () => ({ type: 'drop' as const, key: 'source' })),
  ];
  const run = fold(events.map((event, seq): RunEvent => ({ run: 'r', seq, at: '2026-11-25T10:00:00Z', ...event })));
  return asLeft(dilute, run);
}

const usual = {
  bottle: bottle.id,
  strength: '1',
  basis: '% w/v',
  size: '15',
  solvent: 'ethanol-96',
  food: 'yes',
  measure: 'syringe',
  way: 'drops',
  dropper: dropper.id,
};
const vialOf = (run: RunState) => dilute.keep(run)[0] as RecordOf<'vial'>;
const step = (run: RunState, key: string) => dilute.steps(run).find((one) => one.key === key)!;
const percentWv = (vial: RecordOf<'vial'>) => vial.contents[0]!.strength.value * vial.densityGPerMl * 100;

beforeAll(() => takeIn([material, crystals, bottle, solid, dropper, forty]));

describe('a dilution from the neat bottle', () => {
  test('four drops of 40 mg in 15 mL of solvent are 1.055 % w/v: their own volume counts, which makes the habit’s 1.07 %', () => {
    // 160 mg in 15 mL; the drops add 0.17 mL of their own (0.95 g/mL).
    const run = walked({ ...usual, 'solvent.own': 'yes', 'solvent.ml': '15' }, 4);
    expect(percentWv(vialOf(run))).toBeCloseTo((0.16 / (15 + 0.16 / 0.95)) * 100, 3);
  });

  test('four drops nobody has weighed are nearer 0.7 %, and the ± says how little is known', () => {
    const vial = vialOf(walked({ ...usual, dropper: 'typical', 'solvent.own': 'yes', 'solvent.ml': '15' }, 4));
    expect(percentWv(vial)).toBeGreaterThan(0.6);
    expect(percentWv(vial)).toBeLessThan(0.75);
    expect(2 * relativeUncertainty(vial.contents[0]!.strength)).toBeGreaterThan(0.3);
  });

  test('an overshoot is kept as it is, or rescued to what was asked for', () => {
    const over = { ...usual, size: '10' };
    const wish = step(walked(over), 'drops').pad!.target!;
    const { live } = step(walked(over), 'drops').pad!;
    expect(live(0)).toBe(`of ${wish} drops`);
    expect(live(wish)).toMatch(new RegExp(`^of ${wish} drops · 1.* now$`));
    expect(live(wish + 1)).toMatch(new RegExp(`^1 too many: ${wish} planned · 1.* now$`));
    const kept = walked(over, wish + 1);
    expect(step(kept, 'made').done).toMatch(/^Keep it as/);
    expect(percentWv(vialOf(kept))).toBeGreaterThan(1.2);
    expect(percentWv(vialOf(walked({ ...over, overshoot: 'rescue' }, wish + 1)))).toBeCloseTo(1, 3);
  });

  test('a target of fewer than three drops is offered by way of a stronger dilution', () => {
    const { card, done, types } = step(walked({ ...usual, strength: '0,1', size: '10' }), 'card');
    expect(card!.advice!.words).toMatch(/fewer than 3 drops/);
    expect(done).toMatch(/^Make [\d.]+ % of CARD neat/); // the better way is the main button
    const [first, last] = JSON.parse(types!['rack']!) as { given: Record<string, string> }[];
    expect(Number(first!.given['strength'])).toBeGreaterThan(0.1);
    expect(last!.given).toMatchObject({ bottle: 'rack.1' });
    expect(card!.advice!.offer!.type).toEqual({ direct: 'yes' });
    expect(step(walked({ ...usual, strength: '0,1', size: '10', direct: 'yes' }), 'card').done).toMatch(/^Pour /);
  });

  test('a solid is weighed, never dropped, even when drops were typed', () => {
    const run = walked({ ...usual, bottle: solid.id });
    const keys = dilute.steps(run).map((one) => one.key);
    expect(keys).toContain('material');
    expect(keys).not.toContain('drops');
    expect(step(run, 'card').ask!.map(({ name }) => name)).not.toContain('dropper');
  });

  test('with anything that is not food grade the vial is smell only', () => {
    expect(vialOf(walked(usual, 4)).grade).toBe('fit for drinks');
    expect(vialOf(walked({ ...usual, food: 'no' }, 4)).grade).toBe('smell only');
    expect(vialOf(walked({ ...usual, solvent: 'isopropanol-99', food: 'yes' }, 4)).grade).toBe('smell only');
  });

  test('a vial thinned from a smell-only vial stays smell only', () => {
    const first = vialOf(walked({ ...usual, food: 'no' }, 4));
    takeIn([first]);
    const second = vialOf(
      walked(
        { ...usual, bottle: first.id, strength: '0.1', dropper: 'typical', measure: 'scale', 'solvent.g': '8' },
        40,
      ),
    );
    expect(second.grade).toBe('smell only');
    expect(second.contents[0]!.material).toBe(material.id);
  });

  test('two vials from one dropper and one solvent carry those doubts under one name', () => {
    const ids = (vial: RecordOf<'vial'>) => vial.contents[0]!.strength.sources.map((source) => source.id);
    const [one, two] = [
      vialOf(walked({ ...usual, dropper: 'typical' }, 4)),
      vialOf(walked({ ...usual, dropper: 'typical' }, 5)),
    ];
    const shared = ids(one).filter((id) => ids(two).includes(id));
    expect(shared).toEqual(['typical:neat oil:typical', 'vessel:syringe', 'density:ethanol-96']);
  });

  test('the ± of the solvent is that of the vessel: absolute of a cylinder, by eye a share, on a scale its step', () => {
    const solventU = (measure: string, size: string) => {
      const vial = vialOf(
        walked({ ...usual, measure, size, 'solvent.own': 'yes', 'solvent.ml': size, 'solvent.g': size }, 4),
      );
      const { value, sources } = vial.massG;
      const found = sources.find(({ id }) => /^vessel:|:solvent(:readability)?$/.test(id))!;
      return found.u / (value - 0.16); // of the solvent: four drops of 40 mg are in it too
    };
    expect(solventU('cylinder', '5')).toBeCloseTo(0.1 / Math.sqrt(3) / 5, 6);
    expect(solventU('cylinder', '15')).toBeCloseTo(0.2 / Math.sqrt(3) / 15, 6); // filled twice
    expect(solventU('shoulder', '15')).toBeCloseTo(0.08 / Math.sqrt(3), 6);
    expect(solventU('scale', '15')).toBeCloseTo(0.01 / Math.sqrt(6) / 15, 6);
  });
});

describe('ways down', () => {
  test('0.01 % on a scale goes down in steps that it can weigh, each with its ±', () => {
    const run = walked({ ...usual, strength: '0.01', way: 'mass', measure: 'scale', readability: '0.001' });
    const { card, types } = step(run, 'card');
    expect(card!.advice!.words).toMatch(/Better: .* make .* w\/w; .* make .* w\/w.*Known to ± [\d.]+ %/);
    const rack = JSON.parse(types!['rack']!) as { given: Record<string, string> }[];
    expect(rack.length).toBeGreaterThan(1);
    expect(rack[0]!.given).toMatchObject({ bottle: bottle.id, basis: '% w/w' });
  });

  test('a small solid on a pocket scale goes by way of 10 % at most, in amounts that scale and vial can do', () => {
    const run = walked({
      ...usual,
      bottle: solid.id,
      strength: '0.1',
      size: '15',
      measure: 'scale',
      readability: '0.01',
    });
    const { types, card } = step(run, 'card');
    const [first] = JSON.parse(types!['rack']!) as { given: Record<string, string> }[];
    expect(Number(first!.given['strength'])).toBeLessThanOrEqual(10);
    const [taken, solvent] = [Number(first!.given['again.source']), Number(first!.given['again.solvent'])];
    expect(Math.abs(taken / 0.01 - Math.round(taken / 0.01))).toBeLessThan(1e-6);
    expect(taken + solvent).toBeGreaterThanOrEqual(2 - 1e-9);
    expect(card!.advice!.words).toMatch(/Known to ± [\d.]+ %/);
  });

  test('where nothing stays within ± 10 %, the best that can be is offered with its ±, by drops that no one has weighed', () => {
    const run = walked({ ...usual, strength: '0.01', size: '5', dropper: 'typical' });
    const known = Number(/Known to ± ([\d.]+) %/.exec(step(run, 'card').card!.advice!.words)![1]);
    expect(known).toBeGreaterThan(20);
    expect(known).toBeLessThanOrEqual(100);
  });

  test('what the scale would show nothing of is refused, with the way down beside it, and no step says 0.00 g', () => {
    const run = walked({ ...usual, strength: '0.001', way: 'mass', measure: 'scale', readability: '0.01' });
    const { problem, card, types } = step(run, 'card');
    if (!types) expect(problem).toMatch(/^The scale would show nothing of it: make a stronger dilution first/);
    expect(card!.answer!.big).toBe('less than 0.01 g');
    expect(step(run, 'material').say).toMatch(/Weigh in ‹less than 0.01 g› of /);
  });

  test('nothing is planned finer than the scale, and whole drops that come near are not said to be off', () => {
    const run = walked({ ...usual, strength: '1', way: 'mass', measure: 'scale', readability: '0.1' });
    const says = [
      `‹${step(run, 'card').card!.answer!.big}›`,
      step(run, 'pour.solvent').say,
      step(run, 'material').say,
    ].join(' ');
    expect([...says.matchAll(/(\d+\.?\d*) g›/g)].every(([, grams]) => /^\d+\.\d$/.test(grams!))).toBe(true);
    const { answer, advice } = step(walked(usual), 'card').card!;
    expect([...answer!.lines, advice?.words].join(' ')).not.toMatch(/That is 0 %|e-/);
  });

  test('a stronger vial of the same material on the Shelf is thinned instead of the bottle', () => {
    const ten = vialOf(walked({ ...usual, strength: '2', measure: 'scale', 'solvent.g': '12' }, 8));
    takeIn([ten]);
    const run = walked({
      ...usual,
      strength: '0.02',
      way: 'mass',
      measure: 'scale',
      readability: '0.001',
    });
    const { types, done } = step(run, 'card');
    const given = types!['rack'] ? (JSON.parse(types!['rack']) as { given: object }[])[0]!.given : types;
    expect(given).toMatchObject({ bottle: ten.id });
    expect(done).toMatch(/^Take CARD 2/);
  });

  test('nobody is sent to count more than a hundred drops: of a vial hardly stronger than the wish, a few of the neat oil are taken', () => {
    const near = vialOf(walked({ ...usual, strength: '1.1', measure: 'scale', 'solvent.g': '12' }, 4));
    takeIn([near]);
    const { advice } = step(walked({ ...usual, size: '5' }), 'card').card!;
    const drops = [...advice!.words.matchAll(/(\d+) drops? of/g)].map(([, many]) => Number(many));
    expect(Math.max(0, ...drops)).toBeLessThanOrEqual(100);
    const away: typeof near = { ...near, archived: '2026-11-25T10:00:00Z' };
    takeIn([away]);
  });

  test('the code on the label is the material’s, with a letter where strength and day would not tell it from a vial in use', () => {
    const filled = { 'solvent.own': 'yes', 'solvent.ml': '15', 'vial.made': '2026-05-04' };
    const codeOn = (bottle: string, more: Record<string, string> = {}) =>
      vialOf(walked({ ...usual, bottle, ...filled, ...more }, 4)).code;
    const lime = newRecord('material', {
      name: 'lime oil',
      code: 'LIME',
      sort: 'natural',
      form: 'liquid',
      cautions: [],
    });
    const limes = newRecord('bottle', { material: lime.id, supplier: 'made up', lot: 'L9', grade: 'fit for drinks' });
    takeIn([lime, limes]);
    expect(codeOn(limes.id)).toBe('LIME');
    const first = vialOf(walked({ ...usual, bottle: limes.id, ...filled }, 4));
    takeIn([first]);
    expect(codeOn(limes.id)).toBe('LIMEB');
    const kept = vialOf(walked({ ...usual, bottle: limes.id, ...filled, 'vial.code': 'LIME' }, 4));
    expect(kept.code).toBe('LIME'); // what was typed in the first version is kept
    expect(codeOn(limes.id, { 'vial.made': '2026-05-05' })).toBe('LIME');
    expect(codeOn(limes.id, { 'solvent.ml': '5' })).toBe('LIME');
    const empty: typeof first = {
      ...first,
      weighed: [{ at: '2026-11-26T10:00:00Z', left: { value: 0, sources: [] } }],
    };
    takeIn([empty]);
    expect(codeOn(limes.id)).toBe('LIME');
  });
});

describe('several vials are a rack', () => {
  const other = newRecord('bottle', { material: material.id, supplier: 'made up', lot: 'L3', grade: 'fit for drinks' });
  const picked = { ...usual, size: '10' };
  const walk = () => {
    takeIn([other]);
    const walker = startWalking(dilute, picked);
    walker.type('picking', 'yes');
    walker.back('set');
    walker.type(`set.${other.id}`, 'yes');
    walker.next();
    return walker;
  };

  test('of the bottle on the card and those picked with it; what is common was asked once', () => {
    const walker = walk();
    expect(walker.step().key).toBe('1.drops');
    expect(walker.keys().filter((key) => /^\d/.test(key))).toEqual(['1.drops', '2.drops']);
    // 10 mL less the 0.1 g (0.105 mL at 0.95 g/mL): 9.9 mL; 0.1 g of 40 mg drops: 2.5, so 2 or 3
    expect(walker.step().say).toMatch(/^Pour ‹9\.\d+ mL› of ethanol 96 % vol\. Add ‹[23] drops› of ‹CARD neat/);
  });

  test('each has its own count, and the run ends in all of them, each with what was planned and asked', () => {
    const walker = walk();
    walker.tap('1.source', 3);
    walker.next();
    expect(walker.step().key).toMatch(/^(1\.made|2\.drops)$/);
    if (walker.step().key === '1.made') walker.next();
    walker.tap('2.source', 2);
    if (walker.keys().at(-1) === '2.made') walker.next();
    const state = walker.state(); // the last step is left by keeping
    const vials = dilute.keep(state) as RecordOf<'vial'>[];
    expect(vials.map(({ uses }) => [uses[0]!.id, uses[0]!.drops]).sort()).toEqual(
      [
        [other.id, 3],
        [bottle.id, 2],
      ].sort(),
    );
    expect(dilute.doneOf!(state, 1).asked).toMatchObject({ size: '10', solvent: 'ethanol-96' });
    expect(new Set(vials.map(({ id }) => id)).size).toBe(2);
  });

  test('one can be left out; with none made there is nothing to keep', () => {
    const walker = walk();
    const skip = walker.step().offers!.find(({ words }) => words === 'Skip this vial')!;
    for (const [key, text] of Object.entries(skip.type!)) walker.type(key, text);
    expect(walker.step().key).toBe('2.drops');
    walker.type('2.skip', 'yes');
    expect(() => dilute.keep(walker.state())).toThrow('No vial of the rack was made.');
  });

  test('a bridge is a rack of two: the second is made from the first as it really was, by the plan that was shown', () => {
    const mgPerDrop = { value: 15, sources: [] };
    const spirit: RecordOf<'calibration'> = {
      ...forty,
      id: 'eth',
      liquid: { id: 'ethanol-96', name: 'ethanol' },
      mgPerDrop,
    };
    takeIn([spirit, ...list('vial').map((vial) => ({ ...vial, archived: '2026-11-25T10:00:00Z' }))]); // from the bottle alone
    const walker = startWalking(dilute, { ...usual, strength: '0.1', size: '10' });
    const plan = JSON.parse(walker.step().types!['rack']!) as { given: Record<string, string> }[];
    walker.next();
    expect(walker.keys().filter((key) => /drops/.test(key))).toEqual(['1.drops', '2.drops']);
    const first = walker.step().pad!.target!;
    expect(first).toBe(Number(plan[0]!.given['again.source']));
    walker.tap('1.source', first);
    walker.next();
    const second = walker.step().pad!.target!;
    expect(second).toBe(Number(plan[1]!.given['again.source']));
    walker.tap('2.source', second);
    const state = walker.state(); // the last step is left by keeping
    const [bridge, vial] = dilute.keep(state) as RecordOf<'vial'>[];
    expect(vial!.uses[0]!.id).toBe(bridge!.id);
    expect(vial!.from).toContain(bridge!.id);
    expect(percentWv(vial!)).toBeGreaterThan(0.09);
    expect(percentWv(vial!)).toBeLessThan(0.11);
    expect(vial!.label.basis).toBe('% w/v');
  });
});

describe('as last time', () => {
  test('the card of a material begins with what was asked for it last, else with what was asked last', () => {
    const told = (run: RunState, made: string) => {
      const kept = vialOf(run);
      return { ...kept, made, done: { from: made, to: made, ...dilute.doneOf!(run, 0) } };
    };
    takeIn([told(walked({ ...usual, strength: '2', size: '30', measure: 'cylinder' }, 4), '2026-11-26T10:00:00.000Z')]);
    const presets = (typed: Record<string, string>) =>
      Object.fromEntries(
        step(
          fold(
            Object.entries(typed).map(([key, text], seq) => ({
              run: 'r',
              seq,
              at: '',
              type: 'typed' as const,
              key,
              text,
            })),
          ),
          'card',
        ).ask!.map(({ name, preset }) => [name, preset]),
      );
    expect(presets({ bottle: bottle.id })).toMatchObject({
      strength: '2',
      size: '30',
      measure: 'cylinder',
      dropper: dropper.id,
    });
    expect(presets({ bottle: solid.id })).toMatchObject({ strength: '2', size: '30', measure: 'cylinder' });
  });

  test('whether a solvent is food grade is never taken over', () => {
    const food = step(walked({ bottle: bottle.id, solvent: 'ethanol-96' }), 'card').ask!.find(({ name }) =>
      name.startsWith('food'),
    )!;
    expect(food.preset).toBeUndefined();
  });
});

describe('drops that are weighed once', () => {
  test('give the strength where that is surer, and a calibration of the dropper with the liquid', () => {
    const run = walked({ ...usual, weighs: 'yes', 'drops.g': '0.24', readability: '0.001' }, 4);
    const [vial, learned] = dilute.keep(run) as [RecordOf<'vial'>, RecordOf<'calibration'>];
    expect(learned).toMatchObject({ kind: 'calibration', dropper: dropper.id, readings: [{ drops: 4, massG: 0.24 }] });
    expect(learned.mgPerDrop.value).toBeCloseTo(60, 9);
    expect(vial.uses[0]!.massG).toBeCloseTo(0.24, 9); // ± 0.4 % against the scatter of four drops, ± 2.5 %
    const pocket = vialOf(walked({ ...usual, weighs: 'yes', 'drops.g': '0.24', readability: '0.01' }, 4));
    expect(pocket.uses[0]!.massG).toBeCloseTo(0.16, 9); // one step at least is in doubt: ± 4.2 %
    const coarse = vialOf(walked({ ...usual, weighs: 'yes', 'drops.g': '0.2', readability: '0.1' }, 4));
    expect(coarse.uses[0]!.massG).toBeCloseTo(0.16, 9); // the count is surer than such a scale
    const typical = walked({ ...usual, dropper: 'typical', weighs: 'yes', 'drops.g': '0.24', readability: '0.01' }, 4);
    const [surer, ...none] = dilute.keep(typical) as RecordOf<'vial'>[];
    expect(surer!.uses[0]!.massG).toBeCloseTo(0.24, 9); // against ± 37 % of a typical drop
    expect(none).toEqual([]); // a dropper without a name learns nothing
  });
});

describe('wrong answers are met with one sentence, and stay as typed', () => {
  const sentences: [string, Record<string, string>, string, RegExp][] = [
    ['1000 %', { strength: '1000' }, 'card', /at most 100 % w\/v, not 1000/],
    ['a word', { strength: 'one' }, 'card', /“one” is not a number/],
    ['nothing', { strength: '' }, 'card', /still empty/],
    ['a negative number', { strength: '-1' }, 'card', /more than 0/],
    ['0 mL', { size: '0' }, 'card', /more than 0 mL, not 0 mL/],
  ];
  test.each(sentences)('%s', (_, typed, key, sentence) => {
    const run = walked({ ...usual, ...typed });
    expect(Object.values(problemsOf(step(run, key), run)).join(' ')).toMatch(sentence);
    expect(run.typed).toMatchObject(typed);
  });

  test('0,7 is 0.7', () => {
    const run = walked({ ...usual, strength: '0,7' });
    expect(problemsOf(step(run, 'card'), run)).toEqual({});
    expect(vialOf(walked({ ...usual, strength: '0,7' }, 3)).label.basis).toBe('% w/v');
  });
});

describe('a bottle of solvent from the Shelf', () => {
  const spirit = (grade?: 'fit for drinks' | 'smell only', facts: object = {}) => ({
    ...newRecord('supply', {
      name: 'ethanol 96 % vol',
      sort: 'solvent',
      solvent: 'ethanol-96',
      unit: 'g',
      amount: 800,
      supplier: 'made up',
      lot: 'E-1',
      ...(grade ? { grade } : {}),
    }),
    ...facts,
  });
  const asksGrade = (run: RunState) => step(run, 'card').ask!.some(({ name }) => name.startsWith('food'));

  test('is offered by its lot, gives what the vial holds beside the material, and is in its lineage', () => {
    const kept = spirit('fit for drinks');
    takeIn([kept]);
    const run = walked({ ...usual, solvent: kept.id }, 4);
    const [option] = step(run, 'card').ask!.find(({ name }) => name === 'solvent')!.options!;
    expect(option).toEqual({ value: kept.id, label: 'ethanol 96 % vol', hint: 'made up · lot E-1 · 800 g left' });
    const vial = vialOf(run);
    takeIn([vial]);
    expect(vial.solvent!.id).toBe('ethanol-96');
    expect(vial.uses.map(({ id }) => id)).toEqual([bottle.id, kept.id]);
    expect(leftOf(kept)!.value).toBeCloseTo(800 - (vial.massG.value - vial.uses[0]!.massG), 9);
    expect(ancestors(vial.id).map(({ record }) => record.id)).toContain(kept.id);
    expect(refusalOf(vial)).toBeNull();
    expect(alcoholOfVial(vial)).toBeCloseTo(alcoholOfVial(vialOf(walked(usual, 4)))!, 9);
  });

  test('is not asked about again once its label was read, and what is denatured makes smell only', () => {
    const kept = spirit('smell only');
    takeIn([kept]);
    const run = walked({ ...usual, food: 'yes', solvent: kept.id }, 4);
    expect(asksGrade(run)).toBe(false);
    expect(step(run, 'card').card!.answer!.grade).toEqual({ words: 'Smell only', barred: true });
    expect(vialOf(run).grade).toBe('smell only');
  });

  test('is asked about where nobody has read its label', () => {
    const kept = spirit();
    takeIn([kept]);
    const { food: _, ...rest } = usual;
    const run = walked({ ...rest, solvent: kept.id }, 4);
    expect(asksGrade(run)).toBe(true);
    expect(vialOf(run).grade).toBe('smell only');
  });

  test('that turns out not to be fit for drinks keeps every vial thinned with it out of them', () => {
    const kept = spirit('fit for drinks');
    takeIn([kept]);
    const vial = vialOf(walked({ ...usual, solvent: kept.id }, 4));
    const found = { ...kept, grade: 'smell only' as const };
    takeIn([vial, found]);
    expect(refusalOf(vial)).toContain('diluted from a bottle of ethanol 96 % vol that is not fit for drinks');
  });

  test('lets no vial keep longer than itself', () => {
    const kept = spirit('fit for drinks', { useBy: '2026-12-01' });
    takeIn([kept]);
    expect(vialOf(walked({ ...usual, solvent: kept.id, 'vial.made': '2026-11-01' }, 4)).useBy).toBe('2026-12-01');
    const said = () => (step(walked({ ...usual, solvent: kept.id }), 'card').more ?? []).join(' ');
    vi.useFakeTimers({ now: new Date('2026-12-01T12:00:00') });
    expect(said()).not.toContain('past its date');
    vi.useFakeTimers({ now: new Date('2026-12-02T12:00:00') });
    expect(said()).toContain('past its date');
    vi.useRealTimers();
  });
});
