import { afterAll, describe, expect, test } from 'vitest';
import {
  closedGauge,
  drinkGauge,
  gasShare,
  mostVolumes,
  volumesFermented,
  type Closed,
} from '../../../src/core/drink/gas';
import { gaugeForVolumes, volumesAt } from '../../../src/core/liquid/carbonation';
import { celsius } from '../../../src/core/number/units';
import published from '../../reference/keeping.json';
import { residuals } from '../residuals';

const wine = residuals('gas in wine at 20 °C, L in a litre (Reg. 2676/90 against Weiss with its share)');
afterAll(() => wine.print());

const bottle: Closed = { volumes: 4, atC: 4, headspace: 0.04, hasAir: false, share: 1 };
const at = (t: number, more: Partial<Closed> = {}) => closedGauge({ ...bottle, ...more }, celsius(t));

describe('gas in a drink', () => {
  test('is what the rule for sparkling wine says, within 3 %', () => {
    const { perBar, water, abv: perAbv, sugar: perSugar } = published.gas;
    for (const abv of [0, 8, 12])
      for (const sugar of [0, 50, 110])
        for (const bar of [1, 3, 5]) {
          const rule = perBar * (bar + 1.01325) * (water - perAbv * abv) * (1 - perSugar * sugar);
          const got = volumesAt(bar, celsius(20)) * gasShare(sugar, abv);
          wine.add(`${abv} %, ${sugar} g/L, ${bar} bar`, got - rule);
          expect(Math.abs(got / rule - 1)).toBeLessThan(0.03);
        }
  });

  test('takes a fifth more pressure at 110 g/L of sugar than in water', () => {
    const [sweet, water] = [drinkGauge(3, gasShare(110, 0), celsius(4)), gaugeForVolumes(3, celsius(4))];
    expect((sweet + 1.013) / (water + 1.013)).toBeCloseTo(1 / 0.8416, 1);
    expect(() => gasShare(110, 30)).toThrow('20 % ABV');
  });
});

describe('a closed bottle', () => {
  test('has less than an endless supply of gas would give, and more with air in it', () => {
    for (const t of [20, 30, 40]) {
      expect(at(t)).toBeLessThan(gaugeForVolumes(4, celsius(t)));
      expect(at(t, { hasAir: true })).toBeGreaterThan(at(t) + 1);
    }
  });

  test('by hand: at 20 °C with 10 % headspace the gas of both is in both', () => {
    const p = at(20, { headspace: 0.1, atC: 20 });
    const room = 0.1 / 0.9;
    const all = 4 + (room * 273.15) / 293.15;
    expect(volumesAt(p, celsius(20)) + (room * (p / 1.01325 + 1) * 273.15) / 293.15).toBeCloseTo(all, 6);
  });

  test('four volumes in a bottle rated 5 bar at 40 °C are too many, and it says how many are not', () => {
    expect(at(40)).toBeGreaterThan(5);
    const most = mostVolumes(bottle, 5, celsius(40));
    expect(at(40, { volumes: most })).toBeCloseTo(5, 4);
    expect(most).toBeGreaterThan(2.9);
    expect(most).toBeLessThan(3.5);
    expect(mostVolumes({ ...bottle, hasAir: true }, 0.1, celsius(40))).toBe(0);
  });

  test('is refused beyond what is known, and full of liquid', () => {
    expect(() => at(40, { volumes: 7 })).toThrow('more than 9 bar at 40 °C');
    expect(() => at(40, { headspace: 0.005 })).toThrow('leave more');
    expect(() => at(40, { headspace: 0 })).toThrow('some headspace');
    expect(() => at(45)).toThrow('0–40 °C');
  });

  test('sugar that ferments: 10 g/L make about 2.6 volumes', () => {
    expect(volumesFermented(10)).toBeCloseTo(2.601, 3);
  });
});
