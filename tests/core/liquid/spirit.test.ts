import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { exact, measured } from '../../../src/core/number/measured';
import {
  abvFromCarrier,
  abvFromCarrierMass,
  blendSpirits,
  massOfSpirit,
  meetsTerm,
  mostCarrier,
  spiritFor,
  thinSpirit,
} from '../../../src/core/liquid/spirit';
import { millilitre, volumeFraction } from '../../../src/core/number/units';
import { abvTerms } from '../../../src/tables/abvTerms';
import published from '../../reference/spirit.json';
import { residuals } from '../residuals';

const value = (id: string) => published.rows.find((row) => row.id === id)!.value as number;
const of = (ml: number, percent: number) => ({ volume: millilitre(ml), abv: volumeFraction(percent / 100) });
const seen = residuals('Spirits: g of water per litre of spirit (OIML R 22)');
afterAll(() => seen.print());

describe('thinning and blending', () => {
  test.each(published.rows.filter(({ id }) => id.startsWith('dil_')))(
    '$id takes $value g of water per litre',
    (row) => {
      const { from, to } = row.inputs as { from: number; to: number };
      const made = thinSpirit(of(1000, from), volumeFraction(to / 100));
      seen.add(row.id, made.water - (row.value as number));
      expect(Math.abs(made.water - (row.value as number))).toBeLessThan(0.5);
    },
  );

  test('1 L of 96 % to 40 %: 2400 mL, shrunk by 70.5 mL; the square on % v/v would land at 41.19 %', () => {
    const made = thinSpirit(of(1000, 96), volumeFraction(0.4));
    expect(made.volume).toBeCloseTo(2400, 0);
    expect(made.contraction).toBeCloseTo(70.5, 1);
    expect(blendSpirits([of(1000, 96), of(1400, 0)]).abv * 100).toBeCloseTo(41.19, 1);
  });

  test('1 L of 40 % from 96 % is 336.4 g of spirit and 611.6 g of water', () => {
    const made = spiritFor(of(1000, 40), volumeFraction(0.96));
    expect(made.spirit).toBeCloseTo(336.4, 1);
    expect(made.water).toBeCloseTo(611.6, 1);
  });

  test('50 mL of alcohol and 50 mL of water are 97 mL (USP, alcohol dilutum)', () => {
    expect(Math.abs(blendSpirits([of(50, 95), of(50, 0)]).volume - value('usp_dilutum'))).toBeLessThan(0.2);
  });

  test('60 mL of 40 % and 60 mL of 15 % are 27.55 %; 50 mL of 40 % and 150 mL of water 9.99 %', () => {
    expect(Math.abs(blendSpirits([of(60, 40), of(60, 15)]).abv * 100 - value('cocktail_a'))).toBeLessThan(0.01);
    expect(blendSpirits([of(60, 40), of(60, 15)]).volume).toBeCloseTo(119.8, 1);
    expect(Math.abs(blendSpirits([of(50, 40), of(150, 0)]).abv * 100 - value('cocktail_b'))).toBeLessThan(0.011);
  });

  test('mass is conserved, and spirit made for a volume blends to that volume', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 61, max: 100, noNaN: true }),
        (to, from) => {
          const want = of(1000, to);
          const { spirit, water } = spiritFor(want, volumeFraction(from / 100));
          expect(spirit + water).toBeCloseTo(massOfSpirit(want), 6);
        },
      ),
    );
    expect(() => blendSpirits([])).toThrow('something to mix');
    expect(() => thinSpirit(of(100, 40), volumeFraction(0.5))).toThrow('water brings');
  });
});

describe('carriers', () => {
  test('1 mL/L of 95 % adds 0.095 %, 1 g/L adds 0.117 %, 2 mL/L of 70 % add 0.14 %', () => {
    expect(abvFromCarrier(1, volumeFraction(0.95)) * 100).toBeCloseTo(value('carrier_95'), 12);
    expect(abvFromCarrierMass(1, volumeFraction(0.95)) * 100).toBeCloseTo(value('carrier_95_g'), 3);
    expect(abvFromCarrier(2, volumeFraction(0.7)) * 100).toBeCloseTo(value('carrier_70'), 12);
  });

  test('5.26 mL/L of 95 % reach 0.5 % ABV, 0.53 mL/L reach 0.05 %', () => {
    expect(mostCarrier(volumeFraction(0.005), volumeFraction(0.95))).toBeCloseTo(value('limit_05'), 2);
    expect(mostCarrier(volumeFraction(0.0005), volumeFraction(0.95))).toBeCloseTo(0.53, 2);
    expect(() => mostCarrier(volumeFraction(0.005), volumeFraction(0.95), volumeFraction(0.01))).toThrow('over');
  });

  test('a drink that has some alcohol leaves less room, and at the most it is exactly at the limit', () => {
    const [most, carrier, present] = [volumeFraction(0.005), volumeFraction(0.95), volumeFraction(0.002)];
    const room = mostCarrier(most, carrier, present) / 1000; // mL per mL of finished drink
    expect(room * carrier + (1 - room) * present).toBeCloseTo(most, 12);
  });

  test('1 mL/L of a flavour in 95 % ethanol is not alcohol-free under UK guidance, but de-alcoholised', () => {
    const abv = exact(abvFromCarrier(1, volumeFraction(0.95)) * 100);
    const term = (name: string) => abvTerms.find((row) => row.jurisdiction === 'UK' && row.term === name)!;
    expect(meetsTerm(abv, term('alcohol-free'))).toBe('no');
    expect(meetsTerm(abv, term('de-alcoholised'))).toBe('yes');
  });

  test('"less than 0.5 %" is not met by 0.5 %, "not more than 0.5 %" is; a doubt across the number is said', () => {
    const us = abvTerms.find((row) => row.jurisdiction === 'US' && row.term.startsWith('non-alcoholic'))!;
    const eu = abvTerms.find((row) => row.term === 'de-alcoholised wine')!;
    expect(meetsTerm(exact(0.5), us)).toBe('no');
    expect(meetsTerm(exact(0.5), eu)).toBe('yes');
    expect(meetsTerm(measured(0.49, 0.01, { id: 'a', words: 'a' }), eu)).toBe('close');
    expect(meetsTerm(exact(1), { maxAbv: null, below: false })).toBe('no number');
  });
});
