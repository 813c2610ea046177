import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { RecordOf } from '../../../src/records/kind/kinds';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { dilute } from '../../../src/tasks/dilute/task';
import { slotsOf } from '../../../src/tasks/engine/card';
import { problemsOf } from '../../../src/tasks/engine/leaving';
import type { Walker } from '../walking';
import { startWalking } from '../walking';

const lime = newRecord('material', { name: 'lime oil', code: 'LIME', sort: 'natural', form: 'liquid', cautions: [] });
const bottleOf = (lot: string, amountG?: number, material = lime.id) =>
  newRecord('bottle', {
    material,
    supplier: 'made up',
    lot,
    grade: 'fit for drinks',
    ...(amountG === undefined ? {} : { amountG }),
  });
const spirit = (lot: string, amount: number) =>
  newRecord('supply', {
    name: 'ethanol 96 % vol',
    sort: 'solvent',
    solvent: 'ethanol-96',
    grade: 'fit for drinks',
    unit: 'g',
    amount,
    supplier: '',
    lot,
  });

beforeAll(() => vi.useFakeTimers({ now: new Date('2026-05-04T11:00:00Z'), toFake: ['Date'] })); // the day on which the walks are
afterAll(() => vi.useRealTimers());
beforeEach(() => void (shelf.records.value = new Map()));

const text = (walk: Walker, name: string) =>
  slotsOf(walk.state(), walk.step()).find(({ field }) => field.name === name)?.text;
const value = (walk: Walker, name: string) =>
  slotsOf(walk.state(), walk.step()).find(({ field }) => field.name === name)?.value;

/** Goes from the card to the pad, counts as planned, and keeps. */
function made(walk: Walker): RecordOf<'vial'> {
  walk.next();
  walk.tap('source', walk.step().pad!.target!);
  return walk.keep()[0] as RecordOf<'vial'>;
}

describe('the vial on the card', () => {
  test('has the label that the plan gives it after rounding to whole drops', () => {
    takeIn([lime, bottleOf('1')]);
    for (const strength of ['1', '0.7', '1.3', '4']) {
      const walk = startWalking(dilute, { solvent: 'ethanol-96', food: 'yes', strength, direct: 'yes' });
      const drawn = walk.step().card!.picture!(undefined as never) as unknown as {
        props: { tag: { code: string; strength: string } };
      };
      const { label, code } = made(walk);
      expect(drawn.props.tag).toMatchObject({ code, strength: `${label.value} %` });
    }
  });
});

describe('a code means one vial', () => {
  const bottle = bottleOf('1');
  const begin = () => startWalking(dilute, { bottle: bottle.id, solvent: 'ethanol-96', food: 'yes' });

  beforeEach(() => {
    takeIn([lime, bottle]);
    takeIn([made(begin())]);
  });

  test('so the next one is proposed on the card, with the reason, and kept', () => {
    const walk = begin();
    expect(text(walk, 'vial.code')).toBe('LIMEB');
    expect(walk.step().card!.sentence).toMatch(/, labelled \{vial\.code\}$/);
    expect((walk.step().draw!(undefined as never).props as { children: string }).children).toMatch(
      /LIME [\d.]+ % was made today already, and a code means one vial/,
    );
    expect(made(walk).code).toBe('LIMEB');
  });

  test('it may be changed, but not to one that another vial of the day has', () => {
    const walk = begin();
    walk.type('vial.code', 'lime');
    expect(Object.values(problemsOf(walk.step(), walk.state()))).toEqual([expect.stringMatching(/one vial/)]);
    walk.type('vial.code', 'LIMEX');
    expect(made(walk).code).toBe('LIMEX');
  });

  test('another strength is no twin, and nothing is said', () => {
    const walk = begin();
    walk.type('strength', '5');
    expect(text(walk, 'vial.code')).toBeUndefined();
    expect(walk.step().draw).toBeUndefined();
  });

  test('two lots of one material in a rack get two codes', () => {
    const other = bottleOf('2');
    takeIn([other]);
    const walk = begin();
    walk.type('strength', '5');
    walk.type('picking', 'yes');
    walk.back('set');
    walk.type(`set.${other.id}`, 'yes');
    walk.next();
    for (const name of ['1', '2']) {
      walk.tap(`${name}.source`, walk.step().pad!.target!);
      if (name === '1') walk.next();
    }
    const codes = (walk.keep() as RecordOf<'vial'>[]).map(({ code }) => code);
    expect(codes).toEqual(['LIME', 'LIMEB']);
  });
});

