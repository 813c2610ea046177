import { describe, expect, test } from 'vitest';
import { expanded, measured } from '../../../src/core/number/measured';
import type { RecordOf } from '../../../src/records/kind/kinds';
import type { RunEvent } from '../../../src/records/kind/run';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { calibrate } from '../../../src/tasks/calibrate/task';
import { combined, dropOf, learnedDrop } from '../../../src/workshop/dropMass';
import { neatLiquid } from '../../../src/workshop/onHand';
import { fold } from '../../../src/tasks/engine/fold';
import { relativeUncertainty } from '../../core/uncertainty';

function walked(typed: Record<string, string>) {
  const events = Object.entries(typed).map(([key, text], seq): RunEvent => ({
    run: 'r',
    seq,
    at: '2026-11-25T10:00:00Z',
    type: 'typed',
    key,
    text,
  }));
  return fold(events);
}
const dropper = newRecord('dropper', { name: 'P1', tip: 'glass', outlet: 'square tip' });
const insert = newRecord('dropper', { name: 'D1', tip: 'drop insert', outlet: 'lip or insert' });
takeIn([dropper, insert]);

const water = { dropper: dropper.id, liquid: 'water', readability: '0,001', temperature: '20' };
const weighed = (masses: string[], extra: Record<string, string> = {}) =>
  walked({
    ...water,
    ...Object.fromEntries(
      masses.flatMap((mass, i) => [
        [`drops.${i + 1}`, '20'],
        [`mass.${i + 1}`, mass],
      ]),
    ),
    ...extra,
  });
const cardOf = (run: ReturnType<typeof walked>) => calibrate.steps(run)[0]!;
const saidIn = ({ card, more = [] }: ReturnType<typeof cardOf>) =>
  [card!.advice?.words, card!.answer?.big, ...(card!.answer?.lines ?? []), ...more].join(' ');

