import { beforeEach, expect, test } from 'vitest';
import { volumeBy } from '../../../src/core/dilution/vessel';
import { standardUncertainty } from '../../../src/core/number/measured';
import { shelf, takeIn } from '../../../src/records/shelf';
import { vessel } from '../../../src/tasks/vessel/task';
import { vesselChoices, vesselOf } from '../../../src/workshop/vessels';
import { startWalking } from '../walking';

beforeEach(() => void (shelf.records.value = new Map()));

test('a vessel is kept with its class and what a filling may be off, as its standard has it', () => {
  const [kept] = startWalking(vessel, { sort: 'cylinder', name: 'C1' }).keep();
  // ASTM E1272-02, table 1: a graduated cylinder of 10 mL, class A, ± 0.10 mL
  expect(kept).toMatchObject({ kind: 'vessel', name: 'C1', capacityMl: 10, tolerance: { mL: 0.1 } });
  takeIn([kept as never]);
  expect(vesselChoices()[0]).toMatchObject({
    value: kept!.id,
    short: 'C1',
    hint: 'Graduated cylinder, 10 mL, class A',
  });
});

test('two vessels of one class are two sources; a vessel twice is one', () => {
  const kept = ['C1', 'C2'].map((name) => startWalking(vessel, { sort: 'cylinder', name }).keep()[0]!);
  takeIn(kept as never);
  const [one, other] = kept.map(({ id }) => volumeBy(vesselOf(id)!, 8, { id: 'x', words: 'solvent' }));
  const ids = (volume: typeof one) => volume!.sources.map(({ id }) => id);
  expect(ids(one).filter((id) => ids(other).includes(id))).toEqual(['x:readings']);
  expect(ids(volumeBy(vesselOf(kept[0]!.id)!, 3, { id: 'y', words: 'solvent' }))[0]).toBe(ids(one)[0]);
  expect(standardUncertainty(one!)).toBeCloseTo(Math.hypot(0.1, 0.05) / Math.sqrt(3), 9);
});

test('another vessel has the tolerance that is on it; without it nothing is kept', () => {
  const own = { sort: 'own', name: 'Flask', capacity: '100' };
  expect(() => startWalking(vessel, own).keep()).toThrow('its tolerance');
  const [kept] = startWalking(vessel, { ...own, off: '0.2' }).keep();
  expect(kept).toMatchObject({ capacityMl: 100, tolerance: { mL: 0.2 }, readsMl: 0.1 });
});

test('without a name it is called after the first that is free', () => {
  takeIn(startWalking(vessel, { sort: 'syringe' }).keep() as never);
  expect(startWalking(vessel, { sort: 'syringe' }).keep()[0]).toMatchObject({ name: 'Vessel 2' });
});
