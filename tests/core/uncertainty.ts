import { standardUncertainty, type Measured } from '../../src/core/number/measured';

/** Standard uncertainty over |value|, dimensionless, as publications print it. */
export function relativeUncertainty(a: Measured): number {
  return standardUncertainty(a) / Math.abs(a.value);
}
