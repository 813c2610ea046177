import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { casProblem, tidyCas } from '../../../src/core/limits/cas';

// Numbers as they stand in the EU Union list or the FDA inventory (water: PubChem).
const real = ['7732-18-5', '5989-27-5', '121-33-5', '64-17-5', '8000-66-6', '51115-67-4', '75-07-0', '68952-43-2'];

describe('a CAS number', () => {
  test.each(real)('%s is right', (cas) => {
    expect(casProblem(cas)).toBeNull();
  });

  test('with one digit mistyped is always noticed, unless it is the ten-times-weighted one', () => {
    fc.assert(
      fc.property(fc.constantFrom(...real), fc.nat(20), fc.integer({ min: 1, max: 9 }), (cas, at, by) => {
        const places = [...cas].flatMap((sign, i) => (sign === '-' ? [] : [i]));
        const place = places[at % places.length]!;
        const digit = (Number(cas[place]) + by) % 10;
        const wrong = `${cas.slice(0, place)}${digit}${cas.slice(place + 1)}`;
        const weight = places.length - 1 - places.indexOf(place); // counted from the right, without the check digit
        const noticed = weight === 0 || (weight * by) % 10 !== 0;
        expect(casProblem(wrong) !== null).toBe(noticed);
      }),
    );
  });

  test('may be typed with spaces, long dashes or no hyphens', () => {
    for (const typed of [' 5989-27-5 ', '5989–27–5', '5989275', '5989 27 5']) expect(tidyCas(typed)).toBe('5989-27-5');
  });

  test('that is none gets a sentence with an example', () => {
    expect(casProblem('limonene')).toBe('A CAS number looks like 5989-27-5, not like “limonene”.');
    expect(casProblem('5989-27-6')).toBe('The check digit of 5989-27-6 does not fit: one digit is mistyped.');
  });
});
