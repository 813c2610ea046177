import { exact, type Measured } from '../../core/number/measured';
import { purityAtLeast } from '../../core/liquid/strength';
import type { Bottle, Material } from '../../records/kind/material';

/** What a single substance without a certificate is usually sold as, at least, g/g: common practice. */
const USUALLY_AT_LEAST = 0.95;

/**
 * Share of a bottle that is what its name says, g/g: by its certificate, else as typed of the material, else by what is sold: at least
 * what the Union list of flavourings asks, or 95 %. An oil or extract is itself.
 */
export function purityOf(bottle: Bottle, material: Material | undefined): Measured {
  const typed = bottle.purity ?? material?.purity;
  const id = `purity:${bottle.lot || bottle.id}`;
  if (typed !== undefined) return purityAtLeast(typed * 100, { id, words: 'purity of the material' });
  if (material?.sort !== 'substance') return exact(1);
  const sold = (material.soldAtLeast ?? USUALLY_AT_LEAST) * 100;
  return purityAtLeast(sold, { id, words: `purity, not typed: sold as at least ${sold} %` });
}
