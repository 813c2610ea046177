import { describe, expect, test } from 'vitest';
import { dilutionOf } from '../../src/core/dilution/dilution';
import { compositionOf, doseOf } from '../../src/core/drink/dose';
import { massOfDrops } from '../../src/core/drop/drop';
import { exact, measured, scaled, standardUncertainty, type Measured } from '../../src/core/number/measured';
import { gramPerMl } from '../../src/core/number/units';

/** Uniform on (0, 1), the same row for the same seed: a 32-bit multiply-and-mix generator, good enough for 10⁵ draws. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let x = Math.imul(state ^ (state >>> 15), 1 | state);
    x ^= x + Math.imul(x ^ (x >>> 7), 61 | x);
    return (((x ^ (x >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Standard normal draws by Box and Muller. */
function normal(seed: number): () => number {
  const next = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

const DRAWS = 40_000; // the standard deviation is then known within 0.35 %

/** Mean and standard deviation of a model that draws its inputs. */
function simulate(seed: number, model: (draw: (value: number, u: number) => number) => number) {
  const z = normal(seed);
  const draw = (value: number, u: number) => value + u * z();
  const results = Array.from({ length: DRAWS }, () => model(draw));
  const mean = results.reduce((sum, x) => sum + x, 0) / DRAWS;
  const sd = Math.sqrt(results.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (DRAWS - 1));
  return { mean, sd };
}

/** First order and simulation agree: the value within 0.2 % and a tenth of u, u within 2 % (five times the chance of the draws). */
function agree(words: string, result: Measured, drawn: { mean: number; sd: number }) {
  const u = standardUncertainty(result);
  console.info(`${words}: u first order ${u.toPrecision(5)}, simulated ${drawn.sd.toPrecision(5)}`);
  expect(Math.abs(drawn.mean - result.value)).toBeLessThan(u / 10);
  expect(Math.abs(drawn.sd / u - 1)).toBeLessThan(0.02);
}

const of = (value: number, u: number, id: string) => measured(value, u, { id, words: id });

describe('first-order uncertainty against simulation (JCGM 101: Monte Carlo)', () => {
  test('a weighed dilution', () => {
    const made = dilutionOf([{ mass: of(0.5, 0.011, 'm'), strength: of(0.95, 0.012, 'P') }], of(9.5, 0.05, 's'));
    const drawn = simulate(1, (draw) => {
      const m = draw(0.5, 0.011);
      return (m * draw(0.95, 0.012)) / (m + draw(9.5, 0.05));
    });
    agree('dilution', made.strength, drawn);
  });

  test('two steps by one dropper, the calibration shared by both', () => {
    const drop = of(20, 0.4, 'dropper'); // mg
    const counted = (drops: number, id: string) =>
      massOfDrops({ drops, mgPerDrop: drop, perDropSpread: 0.05, id, words: id });
    const first = dilutionOf([{ mass: counted(25, 'one'), strength: exact(1) }], of(4.5, 0.02, 's1'));
    const second = dilutionOf([{ mass: counted(10, 'two'), strength: first.strength }], of(9.8, 0.02, 's2'));
    const drawn = simulate(2, (draw) => {
      const d = draw(20, 0.4);
      const [m1, m2] = [draw(25 * d, 5 * 1), draw(10 * d, Math.sqrt(10) * 1)].map((mg) => mg / 1000);
      const w1 = m1! / (m1! + draw(4.5, 0.02));
      return (m2! * w1) / (m2! + draw(9.8, 0.02));
    });
    agree('chain', second.strength, drawn);
    // Forgetting that it is the same dropper would understate the uncertainty:
    const apart = second.strength.sources.filter(({ id }) => id !== 'dropper');
    expect(Math.hypot(...apart.map(({ u }) => u))).toBeLessThan(0.9 * drawn.sd);
  });

  test('a dose in mg/L of a drink measured by volume', () => {
    const vial = of(0.0107, 0.0003, 'vial');
    const drop = massOfDrops({ drops: 7, mgPerDrop: of(15, 0.3, 'd'), perDropSpread: 0.05, id: 'c', words: 'c' });
    const pour = { mass: drop, contents: [{ material: 'a', strength: vial }], density: gramPerMl(0.80742) };
    const dose = doseOf([pour], { mass: of(104.23, 1.2, 'drink'), density: of(1.0423, 0.001, 'rho') });
    const model = (draw: (value: number, u: number) => number, perLitre: boolean) => {
      const m = draw(7 * draw(15, 0.3), Math.sqrt(7) * 0.75) / 1000;
      const [w, M, rho] = [draw(0.0107, 0.0003), draw(104.23, 1.2), draw(1.0423, 0.001)];
      return (1e6 * m * w) / (perLitre ? m / 0.80742 + M / rho : m + M);
    };
    agree(
      'mg/kg',
      dose.mgPerKg,
      simulate(3, (draw) => model(draw, false)),
    );
    agree(
      'mg/L',
      dose.mgPerL,
      simulate(4, (draw) => model(draw, true)),
    );
  });

  test('the share of one of three materials, two of them counted with the same calibration', () => {
    const shared = of(20, 1, 'shared');
    const lines = compositionOf([
      { material: 'a', active: scaled(shared, 8) },
      { material: 'b', active: scaled(shared, 3) },
      { material: 'c', active: of(100, 4, 'own') },
    ]);
    const drawn = simulate(5, (draw) => {
      const d = draw(20, 1);
      return (8 * d) / (11 * d + draw(100, 4));
    });
    agree('share', lines[0]!.share, drawn);
  });

  test('two vials made with one calibration, dosed together: the doubts add, they do not average out', () => {
    const drop = of(20, 1, 'dropper');
    const vial = (id: string) =>
      dilutionOf(
        [{ mass: massOfDrops({ drops: 5, mgPerDrop: drop, perDropSpread: 0.02, id, words: id }), strength: exact(1) }],
        exact(9.9),
      ).strength;
    const dose = doseOf(
      ['a', 'b'].map((material) => ({
        mass: exact(0.2),
        contents: [{ material, strength: vial(material) }],
        density: gramPerMl(0.8),
      })),
      { mass: exact(100), density: gramPerMl(1) },
    );
    const drawn = simulate(6, (draw) => {
      const d = draw(20, 1);
      const w = () => {
        const m = draw(5 * d, Math.sqrt(5) * 0.4) / 1000;
        return m / (m + 9.9);
      };
      return (1e6 * 0.2 * (w() + w())) / 100.4;
    });
    agree('two vials, one calibration', dose.mgPerKg, drawn);
  });
});
