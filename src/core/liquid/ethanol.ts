import { polynomial } from '../number/polynomial';
import {
  celsius,
  gram,
  gramPerMl,
  massFraction,
  millilitre,
  REFERENCE_TEMPERATURE,
  volumeFraction,
  type Celsius,
  type Gram,
  type GramPerMl,
  type MassFraction,
  type Millilitre,
  type VolumeFraction,
} from '../number/units';
import { Refusal } from '../text/refusal';

/*
 * Ethanol and water, nothing else: no sugar, no aroma, no denaturant.
 *
 * ρ(p, t) = Σ A_k p^(k−1) + Σ B_k (t − 20)^k + Σ_i Σ_k C_ik p^k (t − 20)^i, kg/m³, p in g/g, t in °C.
 *
 * Source: OIML R 22 (1975), general formula and coefficients, the same in Council Directive 76/766/EEC. The coefficients
 * are those of the law texts; some public copies carry other C terms. R 22 has its own water (p = 0), 0.0055 kg/m³
 * below Tanaka's at 20 °C: inside one ratio only R 22's is used.
 */
const A = [
  998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388, 306287.4042, -613838.1234, 747017.2998,
  -547846.1354, 223446.0334, -39032.85426,
]; // kg/m³
const B = [-0.20618513, -0.0052682542, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11]; // kg/m³ per K^k
const C = [
  [
    0.1693443461530087, -10.46914743455169, 71.96353469546523, -704.7478054272792, 3924.090430035045,
    -12101.64659068747, 22486.46550400788, -26055.62982188164, 18523.73922069467, -7420.201433430137, 1285.617841998974,
  ],
  [
    -0.0119301300505701, 0.2517399633803461, -2.170575700536993, 13.53034988843029, -50.29988758547014,
    109.635566657757, -142.2753946421155, 108.043594285623, -44.14153236817392, 7.442971530188783,
  ],
  [
    -0.0006802995733503803, 0.01876837790289664, -0.2002561813734156, 1.02299296671922, -2.895696483903638,
    4.810060584300675, -4.672147440794683, 2.458043105903461, -0.5411227621436812,
  ],
  [4.075376675622027e-6, -8.76305857347111e-6, 6.515031360099368e-6, -1.51578483698721e-6],
  [-2.788074354782409e-8, 1.345612883493354e-8],
]; // kg/m³ per K^i

/** A weighed mixture of ethanol and water. */
export interface Spirit {
  readonly mass: Gram;
  readonly strength: MassFraction;
}

/**
 * Density of ethanol–water, g/mL, from mass fraction of ethanol and temperature.
 * Valid: 0–1 g/g, −20 to 40 °C, and liquid (R 22 gives no freezing curve; weak spirit below 0 °C may be ice).
 * Check: 0.95378 at 0.30 g/g, 20 °C; 0.90571 at 0.50, 30 °C; 0.85022 at 0.70, 40 °C (R 22 table I).
 * @throws Refusal outside
 */
export function ethanolDensity(p: MassFraction, t: Celsius): GramPerMl {
  if (!(p >= 0 && p <= 1))
    throw new Refusal('an ethanol strength lies between 0 and 100 %, not at {percent} %', { percent: p * 100 });
  if (!(t >= -20 && t <= 40))
    throw new Refusal('ethanol–water density is known for −20 to 40 °C, not for {t} °C', { t });
  const dt = t - 20;
  const warm = C.map((row) => p * polynomial(row, p));
  return gramPerMl((polynomial(A, p) + dt * (polynomial(B, dt) + polynomial(warm, dt))) / 1000);
}

/**
 * Mass fraction of ethanol, g/g, from the density (g/mL) of ethanol–water at t: the inverse of {@link ethanolDensity}.
 * Valid: 0–40 °C (colder, weak spirit may be ice), density between ethanol's and water's there.
 * Source: OIML R 22, by bisection.
 * @throws Refusal outside
 */
