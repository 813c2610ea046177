import { Refusal } from '../text/refusal';

/**
 * Numbers with their uncertainty: first-order propagation of uncertainty (GUM, JCGM 100:2008, 5.1.2 and 5.2).
 *
 * A Measured holds its value and, for each independent source, the signed standard uncertainty that this source
 * brings, in the unit of the value. Two results that share a source (the same calibration used for two vials) carry
 * it under the same id, so correlated terms add as they should: linearly within a source, in squares between sources.
 */

/** One independent cause of uncertainty: `u` is c·u(x), sensitivity times standard uncertainty, signed, in the value's unit. */
export interface Source {
  readonly id: string;
  readonly words: string;
  readonly u: number;
}

/** A value and where its uncertainty comes from. The unit is that of the name that holds it. */
export interface Measured {
  readonly value: number;
  readonly sources: readonly Source[];
}

/** One line of an uncertainty budget: `u` in the value's unit, `share` of the variance (0 to 1). */
export interface BudgetLine {
  readonly id: string;
  readonly words: string;
  readonly u: number;
  readonly share: number;
}

/** A number without uncertainty (a count, a definition). Any finite number. */
export function exact(value: number): Measured {
  return { value, sources: [] };
}

/**
 * A number with one source of uncertainty. `u` is its standard uncertainty, same unit, 0 or more.
 * @throws Refusal when u is negative or not finite
 */
export function measured(value: number, u: number, source: { id: string; words: string }): Measured {
  if (!(u >= 0 && Number.isFinite(u))) throw new Refusal('an uncertainty is zero or more, not {u}', { u });
  return { value, sources: u === 0 ? [] : [{ ...source, u }] };
}

/**
 * A result from its inputs: `value` as the caller computed it, each input with its sensitivity ∂value/∂input.
 * Source: GUM 5.1.2 eq. (10), and 5.2.2 eq. (13) for inputs that share sources.
 */
export function propagate(value: number, inputs: readonly (readonly [Measured, number])[]): Measured {
  const merged = new Map<string, Source>();
  for (const [input, sensitivity] of inputs)
    for (const source of input.sources) {
      const before = merged.get(source.id)?.u ?? 0;
      merged.set(source.id, { id: source.id, words: source.words, u: before + sensitivity * source.u });
    }
  return { value, sources: [...merged.values()].filter((source) => source.u !== 0) };
}

/** Sum of measured numbers of one unit. */
export function plus(...terms: readonly Measured[]): Measured {
  return propagate(
    terms.reduce((sum, term) => sum + term.value, 0),
    terms.map((term) => [term, 1] as const),
  );
}

/** a − b, same unit. */
export function minus(a: Measured, b: Measured): Measured {
  return propagate(a.value - b.value, [
    [a, 1],
    [b, -1],
  ]);
}

/** a · b; the units multiply. */
export function times(a: Measured, b: Measured): Measured {
  return propagate(a.value * b.value, [
    [a, b.value],
    [b, a.value],
  ]);
}

/**
 * a / b; the units divide.
 * @throws Refusal when b is zero
 */
export function over(a: Measured, b: Measured): Measured {
  if (b.value === 0) throw new Refusal('nothing can be divided by zero');
  return propagate(a.value / b.value, [
    [a, 1 / b.value],
    [b, -a.value / b.value ** 2],
  ]);
}

/** a · factor, where the factor is exact (a count of drops, a change of unit). */
export function scaled(a: Measured, factor: number): Measured {
  return propagate(a.value * factor, [[a, factor]]);
}

/** Combined standard uncertainty, unit of the value. GUM 5.1.2: the sources are independent of each other. */
export function standardUncertainty(a: Measured): number {
  return Math.sqrt(a.sources.reduce((sum, source) => sum + source.u ** 2, 0));
}

/** Expanded uncertainty at coverage factor k = 2 (about 95 %), unit of the value. GUM 6.2.1. */
export function expanded(a: Measured): number {
  return 2 * standardUncertainty(a);
}

/** The uncertainty budget, largest first: each source in the unit of the value, and its share of the variance. Empty for exact numbers. */
export function budget(a: Measured): BudgetLine[] {
  const variance = standardUncertainty(a) ** 2;
  return a.sources
    .map(({ id, words, u }) => ({ id, words, u: Math.abs(u), share: u ** 2 / variance }))
    .sort((one, two) => two.share - one.share);
}
