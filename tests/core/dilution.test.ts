import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  amountsFor,
  dilutionOf,
  dropsFor,
  fillFor,
  massPerVolume,
  rescue,
  solventForDrops,
} from '../../src/core/dilution';
import { bridge, ladder } from '../../src/core/bridge';
import { exact, measured, plus, relativeUncertainty, standardUncertainty } from '../../src/core/measured';
import { smallestMass } from '../../src/core/smallestMass';
import { gram, gramPerMl, massFraction, millilitre } from '../../src/core/units';

/** Net mass on a scale of division d with repeatability s: two readings, d/√6 (GUM, F.2.2.1), and s. */
const weighed = (grams: number, d: number, s: number, id: string) =>
  plus(
    measured(grams, d / Math.sqrt(6), { id: `${id} readability`, words: 'readability' }),
    measured(0, s, { id: `${id} repeatability`, words: 'repeatability' }),
  );

describe('the true strength of what was put in', () => {
  test('a weighed 0.100 g on a 0.01 g scale is uncertain by 4.08 % from its readability alone (GUM 4.3.7)', () => {
    const net = weighed(0.1, 0.01, 0, 'net');
    expect(standardUncertainty(net)).toBeCloseTo(0.0040825, 7);
    expect(relativeUncertainty(net)).toBeCloseTo(0.040825, 6);
  });

  test.each([
    [0.1, 10, 0.01, 0.01, 0.01, 0.106938],
    [0.1, 10, 0.001, 0.001, 0.01, 0.0106938],
    [0.5, 5, 0.01, 0.01, 0.1, 0.0195619],
  ])('%d g in %d g on a scale of d = %d g, s = %d g is w = %d, uncertain by %d of it (QUAM:2012)', (...row) => {
    const [m, M, d, s, w, relative] = row;
    const made = dilutionOf(
      [{ mass: weighed(m, d, s, 'material'), strength: exact(1) }],
      weighed(M - m, d, s, 'solvent'),
    );
    expect(made.strength.value).toBeCloseTo(w, 12);
    // The check case writes (1 − m/M)·u1/m for the material and u2/M for the solvent: the same formula.
    expect(relativeUncertainty(made.strength)).toBeCloseTo(relative, 6);
  });
});
