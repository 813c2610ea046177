import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { RecordOf } from '../../../src/records/kind/kinds';
import type { RunEvent } from '../../../src/records/kind/run';
import { ancestors } from '../../../src/records/lineage';
import { newRecord, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { alcoholOfVial } from '../../../src/workshop/carrier';
import { dilute } from '../../../src/tasks/dilute/task';
import { refusalOf } from '../../../src/workshop/grade';
import { fold, type RunState } from '../../../src/tasks/engine/fold';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import { relativeUncertainty } from '../../core/uncertainty';
import { asLeft } from '../walking';

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
  test('four drops of 40 mg in 15 mL of solvent are 1.07 % w/v (common practice, no source: 40 mg per drop)', () => {
    // 160 mg in 15 mL; the drops add 0.17 mL of their own, which the habit leaves out: 1.067 against 1.055.
    const run = walked({ ...usual, 'solvent.own': 'yes', 'solvent.ml': '15' }, 4);
    expect((160 / 15_000) * 100).toBeCloseTo(1.07, 2);
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
    expect(live(wish + 1)).toMatch(new RegExp(`^1 too many: ${wish} wanted · 1.* now$`));
    const kept = walked(over, wish + 1);
    expect(step(kept, 'made').done).toMatch(/^Keep it as/);
    expect(percentWv(vialOf(kept))).toBeGreaterThan(1.2);
    expect(percentWv(vialOf(walked({ ...over, overshoot: 'rescue' }, wish + 1)))).toBeCloseTo(1, 3);
  });

  test('a target of fewer than three drops is offered by way of a stronger dilution', () => {
    const weak = walked({ ...usual, strength: '0,1', size: '10' });
    const offer = step(weak, 'plan').offers!.find((one) => one.start)!;
    expect(offer.start!.task).toBe('dilute');
    expect(Number(offer.start!.typed['strength'])).toBeGreaterThan(0.1);
    expect(step(weak, 'plan').more!.join(' ')).toMatch(/fewer than 3 drops/);
  });

  test('a solid is weighed, never dropped, even when drops were typed', () => {
    const run = walked({ ...usual, bottle: solid.id });
    const keys = dilute.steps(run).map((one) => one.key);
    expect(keys).toContain('material');
    expect(keys).not.toContain('drops');
    expect(problemsOf(step(run, 'way'), run)).toEqual({ way: '“Material measured”: choose one.' });
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
    expect(shared).toEqual(['typical:neat oil:typical', 'density:ethanol-96']);
  });
});

describe('ways down', () => {
  test('0.01 % on a scale goes down in steps that it can weigh, each with its ±', () => {
    const run = walked({ ...usual, strength: '0.01', way: 'mass', measure: 'scale', readability: '0.001' });
    const plan = step(run, 'plan');
    const lines = plan.more!.filter((line) => /^\d\. /.test(line));
    expect(lines.length).toBeGreaterThan(1);
    expect(plan.more!.join(' ')).toMatch(/Known to ± [\d.]+ % of it at the end/);
    expect(plan.offers![0]!.start!.typed).toMatchObject({ bottle: bottle.id, basis: '% w/w', way: 'mass' });
  });

  test('what the scale would show nothing of is refused, with the way down beside it, and no step says 0.00 g', () => {
    const run = walked({ ...usual, strength: '0.001', way: 'mass', measure: 'scale', readability: '0.01' });
    const plan = step(run, 'plan');
    expect(plan.problem).toMatch(/^The scale would show nothing of it: make a stronger dilution first/);
    expect(plan.say).toMatch(/^‹less than 0.01 g› of /);
    expect(step(run, 'material').say).toMatch(/^Tare. Weigh in ‹less than 0.01 g› of /);
  });

  test('nothing is planned finer than the scale, and whole drops that come near are not said to be off', () => {
    const run = walked({ ...usual, strength: '1', way: 'mass', measure: 'scale', readability: '0.1' });
    const says = [step(run, 'plan').say, step(run, 'pour.solvent').say, step(run, 'material').say].join(' ');
    expect([...says.matchAll(/(\d+\.?\d*) g›/g)].every(([, grams]) => /^\d+\.\d$/.test(grams!))).toBe(true);
    const near = step(walked(usual), 'plan').more!.join(' ');
    expect(near).not.toMatch(/That is 0 %|e-/);
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
      within: '20',
    });
    const offer = step(run, 'plan').offers![0]!;
    expect(offer.words).toMatch(/^Thin CARD/);
    expect(offer.start!.typed['bottle']).toBe(ten.id);
  });

  test('nobody is sent to count more than a hundred drops: of a vial hardly stronger than the wish, a few of the neat oil are taken', () => {
    const near = vialOf(walked({ ...usual, strength: '1.1', measure: 'scale', 'solvent.g': '12' }, 4));
    takeIn([near]);
    const plan = step(walked({ ...usual, size: '5', within: '60' }), 'plan');
    const drops = [...plan.more!.join(' ').matchAll(/(\d+) drops?› of/g)].map(([, many]) => Number(many));
    expect(drops.length).toBeGreaterThan(1);
    expect(Math.max(...drops)).toBeLessThanOrEqual(100);
    const away: typeof near = { ...near, archived: '2026-11-25T10:00:00Z' };
    takeIn([away]);
  });

  test('the code on the label is the material’s, with a letter where strength and day would not tell it from a vial in use', () => {
    const filled = { 'solvent.own': 'yes', 'solvent.ml': '15', 'vial.made': '2026-05-04' };
    const codeOn = (bottle: string, more: Record<string, string> = {}) =>
      step(walked({ ...usual, bottle, ...filled, ...more }, 4), 'label').ask![0]!.preset;
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
    expect(kept.code).toBe('LIME'); // what was typed is kept, and said
    const said = step(walked({ ...usual, bottle: limes.id, ...filled, 'vial.code': 'lime' }, 4), 'label').more!;
    expect(said).toContain('Another LIME 0.66 % in use was made on that day.');
    expect(codeOn(limes.id, { 'vial.made': '2026-05-05' })).toBe('LIME');
    expect(codeOn(limes.id, { 'solvent.ml': '5' })).toBe('LIME');
    const empty: typeof first = {
      ...first,
      weighed: [{ at: '2026-11-26T10:00:00Z', left: { value: 0, sources: [] } }],
    };
    takeIn([empty]);
    expect(codeOn(limes.id)).toBe('LIME');
  });

  test('these two at 1 %, 10 mL: the solvent and the drops of all together', () => {
    const other = newRecord('bottle', {
      material: material.id,
      supplier: 'made up',
      lot: 'L3',
      grade: 'fit for drinks',
    });
    takeIn([other]);
    const { bottle: _, ...rest } = usual;
    const run = walked({ ...rest, set: 'yes', [`set.${bottle.id}`]: 'yes', [`set.${other.id}`]: 'yes', size: '10' });
    const plan = step(run, 'set-plan');
    // twice 10 mL less the 0.1 g each (0.105 mL at 0.95 g/mL): 19.8 mL; 0.1 g of 40 mg drops: 2.5, so 2 or 3 each
    expect(plan.say).toMatch(/^2 vials need ‹19\.8 mL› of ethanol 96 % vol, ‹[46] drops›\.$/);
    expect(plan.offers).toHaveLength(2);
    expect(dilute.keep(run)).toEqual([]);
  });
});

