/**
 * How long a dipped strip needs until its solvent has gone and the material can be smelled.
 *
 * No theory gives the seconds: paper, dip and draught decide. So the time is either the person's own, scaled to another
 * solvent, or the trade's "a minute or two"; and it is always worded "about". The film model only tells the solvents
 * that leave within a session from those that never do.
 */
import { REFERENCE_TEMPERATURE, type Celsius } from '../number/units';
import { Refusal } from '../text/refusal';

/** Antoine equation log10(p/Pa) = a − b/(T + c), T in kelvin, with the temperatures (°C) it was fitted between. */
export interface Antoine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly from: Celsius;
  readonly to: Celsius;
}

/** What the film model needs of a solvent at 20 °C. */
export interface Film {
  readonly vapourPressure: number; // Pa
  readonly molarMass: number; // g/mol
  readonly density: number; // g/mL
  readonly diffusivity: number; // m²/s, vapour in air
}

/** A solvent as the clock sees it. `evaporationRate` is relative to n-butyl acetate = 1 (ASTM D3539), null if unknown. */
export interface EvaporatingSolvent {
  readonly words: string;
  readonly evaporationRate: number | null;
  readonly film: Film | null;
  readonly antoine: Antoine | null;
}

/** A dry-off the person timed with their own paper and dip. */
export interface OwnTime {
  readonly solvent: EvaporatingSolvent;
  readonly seconds: number;
  readonly temperature?: Celsius;
}

/** Time to dry in seconds, or null when it does not dry in a session or is not known; `words` is ready to show. */
export interface DryOff {
  readonly seconds: number | null;
  readonly basis: 'common practice' | 'own time' | 'stays wet' | 'not known';
  readonly words: string;
}

/** The trade's "a minute or two" for ethanol, taken at its longer end; evaporation rate of 95 % ethanol. */
const HABIT = { seconds: 120, evaporationRate: 1.4 };
/** Our choice: a strip stays wet when even a thin film (0.05 mm) needs more than 4 h at 20 °C by the lower bound. */
const SESSION_SECONDS = 4 * 3600;
const THIN_FILM_MM = 0.05;

const KELVIN = 273.15; // 0 °C in K, exact
const GAS_CONSTANT = 8.314462618; // J/(mol·K), CODATA 2018
/** Indoor draught over a 10 mm dip: our assumptions, as are the air's 1.5e-5 m²/s (kinematic viscosity near 20 °C). */
const AIR = { speed: 0.15 /* m/s */, length: 0.01 /* m */, viscosity: 1.5e-5 /* m²/s */ };

/**
 * Saturated vapour pressure, Pa.
 * Source: Antoine equation with the coefficients and limits of the row.
 * @throws Refusal outside the temperatures of the row
 */
export function vapourPressure({ a, b, c, from, to }: Antoine, temperature: Celsius): number {
  if (!(temperature >= from && temperature <= to))
    throw new Refusal('the drying of strips is known for {from}–{to} °C, not for {temperature} °C', {
      from,
      to,
      temperature,
    });
  return 10 ** (a - b / (temperature + KELVIN + c));
}

/**
 * Least time in seconds for a wet film (mm of liquid on each face, above 0) to evaporate at 20 °C.
 *
 * J = k·M·p/(R·T), k = 0.664·Re^½·Sc^⅓·D/L: laminar air over a flat plate (common practice, no source read). It leaves out the
 * cooling of the strip (1.5 to 2.5 times longer) and the last solvent inside the paper, so it is a lower bound, good for orders
 * of magnitude.
 * @throws Refusal for a film that is not thicker than nothing
 */
export function leastDryOff(film: Film, filmMm: number): number {
  if (!(filmMm > 0)) throw new Refusal('a wet film is thicker than 0 mm, not {filmMm} mm', { filmMm });
  const liquid = filmMm * film.density * 1000; // g/m² (1 mm of 1 g/mL is 1000 g/m²)
  return liquid / mostEvaporated(film);
}

/**
 * Most that evaporates from an open surface at 20 °C in a room's draught, g/(m² s): the film model of {@link leastDryOff}, good for orders of
 * magnitude. Our own, by common practice.
 */
export function mostEvaporated(film: Film): number {
  const reynolds = (AIR.speed * AIR.length) / AIR.viscosity;
  const schmidt = AIR.viscosity / film.diffusivity;
  const transfer = (0.664 * Math.sqrt(reynolds) * Math.cbrt(schmidt) * film.diffusivity) / AIR.length; // m/s
  const saturated = (film.molarMass * film.vapourPressure) / (GAS_CONSTANT * (REFERENCE_TEMPERATURE + KELVIN)); // g/m³
  return transfer * saturated;
}

/**
 * The dry-off clock of one strip. `temperature` in °C; `own` scales the person's own time: t2 = t1·E1/E2, and by the
 * vapour pressures where both temperatures and both curves are known (otherwise the temperature makes no difference).
 *
 * Source: evaporation rates relative to n-butyl acetate; "a minute or two" for ethanol is common practice.
 * @throws Refusal outside the temperatures of the vapour pressure curve, and for an own time of no length
 */
export function dryOff(
  solvent: EvaporatingSolvent,
  { temperature, own }: { temperature?: Celsius; own?: OwnTime } = {},
): DryOff {
  if (own && !(own.seconds > 0))
    throw new Refusal('your own drying time is above 0 s, not {seconds} s', { seconds: own.seconds });
  if (solvent.film && leastDryOff(solvent.film, THIN_FILM_MM) > SESSION_SECONDS)
    return { seconds: null, basis: 'stays wet', words: 'does not dry within a session: smell it wet' };
  if (solvent.evaporationRate === null)
    return { seconds: null, basis: 'not known', words: `no drying figure is known for ${solvent.words}` };
  const rate = own ? own.solvent.evaporationRate : HABIT.evaporationRate;
  if (rate === null)
    return { seconds: null, basis: 'not known', words: `no drying figure is known for ${own!.solvent.words}` };
  const before = own ? warmth(own.solvent, own.temperature) : 1;
  const slower = (rate / solvent.evaporationRate) * (before / warmth(solvent, temperature));
  const seconds = (own?.seconds ?? HABIT.seconds) * slower;
  return { seconds, basis: own ? 'own time' : 'common practice', words: aboutTime(seconds) };
}

/**
 * How wet a strip still is, 1 just dipped to 0 dry, `elapsed` seconds (0 or more) after the dip: the film thins evenly
 * (constant-rate drying, our choice). A strip that stays wet, or whose time is unknown, stays at 1.
 */
export function wetness({ seconds }: DryOff, elapsed: number): number {
  return seconds === null ? 1 : Math.min(1, Math.max(0, 1 - elapsed / seconds));
}

/** Vapour pressure relative to 20 °C; 1 where no temperature is given or no curve is known. */
function warmth({ antoine }: EvaporatingSolvent, temperature: Celsius | undefined): number {
  if (antoine === null || temperature === undefined) return 1;
  return vapourPressure(antoine, temperature) / vapourPressure(antoine, REFERENCE_TEMPERATURE);
}

/** Seconds as a person would say them: to 5 s below a minute and a half, then half minutes, minutes, hours. */
function aboutTime(seconds: number): string {
  if (seconds < 90) return `about ${Math.max(5, 5 * Math.round(seconds / 5))} s`;
  if (seconds < 285) return `about ${Math.round(seconds / 30) / 2} min`;
  if (seconds < 5400) return `about ${Math.round(seconds / 60)} min`;
  return `about ${Math.round(seconds / 1800) / 2} h`;
}