describe('drops are weighed until enough is known', () => {
  test('20 drops of water at 20 °C of 1.000 g pass as the pharmacopoeial dropper (Ph. Eur. 2.1.1: 1000 ± 50 mg)', () => {
    const step = cardOf(weighed(['1.000', '1.010', '0.995']));
    expect(step.card!.advice).toBeUndefined();
    expect(saidIn(step)).toContain('within 950 to 1050 mg');
    expect(step.results![0]!.amount.value).toBeCloseTo(50.08, 1);
  });

  test('a heavier drop is said to be outside, and is calibrated all the same', () => {
    const step = cardOf(weighed(['1.200', '1.205', '1.198']));
    expect(saidIn(step)).toContain('not 950 to 1050 mg');
    expect(step.problem).toBeUndefined();
  });

  test('the ± shows from the third weighing on; nothing weighed cannot be saved', () => {
    expect(cardOf(weighed([])).problem).toContain('type what the scale shows');
    expect(saidIn(cardOf(weighed(['1.000', '1.010'])))).toContain('from the third weighing on');
    expect(saidIn(cardOf(weighed(['1.000', '1.010', '0.995'])))).toMatch(/50\.1 mg a drop, ± 0\.9 mg, 1\.9 % of it/);
  });

  test('a weighing far from the others is pointed out, and left out by the person alone; the record keeps it', () => {
    const masses = ['1.000', '1.002', '0.999', '1.001', '1.400'];
    const step = cardOf(weighed(masses));
    expect(saidIn(step)).toContain('Weighing 5 is 1.4 times the others');
    const all = calibrate.keep(weighed(masses))[0] as RecordOf<'calibration'>;
    expect(all.readings.filter(({ out }) => out)).toEqual([]);
    expect(step.card!.advice!.offer!.type).toEqual({ 'out.5': 'yes' });
    const without = weighed(masses, { 'out.5': 'yes' });
    expect(saidIn(cardOf(without))).not.toContain('times the others');
    const kept = calibrate.keep(without)[0] as RecordOf<'calibration'>;
    expect(kept.readings).toHaveLength(5);
    expect(kept.readings[4]).toEqual({ drops: 20, massG: 1.4, out: true });
    expect(kept.mgPerDrop.value).toBeCloseTo(50.025, 6);
  });

  test('three weighings on a pocket scale: one that is double is named, one that is a step off is not', () => {
    const pocket = { readability: '0.01', liquid: 'ethanol-96' };
    expect(saidIn(cardOf(weighed(['0.34', '0.35', '0.62'], pocket)))).toContain('Weighing 3 is 1.8 times the others');
    expect(saidIn(cardOf(weighed(['0.34', '0.35', '0.34'], pocket)))).not.toContain('times the others');
  });

  test('a scale that was not zeroed between is asked about, and its differences taken in one tap', () => {
    const grown = weighed(['1.001', '1.998', '3.004']);
    const { words, offer } = cardOf(grown).card!.advice!;
    expect(words).toMatch(/^Each weighing is the one before and as much again/);
    expect(offer!.type).toEqual({ 'mass.1': '1.001', 'mass.2': '0.997', 'mass.3': '1.006' });
    const taken = weighed(['1.001', '0.997', '1.006']);
    for (const run of [
      taken,
      weighed(['1']),
      weighed(['1', '1.2']),
      weighed(['1', '2', '3.5']),
      weighed(['1', '2'], { 'drops.2': '40' }),
    ])
      expect(saidIn(cardOf(run))).not.toContain('zeroed between');
  });

  test('water tells the volume of a drop too: 50 mg are 50.1 µL (ISO 8655-6: Z = 1.0029 µL/mg at 20 °C)', () => {
    const [, volume] = cardOf(weighed(['1.000', '1.000', '1.000'])).results!;
    expect(volume!.amount.value).toBeCloseTo(50 * 1.0029, 1);
    expect(volume!.unit).toBe('µL');
  });

  test('the next one begins with the dropper, liquid and scale of the last; the first one with a new dropper and a name for it', () => {
    const [fresh] = calibrate.steps(walked({}));
    expect(fresh!.ask!.map(({ name, preset }) => [name, preset])).toContainEqual(['liquid', 'ethanol-96']);
    const told = calibrate.keep(weighed(['1.000']))[0] as RecordOf<'calibration'>;
    const asked = { dropper: dropper.id, liquid: 'water', each: '30', readability: '0.001' };
    const done = { from: told.made, to: told.made, asked };
    const kept: RecordOf<'calibration'> = { ...told, done };
    takeIn([kept]);
    const [next] = calibrate.steps(walked({}));
    expect(next!.ask!.map(({ name, preset }) => [name, preset])).toEqual([
      ['dropper', dropper.id],
      ['liquid', 'water'],
      ['each', '30'],
      ['readability', '0.001'],
    ]);
  });
});

describe('the drop beside that of last time', () => {
  const now = (before: number, doubt: number) => {
    const old = newRecord('dropper', { name: `P${before}`, tip: 'glass' });
    const then = newRecord('calibration', {
      dropper: old.id,
      liquid: { id: 'water', name: 'water' },
      readings: [{ drops: 20, massG: before / 50 }],
      readabilityG: 0.001,
      mgPerDrop: measured(before, doubt, { id: 'then', words: 'x' }),
      spread: 0.05,
    });
    takeIn([old, then]);
    const step = cardOf(weighed(['1.000', '1.002', '0.998'], { dropper: old.id })); // 50 mg
    return step.more!.find((line) => /before/.test(line));
  };

  test.each([
    [50, 1, 'The drop weighs what it weighed before: old and new weighings count together.'],
    [50.02, 1, 'The drop weighs what it weighed before: old and new weighings count together.'],
    [
      50.5,
      1,
      'The drop is 0.99 % lighter than before, no more than chance allows: old and new weighings count together.',
    ],
    [49.5, 1, 'The drop is 1 % heavier than before, no more than chance allows: old and new weighings count together.'],
  ])('%d ± %d mg then and 50 mg now: %s', (before, doubt, words) => {
    expect(now(before, doubt)).toBe(words);
  });

  test('a drop that changed is said to have changed', () => {
    expect(now(60, 0.1)).toMatch(/^The drop is 17 % lighter than before, more than chance allows: the tip may be worn/);
  });
});

