import { describe, expect, test } from 'vitest';
import { batchTable } from '../../../src/app/sheet/batchTable';
import { layoutSheet, SHEET } from '../../../src/app/sheet/sheetLayout';
import { sheetRows } from '../../../src/app/sheet/sheetRows';
import { newRecord } from '../../../src/records/shelf';

const sure = (value: number) => ({ value, sources: [] });
const widthOf = (text: string) => 0.55 * text.length;

function batchOf(materials: number, gas = {}) {
  const names = Array.from({ length: materials }, (_, i) => `material ${i + 1}`);
  return newRecord('batch', {
    name: 'Orchard, 20 L',
    madeOn: '2026-05-04',
    jurisdiction: 'EU',
    notes: 'for the fair',
    uses: [],
    asked: {},
    formula: { id: 'f', name: 'Orchard', version: 2 },
    lines: [],
    weighed: names.map((name) => ({
      into: 'concentrate' as const,
      id: name,
      name,
      source: 'b',
      lot: `Saltmarsh, lot ${name}`,
      plannedG: 0.009333,
      massG: { value: 1019.074, sources: [{ id: 's', words: 'scale', u: 0.00041 }] },
    })),
    reached: names.map((name) => ({ material: name, name, mgPerKg: sure(12), mgPerL: sure(12) })),
    checks: [
      { state: 'over', what: 'safrole', words: 'over the limit: 1.2 mg/kg of 1 mg/kg', source: 'x'.repeat(300) },
    ],
    drink: { litres: sure(20), brix: sure(10), abv: sure(0), densityGPerMl: sure(1.04), emulsion: false, ...gas },
  });
}

describe('the sheet of a batch as a picture', () => {
  const pages = (materials: number) => layoutSheet(sheetRows(batchOf(materials)), widthOf);
  const words = (materials: number) =>
    pages(materials)
      .flat()
      .map(({ text }) => text);

  test('says all that the sheet says: planned and weighed with ±, lots, numbers, and what the rules said', () => {
    const all = words(2);
    for (const text of [
      'Orchard, 20 L',
      'material 2',
      '0.009',
      '1019.074 ± 0.001',
      '12 mg/kg',
      '10 °Brix',
      '1.04 g/mL',
    ])
      expect(all).toContain(text);
    expect(all.join(' ')).toContain('Made May 4, 2026 from Orchard, version 2; a solution.');
    expect(all.join(' ')).toContain('safrole: over the limit: 1.2 mg/kg of 1 mg/kg');
  });

  test('says, as the table does, how much gas and what pressure holds it', () => {
    const fizzy = batchOf(1, { gas: { volumes: 3, gaugeBar: 1.37, atC: 4 } });
    const [, made] = sheetRows(fizzy);
    expect(made!.words).toContain('a solution; 3 volumes of CO₂, 1.37 bar on the gauge at 4 °C.');
    expect(batchTable(fizzy)).toContain('gauge at 4 °C,1.37,,bar\r\n');
    expect(batchTable(fizzy)).toContain('CO2,3,,volumes\r\n');
    expect(batchTable(batchOf(1))).not.toContain('CO2');
  });

  test.each([1, 4, 30])('with %i materials nothing lies outside a page or upon another text', (materials) => {
    for (const page of pages(materials)) {
      for (const { text, x, y, size } of page) {
        expect(x).toBeGreaterThanOrEqual(SHEET.marginMm - 1e-9);
        expect(x + widthOf(text) * size).toBeLessThanOrEqual(SHEET.widthMm - SHEET.marginMm + 1e-9);
        expect(y - size).toBeGreaterThanOrEqual(SHEET.marginMm - 1e-9);
        expect(y).toBeLessThanOrEqual(SHEET.heightMm - SHEET.marginMm);
      }
      for (const [i, one] of page.entries())
        for (const other of page.slice(i + 1))
          if (one.y === other.y) expect(one.x + widthOf(one.text) * one.size).toBeLessThanOrEqual(other.x + 1e-9);
    }
  });

  test('a word wider than the page is broken, not cut: all of its letters are there', () => {
    expect((words(1).join('').match(/x/g) ?? []).length).toBeGreaterThanOrEqual(300);
  });

  test('what does not fit goes on a further page, and no head stands at the foot of one', () => {
    expect(pages(1)).toHaveLength(1);
    expect(pages(30).length).toBeGreaterThan(1);
    for (const page of pages(30)) expect(page.at(-1)!.size).toBeLessThan(4);
    expect(words(30)).toContain('material 30');
  });
});
