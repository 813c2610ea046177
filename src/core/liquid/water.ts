import { gramPerMl, type Celsius, type GramPerMl } from '../number/units';
import { Refusal } from '../text/refusal';

/**
 * Density of pure, air-free water at 101 325 Pa, g/mL.
 *
 * ρ(t) = a5 · [1 − (t + a1)² · (t + a2) / (a3 · (t + a4))]
 *
 * Source: Tanaka et al., Metrologia 38 (2001) 301–309, doi:10.1088/0026-1394/38/4/3.
 * Valid:  0–40 °C.
 * Check:  0.9982067 g/mL at 20 °C, 0.9970470 g/mL at 25 °C.
 *
 * @throws Refusal outside 0–40 °C
 */
export function waterDensity(t: Celsius): GramPerMl {
  if (!(t >= 0 && t <= 40)) throw new Refusal('water density is known for 0–40 °C, not for {t} °C', { t });
  const a1 = -3.983035; // °C
  const a2 = 301.797; // °C
  const a3 = 522528.9; // °C²
  const a4 = 69.34881; // °C
  const a5 = 999.97495 / 1000; // g/mL; printed as 999.974950 kg/m³
  return gramPerMl(a5 * (1 - ((t + a1) ** 2 * (t + a2)) / (a3 * (t + a4))));
}
