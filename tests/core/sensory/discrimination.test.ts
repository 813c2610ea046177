import { describe, expect, test } from 'vitest';
import { atLeast } from '../../../src/core/number/binomial';
import {
  numberNeeded,
  power,
  testResult,
  triesNeeded,
  type DiscriminationTest,
} from '../../../src/core/sensory/discrimination';
import reference from '../../reference/discrimination.json';
import { seeded } from '../seeded';
import { Refusal } from '../../../src/core/text/refusal';

type Table = Record<string, readonly (number | null)[]>;

/** Cells where the code and a printed table of numbers needed disagree, as "n/risk printed→computed". */
function disagreements(kind: DiscriminationTest, columns: readonly string[], printed: Table): string[] {
  return Object.entries(printed).flatMap(([n, row]) =>
    columns.flatMap((risk, i) => {
      const needed = numberNeeded({ test: kind, tries: Number(n), risk: Number(risk) });
      return needed === row[i] ? [] : [`${n}/${risk} ${row[i]}→${needed}`];
    }),
  );
}

function cells(table: Table): number {
  return Object.values(table).flat().length;
}

describe('the smallest number right', () => {
  test('triangle: every cell of the FAO table (V7180E, Appendix A)', () => {
    const { columns, printed } = reference.triangle;
    const wrong = disagreements('triangle', columns, printed);
    console.info(`triangle, FAO V7180E Appendix A: ${cells(printed)} cells, ${wrong.length} differ`);
    expect(cells(printed)).toBe(176);
    expect(wrong).toEqual([]);
    expect(disagreements('3-AFC', columns, printed)).toEqual([]);
  });

  test('duo-trio: every cell of ISO 10399 Table A.1 but one misprinted row', () => {
    // The row of 22 tries is printed 13 14 15 17 19. By the table's own rule it is 14 15 16 17 19: 15 of 22 right has
    // p = 0.067, which is not 0.05. ISO 5495 prints the same row correctly (next test).
    const { columns, printed } = reference.duoTrio;
    const wrong = disagreements('duo-trio', columns, printed);
    console.info(
      `duo-trio, ISO 10399 Table A.1: ${cells(printed)} cells, ${wrong.length} differ (misprinted row n = 22)`,
    );
    expect(cells(printed)).toBe(200);
    expect(wrong).toEqual(['22/0.2 13→14', '22/0.1 14→15', '22/0.05 15→16']);
    for (const [x, p, risk] of [
      [13, 0.2617335, 0.2],
      [14, 0.1431394, 0.1],
      [15, 0.0669003, 0.05],
    ] as const) {
      expect(atLeast(x, 22, 0.5)).toBeCloseTo(p, 7);
      expect(atLeast(x, 22, 0.5)).toBeGreaterThan(risk);
    }
  });

  test('paired: every cell of ISO 5495 Table A.1', () => {
    const { columns, printed } = reference.paired;
    const wrong = disagreements('paired', columns, printed);
    console.info(`paired, ISO 5495 Table A.1: ${cells(printed)} cells, ${wrong.length} differ`);
    expect(cells(printed)).toBe(120);
    expect(wrong).toEqual([]);
  });

  test('preference, two-sided: every cell of an independent computation with exact fractions', () => {
    for (const [n, row] of Object.entries(reference.pairedTwoSided.values))
      for (const [risk, needed] of Object.entries(row))
        expect([n, risk, numberNeeded({ test: 'preference', tries: Number(n), risk: Number(risk) })]).toEqual([
          n,
          risk,
          needed,
        ]);
  });

  test('with two triangles nothing can be shown', () => {
    expect(numberNeeded({ test: 'triangle', tries: 2, risk: 0.05 })).toBeNull();
    expect(testResult({ test: 'triangle', tries: 2, risk: 0.05 }, 2).shown).toBe(false);
    expect(power({ test: 'triangle', tries: 2, risk: 0.05 }, 1)).toBe(0);
  });
});

describe('before you start', () => {
  test('sizes printed for sensR: duo-trio, half can tell, 80 %: 23 first, 28 stable', () => {
    expect(triesNeeded({ test: 'duo-trio', risk: 0.05 }, 0.5, 0.8)).toEqual({ first: 23, stable: 28 });
  });

  test('powers printed for sensR', () => {
    const plan = { test: 'duo-trio', tries: 20, risk: 0.05 } as const;
    expect(power(plan, 0.5)).toBeCloseTo(0.617, 3);
    // 2-AFC, d′ = 1, 30 tries: right in Φ(1/√2) = 0.76025 of them
    expect(power({ test: 'paired', tries: 30, risk: 0.05 }, 2 * 0.7602499389065233 - 1)).toBeCloseTo(
      0.917255217993622,
      12,
    );
  });

  test('few tries at a bench: true risk and power of an independent computation, to its three or four digits', () => {
    for (const [kind, rows] of [
      ['triangle', reference.smallBench.triangle],
      ['duo-trio', reference.smallBench.duoTrio],
    ] as const)
      for (const row of rows) {
        const plan = { test: kind, tries: row.n, risk: 0.05 };
        expect(numberNeeded(plan)).toBe(row['min_correct_0.05']);
        expect(Math.abs(power(plan, 0) - row.true_alpha)).toBeLessThan(0.5001e-4);
        expect(Math.abs(power(plan, 0.3) - row['power_pd0.3'])).toBeLessThan(0.5001e-3);
        expect(Math.abs(power(plan, 0.5) - row['power_pd0.5'])).toBeLessThan(0.5001e-3);
        expect(Math.abs(power(plan, 0.7) - row['power_pd0.7'])).toBeLessThan(0.5001e-3);
      }
  });

  test('a preference is noticed whichever way it goes', () => {
    const plan = { test: 'preference', tries: 20, risk: 0.05 } as const;
    expect(power(plan, 0)).toBeLessThanOrEqual(0.05);
    expect(power(plan, 0)).toBeCloseTo(2 * atLeast(15, 20, 0.5), 12);
  });
});

