import { describe, expect, test } from 'vitest';
import { expanded } from '../../../src/core/number/measured';
import type { RunEvent } from '../../../src/records/kind/run';
import { shelf, takeIn } from '../../../src/records/shelf';
import { firstOpen, slotsOf } from '../../../src/tasks/engine/card';
import { textOf } from '../../../src/tasks/engine/fields';
import { fold } from '../../../src/tasks/engine/fold';
import { AMOUNTS, asked, fields } from '../../../src/tasks/lookup/fields';
import { sumOf } from '../../../src/tasks/lookup/sum';
import { lookup } from '../../../src/tasks/lookup/task';
import rows from '../../reference/dosage.json' with { type: 'json' };

const worked = (id: string) => rows.rows.find((row) => row.id === id)!;
const typed = (texts: Record<string, string>) =>
  fold(
    Object.entries(texts).map(([key, text], seq): RunEvent => ({ run: 'r', seq, at: '', type: 'typed', key, text })),
  );
const sum = (texts: Record<string, string>) => sumOf(typed(texts))!;
const perKg = (texts: Record<string, string>) => sum(texts).result.amount;
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
    const { result, perLitre } = sum({ ...byMass, drops: '1', drink: '100000', density });
    expect((50 * perLitre!.amount.value) / result.amount.value).toBeCloseTo(worked(id).value, 1);
  });

  test('half a gram of a 2.0 % concentrate in a litre is 10 mg/L (w D 1000)', () => {
    const half = { strength: '2', basis: '% w/w', liquid: 'water', mgPerDrop: '500', drops: '1' };
    const { perLitre } = sum({ ...half, drink: String(1000 - 0.5 / 0.998207), by: 'mL', density: '1' });
    expect(perLitre!.amount.value).toBeCloseTo(worked('d12').value, 6);
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

  test('drops from a level: those that are found give it again', () => {
    const { drops } = sum({ ...byMass, drink: '100', ppm: '26', find: 'drops' });
    expect(drops!.drops).toBe(12);
    expect(perKg({ ...byMass, drink: '100', drops: '12' }).value).toBeCloseTo(drops!.mgPerKg, 9);
    expect(drops!.error).toBeCloseTo(26.3305 / 26 - 1, 5);
    expect(sum({}).drops).toBeUndefined();
  });

  test('each amount is found again from the others', () => {
    const all = { ...byMass, drink: '100' };
    const ppm = String(perKg(all).value);
    const found = (find: string) => sum({ ...all, ppm, find }).result;
    expect(found('strength')).toMatchObject({ unit: '% w/w', amount: { value: expect.closeTo(1, 9) } });
    expect(found('mgPerDrop')).toMatchObject({ unit: 'mg', amount: { value: expect.closeTo(22, 9) } });
    expect(found('drink')).toMatchObject({ unit: 'g', amount: { value: expect.closeTo(100, 9) } });
    expect(found('drops').amount.value).toBeCloseTo(12, 9);
    const millilitres = { ...all, by: 'mL', density: '1.04', ppm, find: 'drink' };
    expect(sum(millilitres).result).toMatchObject({ unit: 'mL', amount: { value: expect.closeTo(100 / 1.04, 9) } });
  });

  test('how an amount was found tells what it was found from, and not itself', () => {
    for (const find of AMOUNTS) {
      const { how } = sum({ ...byMass, drink: '100', ppm: '26', find }).result;
      expect(how.inputs).toHaveLength(AMOUNTS.length - 1);
    }
  });

  test('it is one screen, it keeps nothing, and every question has an answer to begin with', () => {
    expect(lookup.recorded).toBe(false);
    const [step, ...others] = lookup.steps(typed({}));
    expect(others).toEqual([]);
    expect(step!.results).toHaveLength(2);
    expect(firstOpen(slotsOf(typed({}), step!))).toBeUndefined();
    expect(lookup.keep(typed({}))).toEqual([]);
  });
});

describe('the slots', () => {
  const stepOf = (texts: Record<string, string>) => lookup.steps(typed(texts))[0]!;
  const slotsIn = (texts: Record<string, string>) =>
    Object.fromEntries(slotsOf(typed(texts), stepOf(texts)).map((slot) => [slot.field.name, slot]));

  test.each(AMOUNTS)('%s can be the one that is found: it is dashed, and shows the answer', (find) => {
    const slots = slotsIn({ ...byMass, drink: '100', ppm: '26.3305', find });
    expect(Object.values(slots).flatMap(({ state, field }) => (state === 'sought' ? field.name : []))).toEqual([find]);
    const shown = { drops: '12 drops', strength: '1 % w/w', mgPerDrop: '22', drink: '100', ppm: '26' };
    expect(slots[find]!.text).toContain(shown[find]);
  });

  test('to find another, its sheet has a button: what was found before is then what is given', () => {
    const given = { ...byMass, drink: '100' };
    const offer = slotsIn(given)['drops']!.offer!;
    expect(offer.type).toEqual({ find: 'drops', ppm: '26.3' });
    expect(stepOf({ ...given, ...offer.type }).card!.answer!.big).toBe('12 drops');
  });

  test('to type into the one that is found makes the other one of drops and level that which is found', () => {
    const { along } = slotsIn({})['ppm']!;
    expect(stepOf({ ...byMass, drink: '100', ppm: '26', ...along }).card!.answer!.big).toBe('12 drops');
    expect(slotsIn({ find: 'strength', ppm: '20' })['strength']!.along).toEqual({ find: 'ppm' });
  });

  test('mg/kg and ppm are said once', () => {
    const { big, lines } = stepOf({ ...byMass, drink: '100' }).card!.answer!;
    expect([big, ...lines].join(' ').match(/ppm/g)).toHaveLength(1);
    expect(big).toMatch(/ mg\/kg$/);
  });

  test('the one calibrated dropper is taken by itself', () => {
    const made = { v: 1, made: '2025-01-01T08:00:00.000Z', from: [] };
    const records: object[] = [
      { ...made, id: 'new', kind: 'dropper', name: 'P2', tip: '', made: '2025-02-01T08:00:00.000Z' },
      { ...made, id: 'old', kind: 'dropper', name: 'P1', tip: '' },
      {
        ...made,
        id: 'c',
        kind: 'calibration',
        dropper: 'old',
        liquid: { id: 'ethanol-96', name: 'ethanol' },
        readings: [{ drops: 20, massG: 0.31 }],
        readabilityG: 0.001,
        mgPerDrop: { value: 15.5, sources: [] },
        spread: 0.02,
      },
    ];
    takeIn(records as Parameters<typeof takeIn>[0]);
    expect(asked(typed({})).dropper.preset).toBe('old');
    expect(stepOf({}).card!.answer!.lines.join(' ')).not.toContain('typical');
    shelf.records.value = new Map();
    expect(asked(typed({})).dropper.preset).toBe('typical');
    expect(stepOf({}).card!.answer!.lines.join(' ')).toContain('A typical drop, not weighed');
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
      expect(lookup.steps(run)[0]!.results).toBeUndefined();
      expect(firstOpen(slotsOf(run, lookup.steps(run)[0]!))!.state).toBe('impossible');
      expect(textOf(run, fields.ppm)).toBe('7');
    }
  });

  test('a target stronger than the vial is refused with the reason', () => {
    const run = typed({ ...byMass, ppm: '20000', find: 'drops' });
    expect(() => sumOf(run)).toThrow('cannot be made from it');
    const slot = slotsOf(run, lookup.steps(run)[0]!).find(({ field }) => field.name === 'ppm')!;
    expect(slot.wrong).toContain('cannot be made from it');
  });
});
