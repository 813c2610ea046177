import { measured, propagate, type Measured } from '../number/measured';
import { polynomial } from '../number/polynomial';
import { Refusal } from '../text/refusal';

/** A liquid as it hangs from a tip, at about 20 °C. */
export interface HangingLiquid {
  readonly density: number; // g/mL
  readonly surfaceTension: Measured; // mN/m
  /** More viscous than about 20 mPa·s: propylene glycol, glycerol, fatty oils (our line). */
  readonly viscous: boolean;
  /** Drops of water from a real tip fall lighter against the prediction than those of all other liquids. */
  readonly water?: boolean;
}

/** Where drops fall from: a square-cut tip wets to its rim whatever the liquid; a lip or an insert does not. */
export type Outlet = 'square tip' | 'lip or insert';

/** A drop mass for a liquid not weighed: carried over by physics, or the typical one where physics is too poor. */
export interface TransferredDrop {
  readonly basis: 'transfer' | 'typical';
  /** mg per drop. */
  readonly mgPerDrop: Measured;
  /** One sentence for the screen. */
  readonly why: string;
}

/**
 * What drops of other liquids weigh over what the water drop of the same tip predicts: 9 published counts of mobile liquids give 1.084 on
 * average and scatter by 3.7 % about it. A known bias is corrected (GUM 3.2.4), with what is left of it, 3.7 %·√(1 + 1/9), as uncertainty.
 * Source: pharmacopoeias and dispensing books of 1809 to 1961, worked out in tests/core/drop/dropTransfer.test.ts; found on the same
 * counts that it is used for.
 */
export const OVER_WATER = { factor: 1.084, u: 0.04 };

/**
 * Relative standard uncertainty of a transfer between two liquids neither of which is water: 6.2 %, the root mean square over the 32 ordered
 * pairs of those counts that are of one tip. They show no bias (0.1 % on average). Source: as there.
 */
export const TRANSFER_UNCERTAINTY = 0.062;

const GRAVITY = 9.80665; // m/s², standard
const AIR = 0.0012; // g/mL, conventional (OIML D 28)

/** Harkins–Brown correction ψ against r/V^(1/3), 0 to 1.2. Lee–Chan–Pogaku fit, Chem. Eng. Commun. 195 (2008) 889; coefficients from memory, checked by Eschbaum's drop weights only. */
const LCP = [1, -0.9121, -2.109, 13.38, -27.29, 27.53, -13.58, 2.593];

/**
 * Mass of a drop, mg, falling slowly from a wetted round tip: m g (1 − ρa/ρ) = 2π r σ ψ(r/V^(1/3)). Radius in mm, surface tension
 * in mN/m, density in g/mL. Real drops at one a second are some 5 % heavier (a 3 mm tip gives 50 mg of water, not 47.6).
 * Valid: r/V^(1/3) up to 1.2. Source: Tate 1864; Harkins & Brown, J. Am. Chem. Soc. 41 (1919) 499.
 * @throws Refusal outside, or unless all are above zero
 */
export function hangingDropMg(radiusMm: number, surfaceTension: number, density: number): number {
  if (!(radiusMm > 0 && surfaceTension > 0 && density > 0))
    throw new Refusal('tip radius, surface tension and density are above zero');
  const pull = GRAVITY * (1 - AIR / density); // m/s²
  const ideal = (2 * Math.PI * radiusMm * surfaceTension) / pull; // mm · mN/m over m/s² is mg
  let psi = 0.6;
  for (let i = 0; i < 60; i++) psi = polynomial(LCP, shape(ideal * psi));
  if (!(shape(ideal * psi) <= 1.2))
    throw new Refusal('a tip of {diameterMm} mm is too wide for this liquid’s drops', { diameterMm: 2 * radiusMm });
  return ideal * psi;

  function shape(massMg: number): number {
    return radiusMm / Math.cbrt(massMg / density); // mg over g/mL is mm³
  }
}

