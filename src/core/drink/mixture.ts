import { plus, propagate, type Measured } from '../number/measured';
import type { Content } from './dose';
import { Refusal } from '../text/refusal';

/** Something weighed into a vessel: g, and what it consists of (g/g). A neat material is one content of strength 1. */
export interface Addition {
  readonly mass: Measured;
  readonly contents: readonly Content[];
}

/** What is in a vessel: g in all, and the share (g/g) of each material. Can be an Addition of the next vessel. */
export interface Mixture {
  readonly mass: Measured;
  readonly contents: readonly Content[];
}

/**
 * True composition of what was weighed together: sᵢ = Σ mₖ cₖᵢ / M. Mass is conserved: shares of additions whose contents
 * add to one add to one. Sensitivities ∂sᵢ/∂mₖ = (cₖᵢ − sᵢ)/M, ∂sᵢ/∂cₖᵢ = mₖ/M, so that a scale or lot used twice is
 * right or wrong twice (GUM 5.2.2).
 * @throws Refusal when a mass is negative or nothing is in the vessel
 */
export function mixtureOf(additions: readonly Addition[]): Mixture {
  if (additions.some(({ mass }) => !(mass.value >= 0))) throw new Refusal('a mass is zero or more');
  const mass = plus(...additions.map((one) => one.mass));
  if (!(mass.value > 0)) throw new Refusal('there is nothing in the vessel yet');
  const ids = new Set(additions.flatMap(({ contents }) => contents.map(({ material }) => material)));
  return { mass, contents: [...ids].map((material) => ({ material, strength: shareOf(material, additions, mass) })) };
}

/** Share (g/g) of one material in a mixture; by definition 0 when it is not in it. */
export function shareIn(mixture: Mixture, material: string): Measured {
  return mixture.contents.find((content) => content.material === material)?.strength ?? { value: 0, sources: [] };
}

function shareOf(material: string, additions: readonly Addition[], total: Measured): Measured {
  const held = additions.map(({ contents }) => contents.filter((content) => content.material === material));
  const strengths = held.map((contents) => contents.reduce((sum, { strength }) => sum + strength.value, 0));
  const share = additions.reduce((sum, { mass }, k) => sum + mass.value * strengths[k]!, 0) / total.value;
  return propagate(share, [
    ...additions.map(({ mass }, k) => [mass, (strengths[k]! - share) / total.value] as const),
    ...held.flatMap((contents, k) =>
      contents.map(({ strength }) => [strength, additions[k]!.mass.value / total.value] as const),
    ),
  ]);
}
