import { describe, expect, test } from 'vitest';
import { digitFaults, finerThanScale } from '../browser/audit/digitRules';

describe('the rules that every screen is held to can fail', () => {
  test.each([
    'That is 2.2e-14 % stronger than asked',
    '1e21 mg/L',
    'Y9E7 of it',
    '3E22 mg/kg, 2222 mg',
    '5.9e−10 %'.replace('−', '-'),
    '3 × 10⁻⁴ g',
    'base.ml = 250.00000000000003',
    '1.00 ± 0.37 % w/v',
    '1.067 ± 0.06 % w/v',
    '1958.92 ± 0.16 mg/L of 1000 mg/L',
    '7.0004 ± 0.0037 °Brix',
    '1234 ± 456 mg',
    '9.54791 mg/kg',
    '16643 g of sugar',
    'Weigh ‹0.00 g› of cis-3-hexen-1-ol.',
    'Exactly 0.00 g',
    '0.000 g left',
    '0,00 g',
  ])('%s', (text) => {
    expect(digitFaults(text)).not.toEqual([]);
  });

  test.each([
    '(1.0 ± 0.4) % w/v',
    '1.07 ± 0.06 g',
    '0.83 ± 0.12 mg',
    '1200 ± 500 mg/kg',
    '20.00 ± 0.05 L',
    '16640 ± 10 g',
    'Weigh 16643 g of sugar.',
    '16643 ± 1 g',
    'propane-1,2-diol (E 1520)',
    'made 2026-05-04',
    '0.00 ± 0.40 % of it'.replace('0.40', '0.04'),
    '10.00 g',
    'empty',
    'BKL3 Y9E7',
    'Label of B1: 1 g/L 9E73 BKL3; QR code',
  ])('%s is fine', (text) => {
    expect(digitFaults(text)).toEqual([]);
  });

  test('a weighing step has no more decimals than its scale', () => {
    expect(finerThanScale('Weigh ‹0.1234 g› of rose.', [0.01])).toEqual(['finer than the scale: 0.1234 g']);
    expect(finerThanScale('Weigh ‹0.12 g› of rose, 1.04 g/mL.', [0.01])).toEqual([]);
    expect(finerThanScale('Into the drink: ‹16643.5 g› of water.', [1])).toEqual(['finer than the scale: 16643.5 g']);
  });
});