describe('wrong answers are met with one sentence, and stay as typed', () => {
  const sentences: [string, Record<string, string>, string, RegExp][] = [
    ['1000 %', { strength: '1000' }, 'strength', /at most 100 % w\/v, not 1000/],
    ['a word', { strength: 'one' }, 'strength', /“one” is not a number/],
    ['nothing', { strength: '' }, 'strength', /still empty/],
    ['a negative number', { strength: '-1' }, 'strength', /more than 0/],
    ['0 mL', { size: 'own', ownSize: '0' }, 'own-size', /more than 0 mL, not 0 mL/],
  ];
  test.each(sentences)('%s', (_, typed, key, sentence) => {
    const run = walked({ ...usual, ...typed });
    expect(Object.values(problemsOf(step(run, key), run)).join(' ')).toMatch(sentence);
    expect(run.typed).toMatchObject(typed);
  });

  test('0,7 is 0.7', () => {
    const run = walked({ ...usual, strength: '0,7' });
    expect(problemsOf(step(run, 'strength'), run)).toEqual({});
    expect(vialOf(walked({ ...usual, strength: '0,7' }, 3)).label.basis).toBe('% w/v');
  });

  test('a day that is still to come cannot be the day it was made', () => {
    const run = walked({ ...usual, 'vial.made': '2199-01-01' }, 4);
    expect(problemsOf(step(run, 'label'), run)['vial.made']).toMatch(/still to come/);
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
  const keysOf = (run: RunState) => dilute.steps(run).map(({ key }) => key);

  test('is offered by its lot, gives what the vial holds beside the material, and is in its lineage', () => {
    const kept = spirit('fit for drinks');
    takeIn([kept]);
    const run = walked({ ...usual, solvent: kept.id }, 4);
    const [option] = step(run, 'solvent').ask![0]!.options!;
    expect(option).toEqual({ value: kept.id, label: 'ethanol 96 % vol, lot E-1', hint: 'made up, 800 g left' });
    const vial = vialOf(run);
    takeIn([vial]);
    expect(vial.solvent!.id).toBe('ethanol-96');
    expect(vial.uses.map(({ id }) => id)).toEqual([bottle.id, kept.id]);
    expect(leftOf(kept)!.value).toBeCloseTo(800 - (vial.massG.value - vial.uses[0]!.massG), 9);
    expect(ancestors(vial.id).map(({ record }) => record.id)).toContain(kept.id);
    expect(refusalOf(vial)).toBeNull();
    expect(alcoholOfVial(vial)).toBeCloseTo(alcoholOfVial(vialOf(walked(usual, 4))), 9);
  });

  test('is not asked about again once its label was read, and what is denatured makes smell only', () => {
    const kept = spirit('smell only');
    takeIn([kept]);
    const run = walked({ ...usual, food: 'yes', solvent: kept.id }, 4);
    expect(keysOf(run)).not.toContain('food');
    expect(step(run, 'plan').more!.join()).toContain('not food grade');
    expect(vialOf(run).grade).toBe('smell only');
  });

  test('is asked about where nobody has read its label', () => {
    const kept = spirit();
    takeIn([kept]);
    const { food: _, ...rest } = usual;
    const run = walked({ ...rest, solvent: kept.id }, 4);
    expect(keysOf(run)).toContain('food');
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
    const useBy = step(walked({ ...usual, solvent: kept.id, 'vial.made': '2026-11-01' }, 4), 'label').ask![2]!;
    expect(useBy.preset).toBe('2026-12-01');
    vi.useFakeTimers({ now: new Date('2026-12-10T12:00:00') });
    const said = (made: string) => step(walked({ ...usual, solvent: kept.id, 'vial.made': made }, 4), 'label').more!;
    expect(said('2026-12-01').join(' ')).not.toContain('past its day');
    expect(said('2026-12-02').join(' ')).toContain('past its day');
    vi.useRealTimers();
  });
});
