import { describe, expect, test } from 'vitest';
import { highestFrom } from '../../../src/core/blend/highest';
import { free, lattice } from '../../../src/core/blend/region';
import { bestCarried, fitted, heightAt, information, type Judged } from '../../../src/core/blend/scheffe';
import { Refusal } from '../../../src/core/text/refusal';
import reference from '../../reference/blends.json';
import { residuals } from '../residuals';
import { seeded } from '../seeded';

const { nist, etchRate } = reference;
const yarn: Judged[] = nist.rows.flatMap(([shares, readings]) =>
  readings!.map((liking) => ({ shares: shares!, liking })),
);
const etch: Judged[] = etchRate.rate.map((liking, i) => ({ shares: etchRate.shares[i]!, liking }));

describe('a surface over blends', () => {
  test('yarn of NIST/SEMATECH 5.5.4.2: six coefficients, their errors, R², its adjusted form, the root mean square', () => {
    const surface = fitted(yarn, 'quadratic');
    const off = residuals('NIST/SEMATECH 5.5.4.2, quadratic, against the digits printed');
    surface.coefficients.forEach((one, i) => off.add(`b${i + 1}`, one - nist.coefficients[i]!));
    surface.standardErrors.forEach((one, i) => off.add(`se${i + 1}`, one - nist.standardErrors[i]!));
    off.add('R²', surface.r2 - nist.r2);
    off.add('adjusted R²', surface.adjustedR2 - nist.adjustedR2);
    off.add('RMSE', surface.rmse - nist.rmse);
    off.print();
    surface.coefficients.forEach((one, i) => expect(one).toBeCloseTo(nist.coefficients[i]!, 9)); // one decimal printed, and exact
    surface.standardErrors.forEach((one, i) => expect(Math.abs(one - nist.standardErrors[i]!)).toBeLessThan(5.1e-7));
    expect(Math.abs(surface.r2 - nist.r2)).toBeLessThan(5.1e-7);
    expect(Math.abs(surface.adjustedR2 - nist.adjustedR2)).toBeLessThan(5.1e-7);
    expect(Math.abs(surface.rmse - nist.rmse)).toBeLessThan(5.1e-6);
    expect(surface.freedom).toBe(9);
    expect(yarn.reduce((sum, { liking }) => sum + liking, 0) / yarn.length).toBeCloseTo(nist.mean, 9);
  });

  test('its highest point lies on the edge from the first to the third, 29.4 to 70.6, at 17.384', () => {
    const surface = fitted(yarn, 'quadratic');
    const height = (shares: readonly number[]) => heightAt(surface, shares);
    const top = highestFrom(lattice(free(3), 10), height, free(3));
    const exact = (11.4 + 11.7 - 16.4) / (2 * 11.4); // of b1·x + b3·(1−x) + b13·x·(1−x), by its slope
    console.info(`highest yarn: share off by ${Math.abs(top[0]! - exact).toExponential(1)}, ${height(top).toFixed(4)} against ${nist.maximum.y}`); // prettier-ignore
    expect(Math.abs(top[0]! - exact)).toBeLessThan(1e-7);
    expect(top[1]).toBe(0);
    top.forEach((share, i) => expect(Math.abs(share - nist.maximum.x[i]!)).toBeLessThan(0.0005));
    expect(Math.abs(height(top) - nist.maximum.y)).toBeLessThan(0.00005);
  });

  test('etch rate: the special cubic, its sum of squares and its highest point (Myers & Montgomery 2002)', () => {
    const surface = fitted(etch, 'special cubic');
    const off = residuals('etch rate, special cubic');
    surface.coefficients.forEach((one, i) => off.add(`b${i + 1}`, one - etchRate.specialCubic[i]!));
    off.print();
    surface.coefficients.forEach((one, i) => expect(Math.abs(one - etchRate.specialCubic[i]!)).toBeLessThan(0.0051));
    expect(Math.abs(surface.rss - etchRate.rss)).toBeLessThan(0.0051);
    expect(Math.abs(surface.rmse - etchRate.rmse)).toBeLessThan(0.00051);
    const height = (shares: readonly number[]) => heightAt(surface, shares);
    const top = highestFrom(lattice(free(3), 20), height, free(3));
    expect(Math.abs(height(top) - etchRate.maximum.y)).toBeLessThan(0.051);
    top.forEach((share, i) => expect(Math.abs(share - etchRate.maximum.x[i]!)).toBeLessThan(0.0011));
  });

  test('etch rate: a quadratic surface does not fit, and that is told; the special cubic passes', () => {
    const quadratic = fitted(etch, 'quadratic');
    const pure = 200 + 200 + 612.5 + 1250; // the four blends made twice, by hand
    expect(Math.abs(quadratic.rss - etchRate.quadraticRss)).toBeLessThan(0.051);
    const { f, above, below, p } = quadratic.lackOfFit!;
    expect([above, below]).toEqual([4, 4]);
    expect(f).toBeCloseTo((etchRate.quadraticRss - pure) / 4 / (pure / 4), 2);
    const cubic = fitted(etch, 'special cubic').lackOfFit!;
    console.info(`etch rate, lack of fit: quadratic F ${f.toFixed(2)}, p ${p.toFixed(4)}; special cubic F ${cubic.f.toFixed(2)}, p ${cubic.p.toFixed(3)}`); // prettier-ignore
    expect(p).toBeLessThan(0.01);
    expect(cubic.f).toBeCloseTo((etchRate.rss - pure) / 3 / (pure / 4), 3);
    expect(cubic.p).toBeGreaterThan(0.1);
    expect(bestCarried(etch)!.model).toBe('special cubic');
  });

  test('yarn was measured at six blends, as many as the terms: no lack of fit can be told', () => {
    expect(fitted(yarn, 'quadratic').lackOfFit).toBeNull();
    expect(fitted(yarn, 'linear').lackOfFit!.p).toBeLessThan(0.01);
  });

  test('how much a lattice tells: 1/4096 of a quadratic; the centroid (1/1728)² of a special cubic', () => {
    const six = lattice(free(3), 2);
    const seven = [...six, [1 / 3, 1 / 3, 1 / 3]];
    expect(information(six, 'quadratic') * 4096).toBeCloseTo(1, 12);
    expect(information(seven, 'special cubic') * 1728 ** 2).toBeCloseTo(1, 12);
  });

  test('likings left out are foretold as by fitting without each of them', () => {
    const all = fitted(yarn, 'quadratic');
    const alone = yarn.map((one, i) => one.liking - heightAt(fitted(yarn.toSpliced(i, 1), 'quadratic'), one.shares));
    expect(all.leftOutError).toBeCloseTo(alone.reduce((sum, e) => sum + e * e, 0) / yarn.length, 10);
  });

  test('the standard errors are what replays with known noise show', () => {
    const random = seeded(554);
    const found: number[] = [];
    let said = 0;
    for (let game = 0; game < 400; game++) {
      const replay = yarn.map(({ shares }) => ({ shares, liking: 5 + 2 * (random() + random() + random() - 1.5) }));
      const surface = fitted(replay, 'quadratic');
      found.push(surface.coefficients[3]!);
      said += surface.standardErrors[3]! ** 2 / 400;
    }
    const mean = found.reduce((sum, one) => sum + one, 0) / found.length;
    const sd = Math.sqrt(found.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (found.length - 1));
    expect(sd / Math.sqrt(said)).toBeGreaterThan(0.9);
    expect(sd / Math.sqrt(said)).toBeLessThan(1.1);
  });

  test('what the likings do not carry is refused, and the surface is as large as they do carry', () => {
    expect(() => fitted([], 'linear')).toThrow(Refusal);
    expect(() => fitted(yarn.slice(0, 6), 'quadratic')).toThrow('do not carry a quadratic surface');
    const line = [0, 0.25, 0.5, 0.75, 1, 1].map((x) => ({ shares: [x, 0, 1 - x], liking: x }));
    expect(() => fitted(line, 'linear')).toThrow(Refusal); // the second part was never in
    expect(bestCarried(line)).toBeNull();
    expect(bestCarried(yarn.slice(0, 2))).toBeNull();
  });
});
