import { expect, test } from 'vitest';
import type { DrinkMaterial } from '../../../src/core/limits/exposure';
import { exact } from '../../../src/core/number/measured';
import { traitsByContent } from '../../../src/workshop/drinkable/traits';

const of = (name: string, botanical: string | undefined, cas: string[] = []): DrinkMaterial => ({
  id: name,
  name,
  cas,
  ...(botanical === undefined ? {} : { botanical }),
  mgPerKg: exact(1),
  constituents: [],
  natural: true,
});

test.each([
  ['Mentha x piperita', 'mint'],
  ['mentha spicata L.', 'mint'],
  ['Artemisia absinthium', 'from Artemisia'],
  ['Citrus sinensis', 'citrus oil'],
  ['Gentiana lutea', 'bitter'],
])('%s makes a drink %s', (plant, trait) => {
  expect([...traitsByContent([of('it', plant)])]).toEqual([[trait, 'it']]);
});

test('so does the CAS number of an oil whose plant no one typed', () => {
  expect([
    ...traitsByContent([of('peppermint', undefined, ['8006-90-4']), of('quinine', undefined, ['130-95-0'])]),
  ]).toEqual([
    ['mint', 'peppermint'],
    ['bitter', 'quinine'],
  ]);
});

test('another plant makes it nothing: neither a name that only begins alike, nor none', () => {
  expect(traitsByContent([of('a', 'Menthastrum album'), of('b', undefined), of('c', '')]).size).toBe(0);
});
