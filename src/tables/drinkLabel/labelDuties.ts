/** Numbers of the laws of labels that are no warnings, each with where it is from. */
export const labelDuties = {
  /** % vol above which the EU wants the strength, and neither list of ingredients nor nutrition. */
  euAlcohol: { abv: 1.2, source: 'Reg. (EU) 1169/2011 Art. 9(1)(k), 16(4), 28, 30(4); the exemption read in COM(2017) 58' },
  /** ± % vol of a strength on a label; the one of beverages with macerated fruit or plants beside the usual one. */
  euTolerance: { abv: 0.3, macerated: 1.5, source: 'Reg. (EU) 1169/2011 Annex XII, read as reproduced; at 20 °C, at most one decimal' },
  usTolerance: { abv: 0.3, source: '27 CFR 19.356, distilled spirits, read as reproduced; malt drinks and wine have others' },
  /** % vol from which on no day is needed. */
  euNoDate: { abv: 10 },
  /** A spirit drink: % vol; a liqueur has so much sugar, g/L as invert sugar. */
  euSpirit: { abv: 15, liqueurSugar: 100, source: 'Reg. (EU) 2019/787 Art. 2 and Annex I category 33, from memory, check' },
  /** % vol from which on a drink is alcohol to the Treasury, with its warning. */
  usAlcohol: {
    abv: 0.5,
    words: 'GOVERNMENT WARNING: (1) According to the Surgeon General, women should not drink alcoholic beverages during pregnancy because of the risk of birth defects. (2) Consumption of alcoholic beverages impairs your ability to drive a car or operate machinery, and may cause health problems.',
    source: '27 CFR 16.21, from memory, check',
  },
  /** Polyols from which on a warning is needed, g per 100 mL; the law says 10 % of the food. */
  polyols: { grams: 10, words: 'Excessive consumption may produce laxative effects', source: 'Reg. (EU) 1169/2011 Annex III 2.4, read as reproduced' },
  sweetened: { source: 'Reg. (EU) 1169/2011 Annex III 2.1 to 2.3, read as reproduced' },
  /** Share of a flavouring that is from the plant it is named after, g/g. */
  naturalX: { share: 0.95 },
  /** mL of a serving; a container of under twice that is one serving. */
  usServing: { ml: 360, single: 720, source: '21 CFR 101.12(b): 12 fl oz, from memory, check; 101.9(b)(6), read as reproduced' },
  /** mL of a serving of a drink with alcohol, up to % vol. */
  usAlcoholServing: { steps: [{ upTo: 7, ml: 355 }, { upTo: 24, ml: 148 }, { upTo: 100, ml: 44 }], source: 'TTB Ruling 2013-2: 12, 5 and 1.5 fl oz, from memory, check; bounds by the drinks it names, our choice' },
  /** g of salt per g of sodium. */
  salt: { perSodium: 2.5, source: 'Reg. (EU) 1169/2011 Annex I, read as reproduced' },
  allergens: { EU: 'Reg. (EU) 1169/2011 Art. 21: in the list, set apart by the letters; without a list “contains” and the name; from memory, check', US: '21 U.S.C. 343(w), from memory, check' },
  quid: { EU: 'Reg. (EU) 1169/2011 Art. 22 and Annex VIII, from memory, check', US: 'of juice: 21 CFR 101.30, from memory, check' },
  order: { EU: 'Reg. (EU) 1169/2011 Art. 18 and Annex VII: by weight as it went in, under 2 % in any order at the end; carriers Art. 20(b), from memory, check', US: '21 CFR 101.4; carriers 101.100(a)(3), from memory, check' },
  lot: { EU: 'Dir. 2011/91/EU: after an L where it is not plain to see, from memory, check', US: 'no rule for drinks as such, from memory, check' },
  net: { EU: 'Reg. (EU) 1169/2011 Art. 23, in one field of vision with name and strength, Art. 13(5), from memory, check', US: '21 CFR 101.7, mL and fl oz, from memory, check' },
  madeBy: { EU: 'Reg. (EU) 1169/2011 Art. 8 and 9(1)(h), from memory, check', US: '21 CFR 101.5, from memory, check' },
  letters: { EU: 'Reg. (EU) 1169/2011 Art. 13, from memory, check', US: '21 CFR 101.2(c), from memory, check' },
  dated: { EU: 'Reg. (EU) 1169/2011 Art. 24 and Annex X 1(d), from memory, check', US: 'no federal rule for drinks, some states have one, from memory, check' },
  called: { EU: 'Reg. (EU) 1169/2011 Art. 17, from memory, check', US: '21 CFR 101.3, from memory, check' },
  stored: { EU: 'Reg. (EU) 1169/2011 Art. 25, from memory, check', US: 'no rule for drinks that keep, from memory, check' },
  flavouring: { EU: 'Reg. (EC) 1334/2008 Art. 16, read as a textbook and a flavour house explain it', US: '21 CFR 101.22, from memory, check' },
  clp: { EU: 'Reg. (EC) 1272/2008 Art. 1(5)(e), from memory, check', US: '29 CFR 1910.1200(b)(5)(iii): food that is labelled by its own law, from memory, check' },
} as const;
