import { describe, expect, test } from 'vitest';
import { measured, standardUncertainty } from '../../../src/core/number/measured';
import type { RecordOf } from '../../../src/records/kind/kinds';
import { takeIn } from '../../../src/records/shelf';
import { leftOf } from '../../../src/records/stock';
import { contentsNow, leftByWhole, lossSince, missingIn } from '../../../src/workshop/thing/ageing';
import { today } from '../../../src/workshop/today';
import { ethanol, vialOf } from '../../tasks/count/countShelf';

type Vial = RecordOf<'vial'>;
const daysAgo = (days: number) => today(-days);
const vial = (facts: Partial<Vial> = {}): Vial => ({
  ...(vialOf('aged', 0.01, { massG: 10 }) as Vial),
  solvent: { ...ethanol, dryOff: 'minutes' },
  madeOn: daysAgo(0),
  ...facts,
});
const [part] = [(of: Vial) => contentsNow(of)[0]!.strength];

describe('a vial as it is now', () => {
  test('on its day it is what the record says; a year later its ± holds what may have gone, by its cap', () => {
    const fresh = vial();
    expect(contentsNow(fresh)).toBe(fresh.contents);
    const old = vial({ madeOn: daysAgo(365) });
    expect(part(old).value).toBe(0.01);
    expect(lossSince(old)).toBeCloseTo(0.15, 3);
    expect(standardUncertainty(part(old))).toBeCloseTo(Math.hypot(0.0001, 0.01 * (lossSince(old) / Math.sqrt(3))), 9);
    expect(lossSince({ ...old, cap: 'lined cap' })).toBeCloseTo(0.04, 3);
    expect(old.contents[0]!.strength.sources).toHaveLength(1); // what was stored is as it was
  });

  test('a solvent that stays is not lost', () => {
    const slow = vial({ madeOn: daysAgo(365), solvent: { ...ethanol, dryOff: 'stays wet' } });
    expect(contentsNow(slow)).toBe(slow.contents);
    expect(missingIn(slow, measured(9, 0.01, { id: 'x', words: 'x' }))).toBeNull();
  });
});

describe('a vial weighed whole', () => {
  const u = { id: 'w1', words: 'weighing' };
  const kept = (facts: Partial<Vial> = {}) =>
    vial({
      madeOn: daysAgo(200),
      weighed: [{ at: `${daysAgo(200)}T10:00:00.000Z`, left: measured(10, 0.02, u), wholeG: 25 }],
      ...facts,
    });

  test('10.0 g of 1.000 %, 0.7 g lighter and nothing taken: 9.3 g, and with a yes 1.075 %', () => {
    const before = kept();
    takeIn([before]);
    const left = leftByWhole(before, 24.3, { stepG: 0.01, id: 'w2' })!;
    expect(left.value).toBeCloseTo(9.3, 12);
    const missing = missingIn(before, left)!;
    expect(missing.missingG).toBeCloseTo(0.7, 12);
    const after = kept({
      weighed: [...before.weighed!, { at: new Date().toISOString(), left, wholeG: 24.3, stronger: missing.stronger }],
    });
    takeIn([after]);
    expect(100 * part(after).value).toBeCloseTo(1.0753, 4);
    expect(leftOf(after)!.value).toBeCloseTo(9.3, 12);
    expect(lossSince(after)).toBeCloseTo(0, 6); // known again from today
    expect(after.contents[0]!.strength.value).toBe(0.01);
  });

  test('what was taken is not missing', () => {
    const before = kept();
    const other = { ...(vialOf('from', 0.001) as Vial), uses: [{ id: 'aged', massG: 0.7 }] };
    takeIn([before, other]);
    const left = leftByWhole(before, 24.3, { stepG: 0.01, id: 'w2' })!;
    expect(left.value).toBeCloseTo(9.3, 12);
    expect(missingIn(before, left)).toBeNull();
    const taken: Vial = { ...other, uses: [] };
    takeIn([taken]);
  });

  test('without a whole weight there is nothing to compare with; heavier than before is as much as before', () => {
    expect(leftByWhole(vial(), 24, { stepG: 0.01, id: 'w' })).toBeNull();
    expect(leftByWhole(kept(), 25.02, { stepG: 0.01, id: 'w' })!.value).toBe(10);
  });
});
