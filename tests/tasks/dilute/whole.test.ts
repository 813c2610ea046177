import { beforeEach, expect, test } from 'vitest';
import type { RecordOf } from '../../../src/records/kind/kinds';
import { newRecord, takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { dilute } from '../../../src/tasks/dilute/task';
import { contentsNow, leftByWhole, missingIn } from '../../../src/workshop/thing/ageing';
import { startWalking } from '../walking';

type Vial = RecordOf<'vial'>;
const material = newRecord('material', {
  name: 'vanillin',
  code: 'VAN',
  sort: 'substance',
  form: 'solid',
  cautions: [],
});
const bottle = newRecord('bottle', { material: material.id, supplier: '', lot: '', grade: 'fit for drinks' });
const card = { bottle: bottle.id, strength: '1', basis: '% w/w', size: '10', solvent: 'ethanol-96', food: 'yes' };
const weighed = { measure: 'scale', readability: '0.01', direct: 'yes' };

beforeEach(() => takeIn([material, bottle]));

/** Walked to the end of the making: 7.92 g of solvent and 0.08 g of the solid, which is 1 % of 8 g. */
function made(more: Record<string, string> = {}) {
  const walker = startWalking(dilute, { ...card, ...weighed, ...more });
  walker.next();
  walker.type('solvent.g', '7.92');
  walker.next();
  walker.type('material.g', '0.08');
  return walker;
}

test('is offered where the solvent evaporates, and comes as no step by itself', () => {
  const walker = made();
  expect(walker.keys()).not.toContain('whole');
  expect(walker.step().offers!.map(({ words }) => words)).toContain('Weigh the whole vial at the end');
  expect(walker.keep()[0]).not.toHaveProperty('weighed');
  const slow = made({ solvent: 'propylene-glycol' });
  expect(slow.step().offers).toEqual([]);
  expect(made({ solvent: 'propylene-glycol', whole: 'yes' }).keys()).not.toContain('whole');
});

test('what a vial has lost when it is weighed again corrects its strength: of 8.0 g 0.7 g are gone: 1.096 times as strong', () => {
  const walker = made({ whole: 'yes' });
  walker.next();
  walker.type('whole.g', '7.5');
  expect(() => walker.next()).toThrow('less than the liquid');
  walker.type('whole.g', '23');
  const vial = { ...(walker.keep()[0] as Vial), madeOn: '2026-05-04' };
  expect(vial.weighed).toMatchObject([{ wholeG: 23, left: { value: 8 } }]);
  takeIn([vial]);
  expect(leftOf(vial)!.value).toBeCloseTo(8, 12);
  const left = leftByWhole(vial, 22.3, { stepG: 0.01, id: 'again' })!;
  const missing = missingIn(vial, left)!;
  expect(missing.missingG).toBeCloseTo(0.7, 12);
  const entry = { at: new Date().toISOString(), left, wholeG: 22.3, stronger: missing.stronger };
  const [now] = contentsNow({ ...vial, weighed: [...vial.weighed!, entry] });
  expect(now!.strength.value / vial.contents[0]!.strength.value).toBeCloseTo(8 / 7.3, 9);
});

test('is asked again for the next vial, and no longer once it was skipped', () => {
  const walker = made({ whole: 'yes' });
  walker.next();
  walker.type('whole.g', '23');
  const moment = '2026-05-04T10:00:00.000Z';
  const done = { from: moment, to: moment, ...dilute.doneOf!(walker.state(), 0) };
  takeIn([{ ...walker.keep()[0]!, done } as never]);
  const next = made();
  expect(next.keys()).toContain('whole');
  next.type('whole', 'no');
  expect(next.keys()).not.toContain('whole');
  expect(next.keep()[0]).not.toHaveProperty('weighed');
  expect(dilute.doneOf!(next.state(), 0).asked).toMatchObject({ whole: 'no' });
});
