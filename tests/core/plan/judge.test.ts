import { describe, expect, test } from 'vitest';
import type { PlanInstance, PlanLimits, PlanScale } from '../../../src/core/plan/instance';
import { judgePlan } from '../../../src/core/plan/judge';
import { plainly } from '../../../src/core/text/refusal';

const roomy: PlanLimits = {
  maxDrops: 9,
  minDropsPerComponent: 4,
  maxStocksPerComponent: 1,
  maxTotalMassMg: 220,
  maxSolventMassMg: { ethanol: 204 },
};

/** Two lines, 2 to 1 parts: drops of 20 mg of 10 % or of 10 mg neat, and of 30 mg of 5 %. */
const instance = (more: { limits?: Partial<PlanLimits>; scale?: PlanScale; z?: number } = {}): PlanInstance => ({
  components: [
    {
      id: 'A',
      parts: 2,
      stocks: [
        { id: 'a', strength: 0.1, mgPerDrop: 20, rsd: 0.1, availableDrops: 5, solvent: 'ethanol' },
        { id: 'neat', strength: 1, mgPerDrop: 10, rsd: 0.2, availableDrops: null, solvent: 'none' },
      ],
    },
    {
      id: 'B',
      parts: 1,
      stocks: [{ id: 'b', strength: 0.05, mgPerDrop: 30, rsd: 0.04, availableDrops: null, solvent: 'ethanol' }],
    },
  ],
  limits: { ...roomy, ...more.limits },
  scale: more.scale ?? { kind: 'free' },
  objective: { kind: 'minimax', z: more.z ?? 1 },
});
const plan = { a: 5, b: 4 };
const close = (value: number) => expect.closeTo(value, 6);

describe('a plan of 5 and 4 drops, worked out by hand', () => {
  // A: 5 × 2 mg = 10 mg, 5 a part, sd √(5 × 0.2²) / 2 = 0.223607. B: 4 × 1.5 mg = 6 mg, 6 a part, sd √(4 × 0.06²) = 0.12.
  test('has the best scale between the ends of both lines, and each line its error there', () => {
    const { scaleMgPerPart, objective, drops, lines } = judgePlan(instance(), plan);
    const scale = (5 - 0.2236068 + 6.12) / 2; // 5.448197
    expect([scaleMgPerPart, objective, drops]).toEqual([close(scale), close(6.12 / scale - 1), 9]);
    expect(lines).toEqual([
      {
        componentId: 'A',
        stockIds: ['a'],
        drops: 5,
        wishMg: close(2 * scale),
        trueMg: close(10),
        rounding: close(5 / scale - 1),
        counting: close(0.2236068 / scale),
        error: close(1 - (5 - 0.2236068) / scale),
      },
      {
        componentId: 'B',
        stockIds: ['b'],
        drops: 4,
        wishMg: close(scale),
        trueMg: close(6),
        rounding: close(6 / scale - 1),
        counting: close(0.12 / scale),
        error: close(6.12 / scale - 1),
      },
    ]);
  });

  test('keeps to a scale that is given, or to the end of a range', () => {
    const at = (scale: PlanScale) => judgePlan(instance({ scale }), plan).scaleMgPerPart;
    expect(at({ kind: 'fixed', mgPerPart: 4 })).toBe(4);
    expect(at({ kind: 'range', min: 6, max: 7 })).toBe(6);
    expect(at({ kind: 'range', min: 1, max: 3 })).toBe(3);
    const fixed = judgePlan(instance({ scale: { kind: 'fixed', mgPerPart: 4 }, z: 2 }), plan);
    expect(fixed.objective).toBeCloseTo(6.24 / 4 - 1, 6);
    expect(fixed.lines[0]!.error).toBeCloseTo(0.25 + 2 * (0.2236068 / 4), 6);
  });

  test('weighs 220 mg, of it 204 mg of ethanol; neat material brings none', () => {
    const { massMg, solventMg } = judgePlan(instance(), plan);
    expect([massMg, solventMg]).toEqual([close(220), { ethanol: close(90 + 114) }]);
    const neat = judgePlan(instance(), { neat: 3 });
    expect([neat.massMg, neat.solventMg]).toEqual([30, {}]);
    expect(neat.lines[0]).toMatchObject({ stockIds: ['neat'], drops: 3, trueMg: 30 });
  });
});

describe('limits of a plan', () => {
  const said = (limits: Partial<PlanLimits>, counted: Record<string, number> = plan) =>
    judgePlan(instance({ limits }), counted).problems.map(plainly);

  test('are kept at their ends', () => expect(said({})).toEqual([]));

  test.each<[Partial<PlanLimits>, Record<string, number>, RegExp]>([
    [{ maxDrops: 8 }, plan, /More drops than the limit of 8: 9/],
    [{ minDropsPerComponent: 5 }, plan, /^B .*5.*4/],
    [{ maxTotalMassMg: 219 }, plan, /heavier than its limit of 219 mg/],
    [{ maxSolventMassMg: { ethanol: 203 } }, plan, /more ethanol than its limit of 203 mg/],
    [{ maxDrops: 20, maxTotalMassMg: null }, { ...plan, neat: 1 }, /^A .*2 vials.* 1/],
    [{ maxDrops: 20, maxTotalMassMg: null, maxSolventMassMg: {} }, { a: 6, b: 4 }, /Vial a does not hold 6 drops.*5/],
  ])('broken, one sentence each: %j', (limits, counted, words) => {
    expect(said(limits, counted)).toEqual([expect.stringMatching(words)]);
  });

  test('drops are whole and not below none, of a vial that is there', () => {
    const judged = (counted: Record<string, number>) => () => judgePlan(instance(), counted);
    expect(judged({ a: 0, b: 4 })).not.toThrow();
    expect(judged({ a: -1, b: 4 })).toThrow('drops are whole');
    expect(judged({ a: 1.5, b: 4 })).toThrow('drops are whole');
    expect(judged({ c: 1 })).toThrow('has a vial c');
  });
});