describe('what one drop weighs', () => {
  const of = (liquid: string, mg: number, u: number, day: string) => ({
    ...newRecord('calibration', {
      dropper: dropper.id,
      liquid: { id: liquid, name: liquid },
      readings: [{ drops: 20, massG: mg / 50 }],
      readabilityG: 0.001,
      mgPerDrop: measured(mg, u, { id: `${liquid}${day}`, words: 'x' }),
      spread: 0.05,
    }),
    made: `${day}T10:00:00Z`,
  });
  const thin = (strength: number) => ({ id: 'ethanol-96', liquid: 'ethanol' as const, strength });

  test('nobody has weighed it: a typical drop with a wide ± stands in', () => {
    const drop = dropOf('typical', { id: 'some oil', liquid: null, strength: 1 });
    expect(drop.calibrated).toBe(false);
    expect(drop.mgPerDrop.value - expanded(drop.mgPerDrop)).toBeLessThan(18);
    expect(drop.mgPerDrop.value + expanded(drop.mgPerDrop)).toBeGreaterThan(33);
  });

  test('from another liquid in a square-cut tip: a first guess of about ± 10 %', () => {
    takeIn([of('water', 50, 0.5, '2026-01-01')]);
    const drop = dropOf(dropper.id, thin(0.01));
    expect(drop.words).toContain('first guess from water');
    // 95 % spirit from the dropper of the USSR pharmacopoeia: 65 drops a gram, 15.4 mg.
    expect(Math.abs(drop.mgPerDrop.value - 15.4)).toBeLessThan(expanded(drop.mgPerDrop));
    expect(relativeUncertainty(drop.mgPerDrop)).toBeGreaterThan(Math.hypot(0.04, 0.028));
    expect(relativeUncertainty(drop.mgPerDrop)).toBeLessThan(0.055);
  });

  test('a calibration with the solvent serves its dilutions, with 0.3 % more for each 1 %, and no step at 1.5 %', () => {
    takeIn([of('ethanol-96', 15.5, 0.1, '2026-02-01')]);
    const drop = dropOf(dropper.id, thin(0.0124)); // 1 % w/v
    expect(drop.calibrated).toBe(true);
    const u = (strength: number) => relativeUncertainty(dropOf(dropper.id, thin(strength)).mgPerDrop);
    expect(u(0.0124)).toBeCloseTo(Math.hypot(0.1 / 15.5, 0.003 * 1.24, 0.028), 6);
    expect(u(0.0151) / u(0.0149)).toBeLessThan(1.001);
    expect(u(0.1)).toBeCloseTo(Math.hypot(0.1 / 15.5, 0.03, 0.028), 6);
    expect(dropOf(dropper.id, thin(0.1)).calibrated).toBe(false); // a weight is still worth it
    expect(dropOf(dropper.id, thin(0.1)).words).toContain('weighed with ethanol-96');
  });

  test('one weight of a strong dilution teaches it, and what is near it in strength', () => {
    const strong = { id: 'ethanol-96', liquid: 'ethanol' as const, strength: 0.1 };
    const taught = learnedDrop({
      dropper: dropper.id,
      liquid: strong,
      name: 'ethanol 96 %',
      drops: 40,
      massG: 0.66,
      readabilityG: 0.001,
    })!;
    expect(taught.liquid).toEqual({ id: 'ethanol-96', name: '10 % in ethanol 96 %', strength: 0.1 });
    takeIn([taught]);
    expect(dropOf(dropper.id, strong)).toMatchObject({ calibrated: true });
    expect(dropOf(dropper.id, strong).mgPerDrop.value).toBeCloseTo(16.5, 9);
    expect(dropOf(dropper.id, thin(0.09)).mgPerDrop.value).toBeCloseTo(16.5, 9);
    expect(dropOf(dropper.id, thin(0.01)).mgPerDrop.value).toBeCloseTo(15.5, 9); // the solvent's own is nearer
  });

  test('a neat oil takes its drop from the tip’s calibration: about ± 15 % for citrus, never wider than a typical drop', () => {
    const oil = (name: string, facts: object) =>
      newRecord('material', {
        name,
        code: name,
        sort: 'natural',
        form: 'liquid',
        cautions: [],
        ...facts,
      } as never) as RecordOf<'material'>;
    const [citrus, clove, thick] = [
      oil('orange', { family: 'citrus oil' }),
      oil('clove', { family: 'oil' }),
      oil('balsam', { form: 'viscous' }),
    ];
    const spirit = newRecord('dropper', { name: 'P7', tip: 'glass', outlet: 'square tip' });
    const weighed = { ...of('ethanol-96', 15.5, 0.1, '2026-02-03'), id: 'spirit', dropper: spirit.id };
    takeIn([citrus!, clove!, thick!, spirit, weighed]);
    const drop = (one: RecordOf<'material'>, from = spirit.id) => dropOf(from, neatLiquid(one));
    expect(drop(citrus!).words).toContain('a first guess from ethanol-96');
    // The power law of Yildirim et al. 2005, from 22.8 to 27.5 mN/m.
    expect(Math.abs(drop(citrus!).mgPerDrop.value / (15.5 * (27.5 / 22.8) ** 1.068) - 1)).toBeLessThan(0.02);
    expect(2 * relativeUncertainty(drop(citrus!).mgPerDrop)).toBeGreaterThan(0.13);
    expect(2 * relativeUncertainty(drop(citrus!).mgPerDrop)).toBeLessThan(0.18);
    const both = { ...of('water', 48, 0.3, '2026-02-02'), id: 'with water', dropper: spirit.id };
    takeIn([both]); // of two calibrations the one that tells it best is taken
    expect(drop(citrus!).words).toContain('a first guess from water');
    const typical = relativeUncertainty(drop(clove!, 'typical').mgPerDrop);
    expect(relativeUncertainty(drop(clove!).mgPerDrop)).toBeLessThanOrEqual(typical);
    // What runs like honey has the widest class: 10 to 70 mg.
    expect(drop(thick!).mgPerDrop.value).toBe(40);
    expect(drop(thick!).mgPerDrop.sources[0]!.u).toBeCloseTo(30 / Math.sqrt(3), 9);
    expect(drop(thick!, 'typical').words).toContain('weigh it');
  });

  test('in a warmer room than it was weighed in, the drop is lighter, where both temperatures were said', () => {
    const warm = newRecord('dropper', { name: 'P9', tip: 'glass', outlet: 'square tip' });
    const cold = { ...of('ethanol-96', 15.5, 0.1, '2026-02-02'), id: 'cold', dropper: warm.id, temperatureC: 20 };
    const drop = () => dropOf(warm.id, thin(0.0124)).mgPerDrop.value;
    takeIn([warm, cold]);
    expect(drop()).toBe(15.5);
    const { settings } = shelf;
    takeIn([Object.assign({}, settings.value, { roomC: 30 })]);
    expect(drop()).toBeCloseTo(15.5 * 0.96, 9);
    takeIn([Object.assign({}, settings.value, { roomC: 20 })]);
    expect(drop()).toBe(15.5);
  });

  test('a viscous liquid is not guessed from another, nor is a drop insert', () => {
    const fromInsert = { ...of('water', 40, 0.5, '2026-01-02'), dropper: insert.id };
    takeIn([fromInsert]);
    expect(dropOf(dropper.id, { id: 'propylene-glycol', liquid: 'propylene glycol', strength: 0.01 }).words).toMatch(
      /^typical: .*viscous/,
    );
    expect(dropOf(insert.id, thin(0.01)).words).toMatch(/^typical: .*lip or an insert/);
  });

  test('calibrations that agree count together; after a drift the newest alone counts', () => {
    const agreeing = combined([of('a', 20, 0.2, '2026-01-01'), of('a', 20.2, 0.2, '2026-06-01')]);
    expect(agreeing.drifted).toBe(false);
    expect(agreeing.mgPerDrop.value).toBeCloseTo(20.1, 2);
    const worn = combined([of('a', 20, 0.1, '2026-01-01'), of('a', 22, 0.1, '2026-06-01')]);
    expect(worn).toMatchObject({ drifted: true });
    expect(worn.mgPerDrop.value).toBe(22);
    expect(worn.change).toBeCloseTo(0.1, 6);
  });
});
