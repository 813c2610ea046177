import { expect, test } from 'vitest';
import { leastPageL, page } from '../../../src/core/sensory/pageTest';
import { spreadChances } from '../../../src/core/sensory/ranking';
import reference from '../../reference/ranking.json';
import { plainRows, rowsWithL } from './rankRows';

test('Friedman: every critical value of the full enumeration, 3 to 6 samples, and the one misprint of the printed table', () => {
  // 85 of 86 cells of the printed table are these. The other, 5 samples, 8 sittings, 1 %, is printed 13.2; but F = 12.3
  // already has p = 0.00989, so 13.2 (p = 0.00584) is not the smallest value that counts. See the last lines.
  let compared = 0;
  for (const [samples, table] of Object.entries(reference.friedmanCritical.values))
    for (const [sittings, row] of Object.entries(table)) {
      const [p, j] = [Number(samples), Number(sittings)];
      const chances = spreadChances(plainRows(p, j))!;
      for (const [risk, cell] of Object.entries(row) as [string, { F: number; exact_p: number } | null][]) {
        let tail = 0;
        let critical: { f: number; tail: number } | null = null;
        for (const { spread, chance } of chances) {
          tail += chance;
          if (tail <= Number(risk)) critical = { f: (12 * spread) / (j * p * (p + 1)), tail };
        }
        compared++;
        if (cell === null) expect([p, j, risk, critical]).toEqual([p, j, risk, null]);
        else {
          expect(critical!.f).toBeCloseTo(cell.F, 4);
          expect(critical!.tail).toBeCloseTo(cell.exact_p, 12);
        }
      }
    }
  console.info(
    `Friedman critical values: ${compared} cells, 0 differ from the enumeration; 1 printed cell wrong (5×8, 1 %)`,
  );
  expect(compared).toBe(96);
  const { samples, sittings, printed, pAtPrinted } = reference.misprint;
  const atLeastPrinted = spreadChances(plainRows(samples, sittings))!
    .filter(({ spread }) => (12 * spread) / (sittings * samples * (samples + 1)) >= printed - 1e-9)
    .reduce((sum, { chance }) => sum + chance, 0);
  expect(atLeastPrinted).toBeCloseTo(pAtPrinted, 12);
});

test('Page: every critical L of the full enumeration, 3 to 6 samples, 2 to 20 sittings', () => {
  let compared = 0;
  for (const [samples, table] of Object.entries(reference.pageCritical.values))
    for (const [sittings, row] of Object.entries(table)) {
      const [p, j] = [Number(samples), Number(sittings)];
      for (const risk of ['0.05', '0.01', '0.001'] as const) {
        const highest = (j * p * (p + 1) * (2 * p + 1)) / 6;
        const critical = row[risk] ?? highest + 1;
        if (row[risk] !== null) expect(page(rowsWithL(p, j, critical)!).exact).toBeLessThanOrEqual(Number(risk));
        expect(page(rowsWithL(p, j, critical - 1)!).exact).toBeGreaterThan(Number(risk));
        expect(leastPageL(j, p, Number(risk))).toBe(row[risk]);
        compared++;
      }
    }
  console.info(`Page critical L: ${compared} cells, 0 differ`);
  expect(compared).toBe(228);
});
