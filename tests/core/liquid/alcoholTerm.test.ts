import { expect, test } from 'vitest';
import { meetsTerm } from '../../../src/core/liquid/alcoholTerm';
import { exact, measured } from '../../../src/core/number/measured';
import { abvTerms } from '../../../src/tables/abvTerms';
import published from '../../reference/spirit.json';

test('1 mL/L of a flavour in 95 % ethanol is not alcohol-free under UK guidance, but de-alcoholised', () => {
  const abv = exact(published.rows.find(({ id }) => id === 'carrier_95')!.value as number); // 0.095 %
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
