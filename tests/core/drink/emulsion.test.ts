import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import {
  daysToRing,
  emulsionFor,
  highestDosage,
  hlbShare,
  oilMatched,
  oilPhaseDensity,
  requiredHlb,
  risePerDay,
  weightingShare,
} from '../../../src/core/drink/emulsion';
import { sucroseDensity } from '../../../src/core/liquid/sucrose';
import { sucroseViscosity } from '../../../src/core/liquid/sucroseViscosity';
import { celsius, gram, gramPerMl, massFraction, millilitre } from '../../../src/core/number/units';
import { limitsEu } from '../../../src/tables/limitsEu';
import { limitsUs } from '../../../src/tables/limitsUs';
import { weightingAgents } from '../../../src/tables/emulsion/weightingAgents';
import published from '../../reference/emulsion.json';
import { residuals } from '../residuals';

const find = (id: string) => published.rows.find((row) => row.id === id)!;
const value = (id: string) => find(id).value as number;
const seen = residuals(
  'Emulsions: rise of orange oil droplets in 11 °Brix, mm/day (a second program: Stokes, CRC table)',
);
afterAll(() => seen.print());

const drink = { density: gramPerMl(1.0423), viscosityMPaS: 1.381 }; // 11 °Brix, CRC Handbook
const orange = gramPerMl(0.84);
const esterGum = gramPerMl(1.08);
const saib = gramPerMl(1.146); // typical, not confirmed
const phases: Record<string, number> = { 840: 0.8402, 941: 0.941, 1000: 1, 1020: 1.02 };

describe('how fast droplets rise', () => {
  test('a droplet of 1 µm radius, 0.910 in water, rises about 17 mm a day (McClements, Food Emulsions, eq. 7.9)', () => {
    const v = risePerDay({ diameterUm: 2, oil: gramPerMl(0.91), drink: gramPerMl(1), viscosityMPaS: 1 });
    expect(Math.abs(v - value('stokes_check'))).toBeLessThan(0.1);
  });

  test.each(published.rows.filter(({ id }) => id.startsWith('cream_')))(
    '$id: $value mm a day (a second program: Stokes)',
    ({ id, value }) => {
      const [, phase, diameter] = id.split('_') as [string, string, string];
      const v = risePerDay({
        diameterUm: Number(diameter),
        oil: gramPerMl(phases[phase]!),
        drink: drink.density,
        viscosityMPaS: drink.viscosityMPaS,
      });
      seen.add(id, v - (value as number));
      expect(Math.abs(v / (value as number) - 1)).toBeLessThan(0.01); // oil densities printed to three digits
    },
  );

  test('half the diameter rises at a quarter of the speed, and a heavy oil phase sinks', () => {
    const at = (diameterUm: number, oil: number) =>
      risePerDay({ diameterUm, oil: gramPerMl(oil), drink: drink.density, viscosityMPaS: 1.381 });
    expect(at(1, 0.84) / at(0.5, 0.84)).toBeCloseTo(4, 12);
    expect(at(1, 1.1)).toBeLessThan(0);
    expect(daysToRing(at(1, 1.0423))).toBe(Infinity);
    expect(daysToRing(0.5)).toBe(20);
  });

  test('the drink of the published values is the one our laws give for 11 °Brix', () => {
    expect(sucroseDensity(massFraction(0.11), celsius(20))).toBeCloseTo(1.0423, 3);
    expect(sucroseViscosity(massFraction(0.11))).toBeCloseTo(1.381, 3);
  });
});

describe('weighting an oil', () => {
  test.each([
    ['CM2000_ester_gum', 1.08],
    ['CM2000_damar_gum', 1.06],
    ['CM2000_SAIB', 1.146],
    ['CM2000_BVO', 1.33],
  ])(
    '%s: within 6 points of the share that matched soybean oil and water when measured (Chanamai and McClements 2000)',
    (id, agent) => {
      // Densities of agents and of soybean oil (0.92) are typical values; the measured shares are the check.
      const w = weightingShare({ oil: gramPerMl(0.92), agent: gramPerMl(agent), target: gramPerMl(0.9982) });
      expect(Math.abs(w * 100 - value(id))).toBeLessThan(6);
    },
  );

  test('the agents of the table carry the measured shares of their source', () => {
    const shares = weightingAgents.map(({ matchedSoybean }) => Math.round(matchedSoybean! * 100));
    expect(shares).toEqual([value('CM2000_ester_gum'), value('CM2000_SAIB'), value('CM2000_damar_gum')]);
  });

  test.each([0.998, 1.0381, 1.0423])(
    'ester gum in orange oil up to %d g/mL: share as computed from the densities',
    (target) => {
      const w = weightingShare({ oil: orange, agent: esterGum, target: gramPerMl(target) });
      expect(w).toBeCloseTo(value(`match_ester_gum_orange_oil_${target}`), 3);
      const parts = [
        { mass: gram(1 - w), density: orange },
        { mass: gram(w), density: esterGum },
      ];
      expect(oilPhaseDensity(parts)).toBeCloseTo(target, 12);
    },
  );

  test('under the caps of 100 mg/L ester gum hardly any orange oil can be matched: 14.5 mg/L', () => {
    const most = oilMatched(orange, drink.density, [{ density: esterGum, capMgPerL: 100 }]);
    expect(most).toBeCloseTo(value('cap_ester_gum_100_mg/L'), 1);
    const both = oilMatched(orange, drink.density, [
      { density: esterGum, capMgPerL: 100 },
      { density: saib, capMgPerL: 300 },
    ]);
    expect(both).toBeCloseTo(127.2, 0);
  });

  test('an agent lighter than the drink is refused', () => {
    expect(() => weightingShare({ oil: orange, agent: gramPerMl(1), target: gramPerMl(1.04) })).toThrow('cannot bring');
  });
});

