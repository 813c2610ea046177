import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costPerLitre, differences, sharesOf, suppliesFor } from '../../../src/core/drink/formula';
import { gram } from '../../../src/core/number/units';

const first = [
  { material: 'linalool', share: 3 },
  { material: 'citral', share: 1 },
];

describe('a formula', () => {
  test('is ratios: parts of any scale give the same shares, and shares add to one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 1000, noNaN: true }), { minLength: 1, maxLength: 10 }),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (parts, k) => {
          const lines = parts.map((share, i) => ({ material: String(i), share }));
          const shares = sharesOf(lines);
          expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
          const scaled = sharesOf(lines.map((line) => ({ ...line, share: k * line.share })));
          scaled.forEach(({ share }, i) => expect(share).toBeCloseTo(shares[i]!.share, 12));
        },
      ),
    );
  });

  test('two lines of one material are one', () => {
    const twice = sharesOf([...first, { material: 'citral', share: 4 }]);
    expect(twice).toEqual([
      { id: 'linalool', share: 0.375 },
      { id: 'citral', share: 0.625 },
    ]);
  });

  test('nothing in it, or less than nothing, is refused', () => {
    expect(() => sharesOf([])).toThrow('something in it');
    expect(() => sharesOf([{ material: 'a', share: -1 }])).toThrow('zero or more');
  });

  test('versions differ by what changed, and the same ratios do not differ', () => {
    const second = [...first, { material: 'nerol', share: 4 }];
    expect(differences(first, second)).toEqual([
      { id: 'nerol', before: 0, after: 0.5 },
      { id: 'linalool', before: 0.75, after: 0.375 },
      { id: 'citral', before: 0.25, after: 0.125 },
    ]);
    expect(
      differences(
        first,
        first.map((line) => ({ ...line, share: 7 * line.share })),
      ),
    ).toEqual([]);
  });

  test('50 mg/L at 0.2 per gram cost 0.01 a litre; what has no price is named', () => {
    expect(costPerLitre(first, 50, () => 0.2)).toEqual({ cost: expect.closeTo(0.01, 12), unpriced: [] });
    const partly = costPerLitre(first, 50, (id) => (id === 'citral' ? 0.2 : undefined));
    expect(partly).toEqual({ cost: expect.closeTo(0.0025, 12), unpriced: ['linalool'] });
  });

  test('bottles are emptied in order, never twice, and what is missing is said', () => {
    const stock = [
      { id: 'old', material: 'citral', left: gram(3) },
      { id: 'new', material: 'citral', left: gram(10) },
    ];
    const [one, two] = suppliesFor(
      [
        { id: 'citral', mass: gram(8) },
        { id: 'citral', mass: gram(8) },
      ],
      stock,
    );
    expect(one!.from).toEqual([
      { bottle: 'old', mass: 3, left: 0 },
      { bottle: 'new', mass: 5, left: 5 },
    ]);
    expect(two).toMatchObject({ from: [{ bottle: 'new', mass: 5, left: 0 }], missing: 3 });
  });
});
