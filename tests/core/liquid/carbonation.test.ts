import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import {
  carbonDioxidePerLitre,
  gaugeForVolumes,
  volumesAt,
  volumesPerAtm,
  waterVapour,
} from '../../../src/core/liquid/carbonation';
import { celsius } from '../../../src/core/number/units';
import published from '../../reference/carbonation.json';
import { residuals } from '../residuals';

const BAR_PER_PSI = 0.0689476;
const rows = published.rows.map((row) => ({
  ...row,
  value: row.value as number,
  inputs: row.inputs as Record<string, number>,
}));
const starting = (start: string) => rows.filter(({ id }) => id.startsWith(start));
const solubility = residuals('CO2 in water, volumes per atm (a second program, Weiss 1974)');
const pressures = residuals('CO2 gauge pressure, bar (a second program, Weiss 1974 with vapour pressure)');
afterAll(() => {
  solubility.print();
  pressures.print();
});

describe('carbonation', () => {
  test.each(starting('K0_'))(
    'water takes $value volumes per atm at $inputs.t_C °C (a second program with the coefficients of Weiss 1974)',
    (row) => {
      const got = volumesPerAtm(celsius(row.inputs['t_C']!));
      solubility.add(row.id, got - row.value);
      expect(Math.abs(got - row.value)).toBeLessThan(0.00006); // printed to four decimals
    },
  );

  test.each([
    [0, 0.006],
    [4, 0.008],
    [10, 0.0121],
    [20, 0.0231],
    [30, 0.0419],
  ])('water vapour at %d °C is %d atm', (t, atm) => {
    expect(waterVapour(celsius(t))).toBeCloseTo(atm, 4);
  });

  test.each(starting('gauge_'))(
    '$inputs.V volumes at $inputs.t_C °C take $value bar on the gauge (a second program)',
    (row) => {
      const got = gaugeForVolumes(row.inputs['V']!, celsius(row.inputs['t_C']!));
      pressures.add(row.id, got - row.value);
      expect(Math.abs(got - row.value)).toBeLessThan(0.03);
    },
  );

  test.each(starting('frey_'))('$id: at 1 atm in all, 100 g of water hold $value g (Frey 1958)', (row) => {
    const t = celsius(Number(row.id.split('_')[1]));
    const perLitre = carbonDioxidePerLitre(volumesAt(0, t)); // g per L, here per kg within 0.5 %
    expect(Math.abs(perLitre / 10 / row.value - 1)).toBeLessThan(0.015);
  });

  test('one volume is 1.977 g/L (44.0095/22.26)', () => {
    expect(carbonDioxidePerLitre(1)).toBeCloseTo(1.977, 3);
  });

  test('charts made for beer do not fit water: it needs about 1.3 psi less cold and 1 to 4 psi more warm', () => {
    const difference = (row: (typeof rows)[number]) => {
      const t = celsius(((row.inputs['T_F']! - 32) * 5) / 9);
      return gaugeForVolumes(row.inputs['V']!, t) / BAR_PER_PSI - row.value;
    };
    const chart = starting('chart_').filter((row) => row.id !== 'chart_formula');
    expect(chart.length).toBe(10);
    for (const row of chart) {
      const d = difference(row);
      if (row.inputs['T_F']! <= 44) expect(d > -1.4 && d < -0.9, `${row.id} ${d}`).toBe(true);
      if (row.inputs['T_F']! >= 68) expect(d > 0.9 && d < 4.4, `${row.id} ${d}`).toBe(true);
    }
  });

  test('a beer table at the same pressure lies within 7 % of water', () => {
    for (const row of starting('gL_')) {
      const [, t, bar] = row.id.split('_').map(Number);
      const got = carbonDioxidePerLitre(volumesAt(bar!, celsius(t!)));
      expect(Math.abs(got / row.value - 1), row.id).toBeLessThan(0.07);
    }
  });

  test('pressure and volumes lead back to each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), fc.double({ min: 0, max: 25, noNaN: true }), (v, t) => {
        expect(volumesAt(gaugeForVolumes(v, celsius(t)), celsius(t))).toBeCloseTo(v, 8);
      }),
    );
  });

  test('outside what is known it says so', () => {
    expect(() => volumesPerAtm(celsius(50))).toThrow('0–40 °C, not for 50 °C');
    expect(() => gaugeForVolumes(40, celsius(20))).toThrow('up to 9 bar');
    expect(() => volumesAt(12, celsius(20))).toThrow('not for 12 bar');
  });
});
