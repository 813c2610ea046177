import { polynomial } from '../number/polynomial';
import { gramPerMl, massFraction, type Celsius, type GramPerMl, type MassFraction } from '../number/units';
import { Refusal } from '../text/refusal';

/*
 * Sucrose in water, nothing else: invert sugar, glucose syrup, acid and ethanol need other data.
 *
 * ρ(w, t) = ρ_w(t) + Σ_i τ^i Σ_j c_ij w^(j+1), τ = (t − 20)/100, w in g/g, kg/m³; ρ_w after Bettin & Spieweck 1990.
 *
 * Source: read in two independent public programs; by their authors' account ICUMSA SPS-4 (Emmerich, Zuckerindustrie 119
 * (1994) 120), which was not read itself. Checked against the CRC table (0–84 %, 20 °C) and NBS Circular 457
 * (0–80 %, 10–30 °C): within 0.1 kg/m³ up to 32 %, 0.5 up to 70 %, 0.8 up to 84 %.
 */
const SUGAR = [
  [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289],
  [-46.272, -7.172, 1.1597, 5.1126, 17.5254],
  [59.7712, 7.2491, 12.363, -35.4791],
  [-47.2207, -21.6977, 27.6301],
  [18.3184, 12.3081],
]; // kg/m³
const WATER = [999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12]; // kg/m³ per K^k
const WATER_BELOW = 16.887236e-3; // 1/K

/** Strongest solution the density was checked for, g/g. */
const STRONGEST = 0.84;

/**
 * Density of sucrose in water, g/mL, from g sucrose per g solution (°Brix/100) and temperature.
 * Valid: 0–84 °Brix, 10–30 °C, where it was checked. Check: 1.038115 at 10 °Brix, 20 °C; 1.316555 at 65 °Brix.
 * @throws Refusal outside
 */
export function sucroseDensity(w: MassFraction, t: Celsius): GramPerMl {
  if (!(w >= 0 && w <= STRONGEST))
    throw new Refusal('sucrose density is known for 0–84 °Brix, not for {brix} °Brix', { brix: w * 100 });
  if (!(t >= 10 && t <= 30)) throw new Refusal('sucrose density is known for 10–30 °C, not for {t} °C', { t });
  const water = polynomial(WATER, t) / (1 + WATER_BELOW * t);
  const sugar = polynomial(
    SUGAR.map((row) => w * polynomial(row, w)),
    (t - 20) / 100,
  );
  return gramPerMl((water + sugar) / 1000);
}

/**
 * g sucrose per g solution from its density (g/mL) at t: the inverse of {@link sucroseDensity}, by bisection.
 * Valid: densities of 0–84 °Brix at 10–30 °C. Source: as {@link sucroseDensity}.
 * @throws Refusal outside
 */
export function sucroseFromDensity(density: GramPerMl, t: Celsius): MassFraction {
  const [light, heavy] = [sucroseDensity(massFraction(0), t), sucroseDensity(massFraction(STRONGEST), t)];
  if (!(density >= light && density <= heavy))
    throw new Refusal('sucrose in water at {t} °C weighs {light} to {heavy} g/mL, not {density} g/mL', {
      t,
      light: { value: light, decimals: 4 },
      heavy: { value: heavy, decimals: 4 },
      density,
    });
  let low = 0;
  let high = STRONGEST;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (sucroseDensity(massFraction(middle), t) < density) low = middle;
    else high = middle;
  }
  return massFraction(high);
}
