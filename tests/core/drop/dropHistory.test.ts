import jstat from 'jstat';
import { expect, test } from 'vitest';
import { combineCalibrations } from '../../../src/core/drop/dropHistory';
import { exact, measured, standardUncertainty } from '../../../src/core/number/measured';

const at = (mg: number, u: number, id: string) => measured(mg, u, { id, words: id });

test('two calibrations that agree become one that is better than either', () => {
  const { mgPerDrop, drifted, change, chance } = combineCalibrations([at(20, 0.2, 'may'), at(20.2, 0.2, 'june')], 'd');
  expect(mgPerDrop.value).toBeCloseTo(20.1, 12);
  expect(standardUncertainty(mgPerDrop)).toBeCloseTo(0.2 / Math.SQRT2, 12);
  expect(drifted).toBe(false);
  expect(change).toBeCloseTo(0.01, 12);
  expect(chance).toBeGreaterThan(0.05);
});

test('the better known one counts for more (weights 1/u²)', () => {
  const { mgPerDrop } = combineCalibrations([at(20, 0.1, 'a'), at(21, 0.3, 'b')], 'd');
  expect(mgPerDrop.value).toBeCloseTo((20 * 100 + (21 * 100) / 9) / (100 + 100 / 9), 12);
});

test('a dropper that drifts is said to drift, and the ± grows by the Birge ratio', () => {
  const calibrations = [at(20, 0.2, 'may'), at(20.1, 0.2, 'june'), at(21.5, 0.2, 'july')];
  const { mgPerDrop, drifted, birge, chance, change } = combineCalibrations(calibrations, 'd');
  expect(drifted).toBe(true);
  const mean = (20 + 20.1 + 21.5) / 3;
  const chi2 = [20, 20.1, 21.5].reduce((sum, x) => sum + ((x - mean) / 0.2) ** 2, 0);
  expect(birge).toBeCloseTo(Math.sqrt(chi2 / 2), 12);
  expect(chance).toBeCloseTo(1 - jstat.jStat.chisquare.cdf(chi2, 2), 7); // a statistics library from the registry
  expect(standardUncertainty(mgPerDrop)).toBeCloseTo((birge! * 0.2) / Math.sqrt(3), 12);
  expect(change).toBeCloseTo(21.5 / 20.05 - 1, 12);
});

test('a source shared by all calibrations, such as the same scale, is not averaged away', () => {
  const shared = combineCalibrations([at(20, 0.2, 'scale'), at(20, 0.2, 'scale')], 'd').mgPerDrop;
  expect(standardUncertainty(shared)).toBeCloseTo(0.2, 12);
});

test('a single calibration stays as it is', () => {
  const alone = combineCalibrations([at(20, 0.2, 'may')], 'd');
  expect(alone).toMatchObject({ birge: null, chance: null, drifted: false, change: null });
  expect(alone.mgPerDrop).toEqual(at(20, 0.2, 'may'));
});

test('nothing to combine, or a number without ±: refused in plain words', () => {
  expect(() => combineCalibrations([], 'd')).toThrow('no calibration');
  expect(() => combineCalibrations([exact(20), at(20, 1, 'a')], 'd')).toThrow('without ±');
});