describe('a result', () => {
  test('3-AFC, 10 of 15 right: the share that can tell is 0.0757 to 0.8226 (sensR 1.5-3)', () => {
    const { share, shown, needed } = testResult({ test: '3-AFC', tries: 15, risk: 0.05 }, 10);
    expect(share.low).toBeCloseTo(0.0757056, 6);
    expect(share.high).toBeCloseTo(0.8226383, 6);
    expect(share.value).toBeCloseTo(0.5, 12);
    expect([shown, needed]).toEqual([true, 9]);
  });

  test('duo-trio, 20 tries: 15 right p = 0.021, 14 right p = 0.058 (sensR methodology)', () => {
    const plan = { test: 'duo-trio', tries: 20, risk: 0.05 } as const;
    expect(testResult(plan, 15).p).toBeCloseTo(0.021, 3);
    expect(testResult(plan, 14).p).toBeCloseTo(0.058, 3);
    expect([testResult(plan, 15).shown, testResult(plan, 14).shown]).toEqual([true, false]);
  });

  test('34 of 60 prefer the first: p = 0.366, nothing shown; 26 of 60 is the same seen from the other side', () => {
    const plan = { test: 'preference', tries: 60, risk: 0.05 } as const;
    expect(testResult(plan, 34).p).toBeCloseTo(0.36629400670329104, 12);
    expect(testResult(plan, 26).p).toBe(testResult(plan, 34).p);
    expect(testResult(plan, 30).p).toBe(1);
    expect(testResult(plan, 15).shown).toBe(true);
  });

  test('shown goes with p at or below the risk, whatever the test, tries and answers', () => {
    for (const kind of ['triangle', 'duo-trio', 'paired', 'preference', '3-AFC'] as const)
      for (let tries = 1; tries <= 24; tries++)
        for (let right = 0; right <= tries; right++) {
          const { shown, p } = testResult({ test: kind, tries, risk: 0.05 }, right);
          expect([kind, tries, right, shown]).toEqual([kind, tries, right, p <= 0.05]);
        }
  });

  test('fewer right than by guessing gives no conclusion', () => {
    expect(testResult({ test: 'triangle', tries: 12, risk: 0.05 }, 3).belowChance).toBe(true);
    expect(testResult({ test: 'triangle', tries: 12, risk: 0.05 }, 4).belowChance).toBe(false);
    expect(testResult({ test: 'triangle', tries: 0, risk: 0.05 }, 0).share).toEqual({ value: 0, low: 0, high: 1 });
  });

  test('answers that cannot be are refused', () => {
    expect(() => testResult({ test: 'triangle', tries: 12, risk: 0.05 }, 13)).toThrow(Refusal);
    expect(() => testResult({ test: 'triangle', tries: 12, risk: 0 }, 3)).toThrow('a risk lies between 0 and 1, not 0');
    expect(() => power({ test: 'triangle', tries: 12, risk: 0.05 }, 1.5)).toThrow(Refusal);
  });
});

describe('played out with a seeded die', () => {
  const random = seeded(4120);

  function shareShown(kind: DiscriminationTest, chanceRight: number, tries: number): number {
    let shown = 0;
    const games = 4000;
    const plan = { test: kind, tries, risk: 0.05 };
    const needed = numberNeeded(plan)!;
    for (let game = 0; game < games; game++) {
      let right = 0;
      for (let i = 0; i < tries; i++) if (random() < chanceRight) right++;
      if ((kind === 'preference' ? Math.max(right, tries - right) : right) >= needed) shown++;
    }
    return shown / games;
  }

  test('who only guesses is believed in at most 5 % of the tests, and as often as computed', () => {
    const lines: string[] = [];
    for (const [kind, chance] of [
      ['triangle', 1 / 3],
      ['duo-trio', 0.5],
      ['paired', 0.5],
      ['preference', 0.5],
      ['3-AFC', 1 / 3],
    ] as const)
      for (const tries of [12, 16, 30]) {
        const played = shareShown(kind, chance, tries);
        const computed = power({ test: kind, tries, risk: 0.05 }, 0);
        lines.push(`${kind} ${tries}: ${played.toFixed(4)} (${computed.toFixed(4)})`);
        expect(computed).toBeLessThanOrEqual(0.05);
        expect(Math.abs(played - computed)).toBeLessThan(4 * Math.sqrt((computed * (1 - computed)) / 4000));
      }
    console.info(`guessers believed, played (computed): ${lines.join(', ')}`);
  });

  test('who tells half of them is noticed as often as computed', () => {
    const played = shareShown('triangle', 1 / 3 + (2 / 3) * 0.5, 12);
    expect(played).toBeCloseTo(0.632, 1);
  });
});