export function ethanolFromDensity(density: GramPerMl, t: Celsius): MassFraction {
  if (!(t >= 0 && t <= 40)) throw new Refusal('strength from density is known for 0–40 °C, not for {t} °C', { t });
  const [light, heavy] = [ethanolDensity(massFraction(1), t), ethanolDensity(massFraction(0), t)];
  if (!(density >= light - ROUNDING && density <= heavy + ROUNDING))
    throw new Refusal('ethanol–water at {t} °C weighs {light} to {heavy} g/mL, not {density} g/mL', {
      t,
      light: { value: light, decimals: 4 },
      heavy: { value: heavy, decimals: 4 },
      density,
    });
  return bisect((p) => ethanolDensity(p, t) <= density);
}

/**
 * % v/v as a fraction (mL ethanol per mL mixture, both at 20 °C) from the mass fraction (g/g).
 * q = p ρ(p, 20)/ρ(1, 20). Valid: 0–1. Source: OIML R 22. Check: 0.332996 g/g is 0.40 mL/mL.
 * @throws Refusal outside
 */
export function ethanolVolumeFraction(p: MassFraction): VolumeFraction {
  return volumeFraction(Math.min(1, (p * ethanolDensity(p, REFERENCE_TEMPERATURE)) / ABSOLUTE)); // 1 + 2e-14 just below p = 1
}

/**
 * Mass fraction of ethanol (g/g) from % v/v at 20 °C as a fraction (mL/mL): the inverse of {@link ethanolVolumeFraction}.
 * Valid: 0–1. Source: OIML R 22, by bisection. Check: 0.96 mL/mL is 0.938384 g/g.
 * @throws Refusal outside
 */
export function ethanolMassFraction(q: VolumeFraction): MassFraction {
  if (!(q >= 0 && q <= 1))
    throw new Refusal('an ethanol strength lies between 0 and 100 % vol, not at {percent} %', { percent: q * 100 });
  return bisect((p) => ethanolVolumeFraction(p) >= q);
}

/**
 * Two mixtures of ethanol and water poured together: mass (g) and strength (g/g) of the whole, its volume at t (mL), and
 * how much smaller that is than the two volumes were (mL; contraction). Water is a Spirit of strength 0.
 * Valid: as {@link ethanolDensity}. Source: mass balance; densities from OIML R 22 throughout, its own water included.
 * Check: 50 mL of USP alcohol and 50 mL of water give 97 mL (USP, alcohol dilutum).
 * @throws Refusal outside, or when nothing is mixed
 */
export function mixSpirits(
  one: Spirit,
  other: Spirit,
  t: Celsius,
): Spirit & { volume: Millilitre; contraction: Millilitre } {
  const mass = one.mass + other.mass;
  if (!(one.mass >= 0 && other.mass >= 0 && mass > 0)) throw new Refusal('there must be something to mix');
  const strength = massFraction((one.mass * one.strength + other.mass * other.strength) / mass);
  const volume = mass / ethanolDensity(strength, t);
  const before = one.mass / ethanolDensity(one.strength, t) + other.mass / ethanolDensity(other.strength, t);
  return { mass: gram(mass), strength, volume: millilitre(volume), contraction: millilitre(before - volume) };
}

/**
 * Water in grams that brings `spirit` down to a strength (g/g). Source: mass balance.
 * Check: 1 L of 96 % vol to 40 % vol takes 1467.9 g.
 * @throws Refusal when the wanted strength is zero or above the spirit's
 */
export function waterToReduce(spirit: Spirit, to: MassFraction): Gram {
  if (!(to > 0 && to <= spirit.strength))
    throw new Refusal('water brings {strength} % w/w down to less than that and more than nothing, not to {to} %', {
      strength: { value: spirit.strength * 100, decimals: 1 },
      to: { value: to * 100, decimals: 1 },
    });
  return gram(spirit.mass * (spirit.strength / to - 1));
}

const ROUNDING = 1e-12; // g/mL, what the polynomial loses to rounding at the ends

const ABSOLUTE = ethanolDensity(massFraction(1), celsius(20)); // g/mL, 0.7892391

/** The mass fraction from which on `reached` is true, to the last bit. */
function bisect(reached: (p: MassFraction) => boolean): MassFraction {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (reached(massFraction(middle))) high = middle;
    else low = middle;
  }
  return massFraction(high);
}
