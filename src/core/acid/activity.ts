import { Refusal } from '../text/refusal';

/** Debye–Hückel slope at 25 °C in water, base 10, (kg/mol)^½. */
const SLOPE = 0.509;

/** Strongest solution that the equation is used for here, mol/L. */
const STRONGEST = 0.5;

/**
 * Activity coefficient (dimensionless) of an ion by its charge and the ionic strength of the water, mol/L, at 25 °C:
 * log γ = −0.509 z² (√I/(1 + √I) − 0.3 I). Source: Davies, Ion Association (1962); valid to about 0.5 mol/L. Sugar and alcohol
 * are not counted. @throws Refusal outside 0–0.5 mol/L
 */
export function activityCoefficient(charge: number, ionicStrength: number): number {
  if (!(ionicStrength >= 0 && ionicStrength <= STRONGEST))
    throw new Refusal('activities are known up to 0.5 mol/L of ions, not {ions} mol/L: measure the pH', {
      ions: { value: ionicStrength, digits: 2 },
    });
  const root = Math.sqrt(ionicStrength);
  return 10 ** (-SLOPE * charge ** 2 * (root / (1 + root) - 0.3 * ionicStrength));
}
