import { afterAll, describe, expect, test } from 'vitest';
import { BREWERS, heatUnits } from '../../../src/core/keeping/heat';
import { leastFill } from '../../../src/core/keeping/hotFill';
import { keepingOf, type Drink } from '../../../src/core/keeping/keeping';
import { activeShare } from '../../../src/core/keeping/preservative';
import { DELLE, delleUnits, waterActivity } from '../../../src/core/keeping/strength';
import { plainly } from '../../../src/core/text/refusal';
import { fillTable, heatKinds, preservings } from '../../../src/tables/keeping/preserved';
import published from '../../reference/keeping.json';
import { residuals } from '../residuals';

const tables = {
  active: residuals('active part of benzoic and sorbic acid, %'),
  heat: residuals('pasteurisation units, min'),
  juice: residuals('apple juice (FDA), s'),
  delle: residuals('Delle units'),
  water: residuals('water activity of sucrose (Norrish)'),
};
afterAll(() => Object.values(tables).forEach((one) => one.print()));

const held = (atC: number, minutes: number) => [
  { minutes: 0, atC },
  { minutes, atC },
];

describe('published values', () => {
  test.each(['benzoic', 'sorbic'] as const)('the active part of %s acid', (name) => {
    const { pKa, percent } = published.active[name];
    expect(preservings[name].pKa).toBe(pKa);
    for (const [ph, value] of Object.entries(percent)) {
      const got = 100 * activeShare(preservings[name], Number(ph));
      tables.active.add(`${name} at pH ${ph}`, got - value);
      expect(got).toBeCloseTo(value, 2);
    }
  });

  test('a much-copied table of benzoic acid says 4.19 and is of 4.163', () => {
    const { percent, is, says } = published.active.copiedBenzoic;
    for (const [ph, value] of Object.entries(percent)) {
      const share = (pKa: number) => 100 * activeShare({ pKa }, Number(ph));
      expect(share(is)).toBeCloseTo(value, 0);
      expect(share(says) - value).toBeGreaterThan(0.05);
    }
    expect(100 * activeShare({ pKa: says }, 4) - percent['4']).toBeGreaterThan(1.4);
  });

  test('pasteurisation units: 20 minutes at 62 °C, with 1.393 and with z = 7 °C', () => {
    const { minutes, atC, brewers, z7 } = published.pasteurisation;
    for (const [unit, value] of [
      [BREWERS, brewers],
      [{ atC: 60, z: 7 }, z7],
    ] as const) {
      // prettier-ignore
      const got = heatUnits(held(atC, minutes), unit);
      tables.heat.add(`z ${unit.z}`, got - value);
      expect(got).toBeCloseTo(value, 2);
    }
  });

  test('a log is added up exactly between its moments, however finely it is told', () => {
    const coarse = heatUnits([{ minutes: 0, atC: 20 }, { minutes: 30, atC: 65 }, { minutes: 60, atC: 20 }], BREWERS); // prettier-ignore
    const at = (minutes: number) => ({ minutes, atC: 65 - 1.5 * Math.abs(minutes - 30) });
    const fine = heatUnits(Array.from({ length: 601 }, (_, i) => at(i / 10)), BREWERS); // prettier-ignore
    expect(coarse).toBeCloseTo(fine, 9);
    const steps = Array.from({ length: 60_000 }, (_, i) => 1.393 ** (at((i + 0.5) / 1000).atC - 60) / 1000);
    expect(coarse).toBeCloseTo(steps.reduce((sum, one) => sum + one, 0), 4); // prettier-ignore
  });

  test('apple juice: the seconds of the FDA at each temperature belong to z = 8.4 °C', () => {
    const juice = heatKinds.find(({ id }) => id === 'juice')!;
    for (const [fahrenheit, seconds] of published.juice.rows as [number, number][]) {
      const perMinute = heatUnits(held((fahrenheit - 32) / 1.8, 1), juice);
      const got = (60 * juice.enough!.minutes) / perMinute;
      tables.juice.add(`${fahrenheit} °F`, got - seconds);
      expect(Math.abs(got - seconds)).toBeLessThan(0.051); // half of the last digit
    }
  });

  test('Delle units, and what keeps by them', () => {
    for (const { sugar, abv, units } of published.delle) {
      tables.delle.add(`${sugar} + ${abv}`, delleUnits(sugar, abv) - units);
      expect(delleUnits(sugar, abv)).toBeCloseTo(units, 9);
    }
    expect(published.delle.map(({ units }) => units >= DELLE)).toEqual([true, true, false]);
  });

  test('water activity of sucrose', () => {
    published.norrish.brix.forEach((brix, i) => {
      const got = waterActivity(brix);
      tables.water.add(`${brix} °Brix`, got - published.norrish.aw[i]!);
      expect(got).toBeCloseTo(published.norrish.aw[i]!, 4);
    });
    expect(() => waterActivity(70)).toThrow('0–67.1 °Brix');
  });

  test('fill temperatures for acidified food, and none above pH 4.5', () => {
    for (const [ph, fahrenheit] of published.fill.rows as [number, number][])
      expect(leastFill(fillTable, ph) * 1.8 + 32).toBeCloseTo(fahrenheit, 6);
    expect(leastFill(fillTable, 3.55) * 1.8 + 32).toBeCloseTo(169, 6);
    expect(() => leastFill(fillTable, 4.6)).toThrow('up to pH 4.5');
  });
});

