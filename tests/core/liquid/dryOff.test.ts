import { describe, expect, test } from 'vitest';
import { dryOff, leastDryOff, vapourPressure, wetness } from '../../../src/core/liquid/dryOff';
import { celsius } from '../../../src/core/number/units';
import { evaporation } from '../../../src/tables/evaporation';
import { Refusal } from '../../../src/core/text/refusal';

function solvent(id: string) {
  return evaporation.find((row) => row.id === id)!;
}

describe('the dry-off clock', () => {
  test('a strip dipped in ethanol is ready after about a minute or two (common practice)', () => {
    const clock = dryOff(solvent('ethanol'));
    expect(clock).toEqual({ seconds: 120, basis: 'common practice', words: 'about 2 min' });
    expect(dryOff(solvent('isopropanol')).seconds).toBeCloseTo((120 * 1.4) / 1.7, 10);
  });

  test('the trade’s minute or two lies above the film model’s least time for 0.05 to 0.1 mm of ethanol', () => {
    const film = solvent('ethanol').film!;
    expect(leastDryOff(film, 0.05)).toBeLessThan(60);
    expect(leastDryOff(film, 0.1)).toBeLessThan(120);
  });

  test('propylene glycol and triacetin do not dry off in a session, cold or warm, by habit or by own time', () => {
    const own = { solvent: solvent('ethanol'), seconds: 45 };
    for (const id of ['propylene-glycol', 'triacetin', 'benzyl-alcohol'])
      for (const options of [{}, { own }, { temperature: celsius(30), own }]) {
        const clock = dryOff(solvent(id), options);
        expect(clock.seconds).toBeNull();
        expect(clock.basis).toBe('stays wet');
        expect(clock.words).toContain('does not dry within a session');
      }
  });

  test('your own measured time is used as it is, and scales by the evaporation rates to another solvent', () => {
    const own = { solvent: solvent('ethanol'), seconds: 75 };
    expect(dryOff(solvent('ethanol'), { own }).seconds).toBeCloseTo(75, 12);
    expect(dryOff(solvent('isopropanol'), { own }).seconds).toBeCloseTo((75 * 1.4) / 1.7, 10);
    expect(dryOff(solvent('water'), { own }).seconds).toBeCloseTo(350, 10); // 75 · 1.4 / 0.3
    expect(dryOff(solvent('ethanol'), { own }).basis).toBe('own time');
  });

  test('a warmer room dries the strip sooner, by the vapour pressure', () => {
    const at25 = dryOff(solvent('ethanol'), { temperature: celsius(25) }).seconds!;
    expect(120 / at25).toBeCloseTo(1.34, 1);
    const own = { solvent: solvent('ethanol'), seconds: 60, temperature: celsius(25) };
    expect(dryOff(solvent('ethanol'), { own, temperature: celsius(25) }).seconds).toBeCloseTo(60, 10);
    expect(dryOff(solvent('ethanol'), { own, temperature: celsius(18) }).seconds).toBeGreaterThan(60);
  });

  test('a temperature nobody measured is refused, not guessed', () => {
    expect(() => dryOff(solvent('ethanol'), { temperature: celsius(50) })).toThrow(
      'the drying of strips is known for 4–40 °C, not for 50 °C',
    );
    expect(() => dryOff(solvent('ethanol'), { own: { solvent: solvent('ethanol'), seconds: 0 } })).toThrow(Refusal);
    expect(() => leastDryOff(solvent('ethanol').film!, 0)).toThrow(Refusal);
  });

  test('a solvent without figures says so', () => {
    const nameless = { words: 'my own mix', evaporationRate: null, film: null, antoine: null };
    expect(dryOff(nameless)).toEqual({
      seconds: null,
      basis: 'not known',
      words: 'no drying figure is known for my own mix',
    });
    expect(dryOff(solvent('water'), { own: { solvent: nameless, seconds: 40 } }).basis).toBe('not known');
  });

  test('wetness fades evenly from the dip to dry, and stays where nothing dries', () => {
    const clock = dryOff(solvent('ethanol'));
    expect([0, 30, 60, 120, 500].map((elapsed) => wetness(clock, elapsed))).toEqual([1, 0.75, 0.5, 0, 0]);
    expect(wetness(dryOff(solvent('triacetin')), 1e6)).toBe(1);
  });

  test('times are worded as a person would say them', () => {
    const words = (seconds: number) =>
      dryOff(solvent('ethanol'), { own: { solvent: solvent('ethanol'), seconds } }).words;
    expect([2, 43, 89, 100, 284, 560, 5399, 9000].map(words)).toEqual([
      'about 5 s',
      'about 45 s',
      'about 90 s',
      'about 1.5 min',
      'about 4.5 min',
      'about 9 min',
      'about 90 min',
      'about 2.5 h',
    ]);
  });
});

describe('the published figures behind it', () => {
  test('vapour pressures at 20 and 25 °C agree with the printed ones within 3 %', () => {
    const printed = [
      ['ethanol', 20, 5880], // safety data of ethyl alcohol: saturation 5.8 % at 20 °C
      ['ethanol', 25, 8000], // the same page: 60 mmHg
      ['isopropanol', 20, 4400], // engineeringtoolbox.com
      ['isopropanol', 25, 6026], // NLM WISER: 45.2 mmHg
    ] as const;
    let worst = 0;
    for (const [id, t, pressure] of printed)
      worst = Math.max(worst, Math.abs(vapourPressure(solvent(id).antoine!, celsius(t)) / pressure - 1));
    console.info(`vapour pressure of ethanol and isopropanol, 4 printed values: worst ${(100 * worst).toFixed(2)} %`);
    expect(worst).toBeLessThan(0.03);
  });

  test('the boiling points come out of the same curves: 78.3 °C and 82.3 °C (CRC Handbook) give one atmosphere', () => {
    for (const [id, boils] of [
      ['ethanol', 78.3],
      ['isopropanol', 82.3],
    ] as const) {
      const wide = { ...solvent(id).antoine!, to: celsius(96) }; // the fit reaches to 96 °C; the bench does not
      expect(vapourPressure(wide, celsius(boils)) / 101325).toBeCloseTo(1, 2);
    }
  });

  test('the film model gives the seconds worked out by hand for 0.1 mm on each face', () => {
    // Independent computation: flat plate, 10 mm, 0.15 m/s, 20 °C
    const worked = {
      ethanol: 83.3088,
      isopropanol: 95.1869,
      water: 412.0039,
      'propylene-glycol': 44178.3,
      triacetin: 723640.8,
    };
    let worst = 0;
    for (const [id, seconds] of Object.entries(worked))
      worst = Math.max(worst, Math.abs(leastDryOff(solvent(id).film!, 0.1) / seconds - 1));
    console.info(`film drying model, 5 worked values: worst ${(100 * worst).toFixed(4)} %`);
    expect(worst).toBeLessThan(0.002);
  });

  test('every row names its source, and says whether it was read there', () => {
    for (const row of evaporation) {
      expect(row.rateSource).not.toBe('');
      if (row.film) expect(row.pressureSource).not.toBe('');
    }
  });
});
