import { describe, expect, test } from 'vitest';
import { casProblem } from '../../../src/core/limits/cas';
import { oils } from '../../../src/tables/catalogue/oils';
import { substances } from '../../../src/tables/catalogue/substances';
import { neverFitRows } from '../../../src/tables/neverFit';
import { solvents } from '../../../src/tables/solvents';
import { neverFit } from '../../../src/workshop/drinkable/neverFit';

const sentence = (name: string) => `${name} is never fit for drinks: smell only.`;

describe('what is never fit for drinks', () => {
  test.each([
    [
      'Isopropanol',
      'isopropanol|Isopropyl alcohol 99%|ISOPROPYL|iso-propyl alcohol|Isopropylalcohol|propan-2-ol|2-Propanol, HPLC|IPA|IPA 70 %|ipa (isopropyl alcohol)|rubbing alcohol|pure isopropanol|Isopropanol, food grade|iso\u200bpropanol|2‐propanol|isopropanol alcohol|IPA (isopropyl)',
    ],
    ['Methanol', 'Methanol|methyl alcohol|wood alcohol|wood spirit|MeOH 99.8 %|5 % methanol|99 methanol'],
    [
      'Acetone',
      'acetone|2 acetone|nail polish remover acetone|Acetone, pure|propanone|2-propanone|dimethyl ketone|hexane/acetone',
    ],
    [
      'Denatured alcohol',
      'denatured alcohol|Alcohol denat.|alcool dénaturé|vergällter Alkohol|alcool éthylique dénaturée|ethanol 96 % (denatured)|SDA 40-B|SDA40B|SD alcohol 39-C|methylated spirits|meths|industrial spirit|Industrial alcohol|IMS 99|surgical spirit|ethyl, denatured|denatured with methanol',
    ],
    ['Hexane', 'hexane|n-hexane'],
    ['Dipropylene glycol', 'DPG|dipropylene glycol|di-propylene glycol'],
    ['Diethylene glycol', 'diethylene glycol'],
    ['Ethylene glycol', 'ethylene glycol|ethane-1,2-diol|ethane-1-2-diol'],
    ['Diethyl phthalate', 'DEP|diethyl phthalate'],
  ])('%s, by the names on its bottles', (name, typed) => {
    for (const one of typed.split('|')) {
      const said = neverFit(one);
      expect(said, one).not.toBeNull();
      if (one !== 'denatured with methanol') expect(said, one).toBe(sentence(name));
    }
  });

  test('by CAS number, however it is typed', () => {
    expect(neverFit('my solvent', '67-63-0')).toBe(sentence('Isopropanol'));
    expect(neverFit('my solvent', '67561')).toBe(sentence('Methanol'));
    expect(neverFit('my solvent', ' 67–64–1 ')).toBe(sentence('Acetone'));
    expect(neverFit('my solvent', '64-17-5')).toBeNull();
  });

  test('by any of several names', () => {
    expect(neverFit(['cleaner', 'propan-2-ol'])).toBe(sentence('Isopropanol'));
  });

  test.each(
    'ethanol 96 %|grain spirit 95 %|undenatured ethanol|ethanol, not denatured|non-denatured alcohol|un-denatured|methanol-free ethanol|free of methanol|ethyl acetate|isopropyl acetate|isopropyl cinnamate|isopropyl myristate|geranyl acetone|vanillyl acetone|anisyl acetone|hydroxyacetone|tetrahydrofuran-2-methanol|furan-2-methanol|benzyl alcohol|alpha-methylbenzyl alcohol|phenylmethanol|1-phenylpropan-2-ol|2-methyl-1-propanol|1-propanol|acetyl methyl carbinol|amyl vinyl carbinol|acetone glycerol ketal|vanilla oleoresin, extracted with acetone|hop extract for IPA|propylene glycol|polyethylene glycol|ethylene glycol brassylate|allyl hexanoate|ethyl benzoate|vodka 40 %|sugarcane spirit|cologne spirit|glycerol|water|'.split(
      '|',
    ),
  )('not %s', (name) => {
    expect(neverFit(name)).toBeNull();
  });

  test('nothing of the catalogue', () => {
    for (const { name, also = [], cas } of [...substances, ...oils])
      expect(neverFit([name, ...also], cas?.[0]), name).toBeNull();
  });

  test('of the solvents of the bench those of which no food grade exists, and no other', () => {
    for (const { name, cas, foodGradePossible } of solvents)
      expect(neverFit(name, cas) === null, name).toBe(foodGradePossible);
  });

  test('numbers are right, and no name means two things', () => {
    const names = neverFitRows.flatMap(({ anywhere, alone }) => [...anywhere, ...alone]);
    expect(new Set(names).size).toBe(names.length);
    for (const cas of neverFitRows.flatMap((row) => row.cas)) expect(casProblem(cas)).toBeNull();
    for (const name of names) expect(neverFit(name), name).not.toBeNull();
  });
});
