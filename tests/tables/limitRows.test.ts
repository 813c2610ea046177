import { describe, expect, test } from 'vitest';
import { abvTerms } from '../../src/tables/abvTerms';
import { intakes } from '../../src/tables/adi';
import { cautions } from '../../src/tables/cautions';
import { constituents } from '../../src/tables/constituents';
import { bansEu, limitsEu } from '../../src/tables/limitsEu';
import { bansUs, limitsUs } from '../../src/tables/limitsUs';
import { waterSolubilities } from '../../src/tables/solubility';
import { concerns, cramerClasses, cramerFromMemory } from '../../src/tables/concernThresholds';
import { formerMaxima } from '../../src/tables/useLevels';
import { weightingAgents } from '../../src/tables/emulsion/weightingAgents';

const figures = [
  ...bansEu,
  ...bansUs,
  ...limitsEu,
  ...limitsUs,
  ...intakes,
  ...concerns,
  ...constituents,
  ...abvTerms,
  ...formerMaxima,
  ...weightingAgents,
  ...cautions,
];

/** The last digit of a CAS number is Σ i·dᵢ mod 10, counted from the right. */
function checkDigit(cas: string): boolean {
  const match = /^(\d{2,7})-(\d\d)-(\d)$/.exec(cas);
  if (!match) return false;
  const digits = [...(match[1]! + match[2]!)].reverse().map(Number);
  return digits.reduce((sum, digit, i) => sum + digit * (i + 1), 0) % 10 === Number(match[3]);
}

describe('rows of limits and intakes', () => {
  test('each names its source and how far it was confirmed', () => {
    for (const row of figures) {
      expect(row.source.length, JSON.stringify(row)).toBeGreaterThan(2);
      expect(['primary', 'secondary', 'replaced', 'proposal', 'memory']).toContain(row.level);
    }
  });

  test('a row that was read says of when, where the text shows a date', () => {
    for (const row of [...bansEu, ...limitsEu, ...intakes])
      if (row.level !== 'memory') expect(row.asOf, row.what).toMatch(/^\d{4}/);
  });

  test('every CAS number has its right check digit', () => {
    const numbers = [
      ...[...bansEu, ...bansUs, ...limitsEu, ...limitsUs, ...intakes].flatMap((row) => row.cas),
      ...constituents.flatMap((row) => [row.cas, ...row.oil]),
      ...Object.values(cramerClasses).flatMap((list) => list.split(' ')),
      ...Object.values(cramerFromMemory).flatMap((list) => list.split(' ')),
      ...waterSolubilities.flatMap((row) => row.cas),
      ...formerMaxima.flatMap((row) => Object.keys(row.rows)),
      ...weightingAgents.flatMap((row) => row.cas),
    ].filter((cas) => cas !== '');
    expect(numbers.filter((cas) => !checkDigit(cas))).toEqual([]);
  });

  test('no maximum is negative, and constituents are shares of the whole', () => {
    for (const row of [...limitsEu, ...limitsUs]) expect(row.max, row.what).toBeGreaterThanOrEqual(0);
    for (const row of constituents)
      for (const share of [row.low, row.high, row.typical])
        expect(share === null || (share > 0 && share <= 1)).toBe(true);
  });

  test('spot values: β-asarone 1 mg/kg and coumarin not as such (Reg. 1334/2008), quinine 83 ppm (21 CFR 172.575)', () => {
    expect(limitsEu.find((row) => row.what === 'beta-asarone')).toMatchObject({ max: 1, level: 'primary' });
    expect(bansEu.filter((row) => row.rule === 'not to be added as such')).toHaveLength(15);
    expect(bansEu.some((row) => row.cas.includes('91-64-5'))).toBe(true);
    expect(limitsUs.find((row) => row.what.startsWith('quinine'))).toMatchObject({ max: 83, where: 'carbonated' });
    expect(concerns.map((row) => row.microgramPerPersonDay)).toEqual([1800, 540, 90]);
    const classed = Object.values(cramerClasses).flatMap((list) => list.split(' '));
    expect(new Set(classed).size).toBe(classed.length);
    expect(classed.length).toBeGreaterThan(1300);
  });
});