describe('no default takes what there is too little of', () => {
  const [plenty, scarce] = [bottleOf('plenty', 10), bottleOf('scarce', 0.02)];

  test('of two bottles the one that holds enough, though the other is newer', () => {
    takeIn([lime, plenty, scarce]);
    expect(value(startWalking(dilute, { solvent: 'ethanol-96', food: 'yes' }), 'bottle')).toBe(plenty.id);
  });

  test('with none that does the slot is empty; who chooses one all the same is told', () => {
    takeIn([lime, scarce]);
    const given = { solvent: 'ethanol-96', food: 'yes' };
    expect(value(startWalking(dilute, given), 'bottle')).toBe('');
    const walk = startWalking(dilute, { ...given, bottle: scarce.id });
    expect(walk.step().more!.join()).toMatch(/Of LIME neat 0\.02 g are left; this takes 0\.1 g\./);
  });

  test('a bottle of solvent is taken when it fills the vial', () => {
    const [much, little] = [spirit('much', 500), spirit('little', 5)];
    takeIn([lime, plenty, much, little]);
    const walk = startWalking(dilute);
    expect(value(walk, 'solvent')).toBe(much.id);
    walk.type('solvent', little.id);
    expect(walk.step().more!.join()).toMatch(/Of ethanol 96 % vol 5 g are left; this takes 8 g\./);
  });
});

describe('what will not dissolve', () => {
  const pinene = newRecord('material', {
    name: 'alpha-pinene',
    code: 'PINE',
    cas: '80-56-8',
    sort: 'substance',
    form: 'liquid',
    cautions: [],
  });
  const said = (solvent: string, strength = '1') => {
    const bottle = bottleOf('1', 10, pinene.id);
    takeIn([pinene, bottle]);
    const walk = startWalking(dilute, { bottle: bottle.id, solvent, food: 'yes', strength, dropper: 'typical' });
    return walk.step().card!.advice?.words ?? '';
  };

  test.each([
    // 2.3 mg/L in water (AqSolDB); log Kow 4.83: 40 % vol multiply it by 10^((0.973 · 4.83 + 0.225) · 0.4) = 93, so about 0.2 g/L
    ['ethanol-40', true],
    ['water', true],
    ['ethanol-96', false],
    ['propylene-glycol', false],
    ['glycerol', false],
    ['mct', false],
  ])('alpha-pinene at 1 %% in %s: %s', (solvent, cloudy) => {
    expect(/does not dissolve/.test(said(solvent))).toBe(cloudy);
  });

  test('a citrus oil is known by its main terpene: at 1 % spirit of 40 % vol leaves it cloudy, and ethanol holds it', () => {
    const bottle = bottleOf('1', 10);
    takeIn([lime, bottle]);
    const walk = startWalking(dilute, { bottle: bottle.id, solvent: 'ethanol-40', food: 'yes' });
    expect(walk.step().card!.advice!.words).toBe(
      'At this strength lime oil does not dissolve in ethanol 40 % vol. Ethanol 96 % vol holds it.',
    );
  });

  test('of an extract nothing is known, and nothing said', () => {
    const extract = { ...lime, name: 'rhubarb extract', cas: undefined, family: undefined };
    const bottle = bottleOf('1', 10);
    takeIn([extract, bottle]);
    const walk = startWalking(dilute, { bottle: bottle.id, solvent: 'ethanol-40', food: 'yes' });
    expect(walk.step().card!.advice?.words ?? '').not.toMatch(/dissolve/);
  });
});