/**
 * Radius in mm of the wetted tip that gives drops of `mg` of a liquid (surface tension mN/m, density g/mL): the inverse
 * of {@link hangingDropMg}, by bisection; with drops as they really fell, an effective radius. Check: 1.5895 mm for 50 mg water.
 * Valid: 0.05–5 mm. Source: as there. @throws Refusal outside
 */
export function tipRadiusMm(mg: number, surfaceTension: number, density: number): number {
  const mass = (r: number) => hangingDropMg(r, surfaceTension, density);
  let [low, high] = [0.05, 0.05];
  while (high < 5 && mass(high) < mg) high = Math.min(5, high * 1.1);
  if (!(mg >= mass(low) && mg <= mass(high)))
    throw new Refusal('no dropper tip gives drops of {mg} mg of this liquid', { mg });
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (mass(middle) < mg) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * mg per drop of another liquid from the same dropper, from a calibration in mg per drop of `from`: the tip's effective
 * radius out of one, the drop of the other from it, corrected by {@link OVER_WATER} where one of them is water. Its uncertainty is that of the calibration, of both surface tensions
 * (exponent 1.068) and of the method (source `transfer:<id>`). Viscous liquids (glycerol drops −11 % in one source, +32 % in another) and lips or
 * inserts (spirit off by 1.8 times) are not carried over: `typical` is given back, with its wide ±.
 * Source: Tate with Harkins–Brown; m₂/m₁ = (σ₂/σ₁)^1.068 (ρ₂/ρ₁)^−0.068 for the sensitivities (Yildirim et al. 2005).
 * @throws Refusal for drops no tip gives
 */
export function transferDrop(job: {
  mgPerDrop: Measured;
  from: HangingLiquid;
  to: HangingLiquid;
  outlet: Outlet;
  typical: Measured;
  id: string;
}): TransferredDrop {
  const { mgPerDrop, from, to, outlet, typical } = job;
  if (outlet !== 'square tip')
    return typicalBecause(
      typical,
      'Drops from a lip or an insert do not carry over to another liquid (off by up to 1.8 times)',
    );
  if (from.viscous || to.viscous)
    return typicalBecause(
      typical,
      'Drops of a viscous liquid do not follow from another one (glycerol is off by −11 to +32 %)',
    );
  const { factor, u } = methodOf(from, to);
  const radius = tipRadiusMm(mgPerDrop.value, from.surfaceTension.value, from.density);
  const value = hangingDropMg(radius, to.surfaceTension.value, to.density) * factor;
  const method = measured(0, u * value, {
    id: `transfer:${job.id}`,
    words: 'drop carried over from another liquid',
  });
  const carried = propagate(value, [
    [mgPerDrop, value / mgPerDrop.value],
    [to.surfaceTension, (EXPONENT * value) / to.surfaceTension.value],
    [from.surfaceTension, (-EXPONENT * value) / from.surfaceTension.value],
    [method, 1],
  ]);
  const why = 'Estimated from another liquid in this dropper; weighing 20 drops beats it at once';
  return { basis: 'transfer', mgPerDrop: carried, why };
}

/** The correction between two liquids, and its relative standard uncertainty. */
function methodOf(from: HangingLiquid, to: HangingLiquid): { factor: number; u: number } {
  if (from.water === to.water) return { factor: 1, u: from.water ? 0 : TRANSFER_UNCERTAINTY };
  return { factor: from.water ? OVER_WATER.factor : 1 / OVER_WATER.factor, u: OVER_WATER.u };
}

/** Power of the surface tension in the drop mass. Source: Yildirim, Xu & Basaran, Phys. Fluids 17 (2005) 062107. */
const EXPONENT = 1.068;

function typicalBecause(typical: Measured, why: string): TransferredDrop {
  return { basis: 'typical', mgPerDrop: typical, why: `${why}: a typical drop mass is used; weigh 20 drops` };
}
