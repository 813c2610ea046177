import { afterAll, describe, expect, test } from 'vitest';
import { measuredSolubility, solubilisingPower, solubilityIn } from '../../../src/core/liquid/cosolvency';
import { cosolvents, waterSolubilities } from '../../../src/tables/solubility';
import published from '../../reference/cosolvency.json';
import { residuals } from '../residuals';

const logKow = { limonene: 4.57, linalool: 2.97 } as const; // PMC7330110 table 1
const { ethanol } = cosolvents;
const seen = residuals('Cosolvency: log10 S of limonene and linalool in water with ethanol');
afterAll(() => seen.print());

const rows = published.rows.map((row) => ({
  id: row.id,
  value: row.value as number,
  inputs: row.inputs as Record<string, number>,
}));

describe('will it dissolve', () => {
  test.each(rows.filter(({ id }) => id.startsWith('mix_')))(
    '$id: $value mg/L (a second program: log-linear model, Rubino 1984; AqSolDB water solubility)',
    ({ id, value, inputs }) => {
      const name = id.split('_')[1] as keyof typeof logKow;
      const water = measuredSolubility(inputs['S_w_mg_L']!, 0);
      const got = solubilityIn(water, logKow[name], [{ ...ethanol, fraction: inputs['f']! }]).mgPerL;
      seen.add(id, Math.log10(got / value));
      expect(Math.abs(got / value - 1)).toBeLessThan(0.01); // printed to three digits
    },
  );

  test('the solubilising power of ethanol is 4.672 for limonene and 3.115 for linalool', () => {
    for (const { id, value, inputs } of rows.filter((row) => row.id.startsWith('sigma_')))
      expect(solubilisingPower(ethanol, inputs['logP']!), id).toBeCloseTo(value, 3);
  });

  test('every measured row is a number with its source, and a wide scatter widens the range', () => {
    expect(waterSolubilities).toHaveLength(48);
    for (const row of waterSolubilities) expect(row.mgPerL > 0 && /^[A-I]-\d+$/.test(row.id), row.name).toBe(true);
    expect(measuredSolubility(7, 1.25).high).toBeGreaterThan(1000);
  });

  test('more than the whole volume of cosolvent is refused', () => {
    expect(() => solubilityIn(measuredSolubility(1, 0), 3, [{ ...ethanol, fraction: 1.1 }])).toThrow('0 to 100 %');
    expect(() => measuredSolubility(0, 0)).toThrow('more than zero');
  });
});