const lemonade: Drink = {
  ph: 3,
  acidGPerL: 2.5,
  sugarPerL: 104,
  brix: 10,
  abv: 0,
  benzoicMgPerL: 0,
  sorbicMgPerL: 0,
  ascorbicMgPerL: 0,
  treated: 'none',
};
const said = (more: Partial<Drink>) =>
  keepingOf({ ...lemonade, ...more }, preservings).map((one) => `${one.state}: ${plainly(one.said)}`);

describe('what is said of keeping', () => {
  test('sugar and no protection is a danger, with the gas that yeast can make of it', () => {
    expect(said({})[0]).toMatch(/^danger: There is sugar in it and nothing that stops yeast.*27 volumes/);
    for (const more of [
      { sorbicMgPerL: 200 },
      { treated: 'bottle' },
      { treated: 'hot' },
      { abv: 18 },
      { sugarPerL: 3 },
    ] as const)
      expect(said(more).join(), JSON.stringify(more)).not.toMatch(/nothing that stops yeast/);
    expect(said({ treated: 'cold' }).join()).toMatch(/outside: Cold slows what grows, and does not stop it/);
  });

  test('pH 5 with sorbate: low acid is a danger, and little of it works', () => {
    const all = said({ ph: 5, sorbicMgPerL: 250 });
    expect(all[0]).toMatch(/^danger: pH 5.0 is above 4.6.*licensed practice/);
    expect(all[1]).toMatch(/^outside: At pH 5.0 only 37 % of the sorbic acid works: it does not keep this drink/);
  });

  test('benzoate with ascorbic acid is a danger, sorbate with it is none', () => {
    expect(said({ benzoicMgPerL: 150, ascorbicMgPerL: 100 })[0]).toMatch(/^danger: Benzoic acid.*benzene/);
    expect(said({ sorbicMgPerL: 250, ascorbicMgPerL: 100 }).join()).not.toMatch(/benzene/);
  });

  test('inside of what was tested it says so and promises nothing; outside it names by what', () => {
    const both = { benzoicMgPerL: 150, sorbicMgPerL: 250 };
    expect(said(both)[0]).toMatch(/^inside: .*no promise/);
    expect(said({ ...both, ph: 4.2, brix: 20 }).join()).toMatch(
      /outside: Outside of what was tested .*: pH, °Brix\. Keep/,
    );
    expect(said({ benzoicMgPerL: 150 }).join()).toMatch(/outside: Outside of what was tested .*: sorbic acid\. Keep/);
  });

  test('a liqueur is inside of Delle’s rule, a weak one outside, a syrup has its water activity', () => {
    expect(said({ abv: 25, sugarPerL: 200, brix: 19 })[0]).toMatch(/^inside: 133 Delle units/);
    expect(said({ abv: 8 }).join()).toMatch(/outside: 46.4 Delle units/);
    expect(said({ brix: 60, sugarPerL: 772 }).join()).toMatch(/Water activity about 0.90/);
  });

  test('nothing is ever called safe, and every finding has a source', () => {
    for (const ph of [2.5, 3, 4, 5, 7, null])
      for (const treated of ['none', 'cold', 'bottle', 'hot'] as const)
        for (const abv of [0, 8, 25])
          for (const one of keepingOf(
            { ...lemonade, ph, treated, abv, sorbicMgPerL: 200, benzoicMgPerL: 120 },
            preservings,
          )) {
            expect(plainly(one.said)).not.toMatch(/\bsafe\b|guarantee|will keep/i);
            expect(one.source).not.toBe('');
          }
  });

  test('a log that goes back, or a bottle on fire, is refused', () => {
    expect(() => heatUnits([{ minutes: 0, atC: 60 }], BREWERS)).toThrow('two moments');
    expect(() => heatUnits([{ minutes: 5, atC: 60 }, { minutes: 0, atC: 60 }], BREWERS)).toThrow('only increase'); // prettier-ignore
    expect(() => heatUnits(held(300, 1), BREWERS)).toThrow('0–150 °C');
    expect(() => delleUnits(-1, 0)).toThrow('zero or more');
  });
});
