import { describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { textOf } from '../../../src/tasks/engine/fields';
import { fold } from '../../../src/tasks/engine/fold';
import { fields, sumOf } from '../../../src/tasks/lookup/sum';
import { lookup } from '../../../src/tasks/lookup/task';
import rows from '../../reference/dosage.json' with { type: 'json' };

const worked = (id: string) => rows.rows.find((row) => row.id === id)!;
const typed = (texts: Record<string, string>) =>
  fold(
    Object.entries(texts).map(([key, text], seq): RunEvent => ({ run: 'r', seq, at: '', type: 'typed', key, text })),
  );
const sum = (texts: Record<string, string>) => sumOf(typed(texts))!;
const perKg = (texts: Record<string, string>) => sum(texts).results[0]!.amount;
const byMass = { strength: '1,0', basis: '% w/w', mgPerDrop: '22', drops: '12', by: 'g' };

describe('the sum', () => {
  test('12 drops of 22 mg at 1.0 % w/w in 100 g of drink are 26.4 mg/kg (worked example, n m w / M)', () => {
    expect(perKg({ ...byMass, drink: '99,7360' }).value).toBeCloseTo(worked('d7').value, 9);
    expect(perKg({ ...byMass, drink: '100' }).value).toBeCloseTo(26.3305, 4); // the drops weigh too
  });

  test.each([
    ['d5', '1.0423'],
    ['d6', '0.94805'],
  ])('%s: 50 mg/kg at a density of %s are so many mg/L', (id, density) => {
    const [kg, litre] = sum({ ...byMass, drops: '1', drink: '100000', density }).results;
    expect((50 * litre!.amount.value) / kg!.amount.value).toBeCloseTo(worked(id).value, 1);
  });

  test('half a gram of a 2.0 % concentrate in a litre is 10 mg/L (w D 1000)', () => {
    const half = { strength: '2', basis: '% w/w', liquid: 'water', mgPerDrop: '500', drops: '1' };
    const [, litre] = sum({ ...half, drink: String(1000 - 0.5 / 0.998207), by: 'mL', density: '1' }).results;
    expect(litre!.amount.value).toBeCloseTo(worked('d12').value, 6);
  });

  test('1 % w/v in ethanol 96 % is 1.24 % w/w: a quarter more than 1 % w/w (OIML R 22 density 0.80742)', () => {
    const wv = perKg({ strength: '1', basis: '% w/v' }).value;
    const ww = perKg({ strength: '1', basis: '% w/w' }).value;
    expect(wv / ww).toBeCloseTo(1 / 0.80742, 2);
  });

  test('10000 mg/kg is 1 % w/w, and 10000 mg/L is 1 % w/v', () => {
    expect(perKg({ strength: '10000', basis: 'mg/kg' }).value).toBe(perKg({ strength: '1', basis: '% w/w' }).value);
    const [litre, percent] = [
      { strength: '10000', basis: 'mg/L' },
      { strength: '1', basis: '% w/v' },
    ].map(perKg);
    expect(litre!.value).toBeCloseTo(percent!.value, 12);
  });

  test('a % v/v does not know the density of the material, and its ± says so', () => {
    const doubt = (basis: string) => {
      const amount = perKg({ strength: '1', basis, mgPerDrop: '16', drops: '100' });
      return expanded(amount) / amount.value;
    };
    expect(doubt('% v/v')).toBeGreaterThan(0.15);
    expect(doubt('% w/v')).toBeLessThan(0.02);
  });

  test('a typical drop keeps its wide ±, a typed one is taken as it is', () => {
    const doubt = (texts: Record<string, string>) => expanded(perKg(texts)) / perKg(texts).value;
    expect(doubt({})).toBeGreaterThan(0.33);
    expect(doubt({ mgPerDrop: '16' })).toBeLessThan(0.07); // four drops still scatter
  });

  test('back from the target: the drops found give it again', () => {
    const asked = { ...byMass, drink: '100', ppm: '26' };
    const { wanted } = sum(asked);
    expect(wanted!.drops).toBe(12);
    expect(perKg({ ...byMass, drink: '100', drops: '12' }).value).toBeCloseTo(wanted!.mgPerKg, 9);
    expect(wanted!.error).toBeCloseTo(26.3305 / 26 - 1, 5);
    expect(sum({}).wanted).toBeNull();
  });

  test('it is one screen, it keeps nothing, and every question has an answer to begin with', () => {
    expect(lookup.recorded).toBe(false);
    expect(lookup.steps(typed({}))).toHaveLength(1);
    expect(lookup.steps(typed({}))[0]!.results).toHaveLength(2);
    expect(lookup.keep(typed({}))).toEqual([]);
  });
});

describe('wrong input', () => {
  const why = (field: { read: (text: string) => { ok: boolean } }, text: string) => {
    const answer = field.read(text) as { ok: boolean; why?: string };
    return answer.ok ? '' : answer.why;
  };

  test('one clear sentence each', () => {
    expect(why(fields.strength('% w/v'), '1000')).toBe('Strength: at most 100 % w/v, not 1000 % w/v.');
    expect(why(fields.strength('% w/v'), '')).toContain('still empty');
    expect(why(fields.strength('% w/v'), '0,7')).toBe('');
    expect(why(fields.drops, '-3')).toBe('Drops: at least 0, not −3.');
    expect(why(fields.drops, '2.5')).toBe('Drops: whole drops only, not 2.5.');
    expect(why(fields.drink('mL'), '0')).toBe('Drink: more than 0 mL, not 0 mL.');
    expect(why(fields.ppm, 'a7')).toContain('is not a number');
  });

  test('while something is missing or wrong there is no sum, and nothing typed is lost', () => {
    for (const wrong of [{ drink: '0' }, { drops: '-3' }, { strength: '1000' }, { density: 'heavy' }]) {
      const run = typed({ ...wrong, ppm: '7' });
      expect(sumOf(run)).toBeNull();
      expect(lookup.steps(run)[0]!.results).toEqual([]);
      expect(textOf(run, fields.ppm)).toBe('7');
    }
  });

  test('a target stronger than the vial is refused with the reason', () => {
    expect(() => sum({ ...byMass, ppm: '20000' })).toThrow('cannot be made from it');
    expect(() => lookup.steps(typed({ ...byMass, ppm: '20000' }))).not.toThrow();
  });
});