describe('the published orange emulsion (an ingredient maker’s formula sheet)', () => {
  const sheet = find('form_weighted').inputs as Record<string, number>;
  const esterGumShare = massFraction(sheet['ester gum']! / 100);
  const [low, high] = (sheet as unknown as { dosage_g_per_L: [number, number] }).dosage_g_per_L;

  test('adds up to 100 % and its oil phase weighs 0.941 g/mL', () => {
    const parts = ['water', 'quillaja emulsifier', 'orange oil', 'ester gum', 'citric acid', 'sodium benzoate'];
    expect(parts.reduce((sum, part) => sum + sheet[part]!, 0)).toBeCloseTo(value('form_weighted'), 9);
    const phase = (agent: number) =>
      oilPhaseDensity([
        { mass: gram(26.12), density: orange },
        { mass: gram(23.88), density: gramPerMl(agent) },
      ]);
    expect(phase(1.08)).toBeLessThan(0.941); // the data page gives 1.080–1.090 for the gum
    expect(phase(1.09)).toBeGreaterThan(0.941);
  });

  test('breaks the ester-gum cap of 100 mg/L at its own dosage of 1–2 g/L: 239 to 478 mg/L', () => {
    const caps = [...limitsEu, ...limitsUs].filter((row) => row.cas.includes('8050-30-4')).map((row) => row.max);
    expect(caps).toEqual([100, 100]); // EU mg/L, US mg/kg
    expect(1000 * esterGumShare * low).toBeCloseTo(239, 0); // mg per L
    expect(1000 * esterGumShare * high).toBeCloseTo(478, 0);
    for (const cap of caps) expect(highestDosage(esterGumShare, cap)).toBeLessThan(low);
    expect(highestDosage(esterGumShare, 100)).toBeCloseTo(0.42, 2);
  });

  test('our own plan for the same oil keeps to the cap and says the match is not reached', () => {
    const made = emulsionFor({
      oil: { mass: gram(26.12), density: orange },
      agent: { density: esterGum, capMgPerL: 100 },
      drink: { volume: millilitre(100_000), density: drink.density },
      gramsPerL: 1,
      gumRatio: 1,
    });
    expect(made.agentMgPerL).toBeCloseTo(100, 9);
    expect(made.matched).toBe(false);
    expect(26.12 + made.agent + made.gum + made.water).toBeCloseTo(made.mass, 9);
  });
});

describe('an emulsion of ours', () => {
  test('never breaks the cap, conserves mass, and scales with the batch', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 100, noNaN: true }), // mg oil per L
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (oilMgPerL, capMgPerL, litres) => {
          const make = (k: number) =>
            emulsionFor({
              oil: { mass: gram((oilMgPerL * litres * k) / 1000), density: orange },
              agent: { density: esterGum, capMgPerL },
              drink: { volume: millilitre(litres * k * 1000), density: drink.density },
              gramsPerL: 2,
              gumRatio: 1,
            });
          const [one, three] = [make(1), make(3)];
          expect(one.agentMgPerL).toBeLessThanOrEqual(capMgPerL * (1 + 1e-12));
          const all = (oilMgPerL * litres) / 1000 + one.agent + one.gum + one.water;
          expect(all / one.mass).toBeCloseTo(1, 10);
          expect(three.gum / one.gum).toBeCloseTo(3, 9);
          if (one.matched) expect(one.oilPhase).toBeCloseTo(drink.density, 9);
        },
      ),
    );
  });

  test('a dosage that cannot hold oil and gum is refused with the least that can', () => {
    const tooMuch = () =>
      emulsionFor({
        oil: { mass: gram(1), density: orange },
        agent: null,
        drink: { volume: millilitre(1000), density: drink.density },
        gramsPerL: 1,
        gumRatio: 1,
      });
    expect(tooMuch).toThrow('at least 2.00 g/L');
  });
});

describe('HLB', () => {
  test.each(published.rows.filter(({ id }) => /^hlb_F/.test(id)))(
    '$id needs $value (OCL 2022, table 4)',
    ({ inputs, value }) => {
      const { masses, hlb } = inputs as { masses: number[]; hlb: number[] };
      const parts = masses.map((mass, i) => ({ mass: gram(mass), hlb: hlb[i]! }));
      expect(Math.abs(requiredHlb(parts) - (value as number))).toBeLessThan(0.01);
    },
  );

  test('7.6 from 14.9 and 4.7 takes 28.4 % of the first', () => {
    expect(hlbShare(7.6, 14.9, 4.7) * 100).toBeCloseTo(value('hlb_pair'), 1);
    expect(() => hlbShare(16, 14.9, 4.7)).toThrow('not between');
  });
});
