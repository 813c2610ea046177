/**
 * Emulsions of oil in a drink: density of the oil phase, how much weighting agent the law leaves, how fast droplets rise.
 * Full density match is nearly always out of reach under the caps; droplet size does the rest.
 */
import {
  gram,
  gramPerMl,
  massFraction,
  type Gram,
  type GramPerMl,
  type MassFraction,
  type Millilitre,
} from '../number/units';
import { Refusal } from '../text/refusal';

/** Standard gravity, m/s². */
const GRAVITY = 9.80665;
const SECONDS_PER_DAY = 86_400;

/**
 * Density of oils and agents dissolved in each other, g/mL: 1/ρ = Σ wᵢ/ρᵢ, volumes additive (our choice). Masses g, densities g/mL.
 * @throws Refusal unless there is a mass, none is negative and densities are above zero
 */
export function oilPhaseDensity(parts: readonly { mass: Gram; density: GramPerMl }[]): GramPerMl {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  if (!(mass > 0 && parts.every((part) => part.mass >= 0 && part.density > 0)))
    throw new Refusal('an oil phase needs masses and densities above zero');
  return gramPerMl(mass / parts.reduce((sum, part) => sum + part.mass / part.density, 0));
}

/**
 * Share of weighting agent (g per g of oil phase) that brings oil to a density: w = (1/ρo − 1/ρt)/(1/ρo − 1/ρa); 0 when the
 * oil is dense enough. Densities g/mL. Source: mass balance. Check: measured for soybean oil and water (Chanamai and
 * McClements 2000) ester gum 55 %, damar 55 %, SAIB 45 %; this gives 53, 59, 40.
 * @throws Refusal when the agent is not denser than the target
 */
export function weightingShare({ oil, agent, target }: Record<'oil' | 'agent' | 'target', GramPerMl>): MassFraction {
  if (oil >= target) return massFraction(0);
  if (!(agent > target))
    throw new Refusal('an agent of {agent} g/mL cannot bring an oil up to {target} g/mL', { agent, target });
  return massFraction((1 / oil - 1 / target) / (1 / oil - 1 / agent));
}

/** Most oil (mg per L of drink) that agents at their caps (mg/L) can bring to the target density, g/mL. Arithmetic. */
export function oilMatched(
  oil: GramPerMl,
  target: GramPerMl,
  agents: readonly { density: GramPerMl; capMgPerL: number }[],
): number {
  return agents.reduce((sum, { density, capMgPerL }) => {
    const w = weightingShare({ oil, agent: density, target });
    return w === 0 ? Infinity : sum + (capMgPerL * (1 - w)) / w;
  }, 0);
}

/**
 * Highest dosage, g of concentrate per L of drink, that keeps an ingredient of it (share g/g) under its cap (mg/L of drink).
 * Arithmetic.
 * Check: an orange emulsion published with 23.88 % ester gum may go in at 0.42 g/L, not at the 1–2 g/L its sheet states.
 * @throws Refusal for a share that is not above 0
 */
export function highestDosage(share: MassFraction, capMgPerL: number): number {
  if (!(share > 0 && share <= 1))
    throw new Refusal('a share is above 0 and up to 100 %, not {share} %', { share: share * 100 });
  return capMgPerL / (share * 1000); // mg per g
}

/** Oil, weighting agent, gum and water of an emulsion concentrate, g, and the density its oil phase reaches, g/mL. */
export interface Emulsion {
  readonly agent: Gram;
  readonly agentMgPerL: number;
  readonly oilPhase: GramPerMl;
  readonly matched: boolean;
  readonly gum: Gram;
  readonly water: Gram;
  readonly mass: Gram;
}

/** What of an emulsion can be stirred and homogenised: most emulsifier per g of it and its water, most oil phase per g of emulsion; both g/g. */
export interface EmulsionLimits {
  readonly inWater: number;
  readonly oil: number;
}

/** Anything that is liquid at all. */
const ANY: EmulsionLimits = { inWater: 1, oil: 1 };

/** What an emulsion is to be: oil and its density, what is dissolved in the water beside it (g), agent, drink, dosage and emulsifier per g of oil phase. */
export interface EmulsionTarget {
  readonly oil: { readonly mass: Gram; readonly density: GramPerMl };
  readonly beside?: Gram;
  readonly agent: { readonly density: GramPerMl; readonly capMgPerL: number } | null;
  readonly drink: { readonly volume: Millilitre; readonly density: GramPerMl };
  readonly gramsPerL: number;
  readonly gumRatio: number;
  readonly limits?: EmulsionLimits;
}

/**
 * Least dosage, g of emulsion per L of drink, that can be made: the emulsifier in enough water to be worked, and no more oil phase than
 * droplets can be made of. Arithmetic of masses; the limits are those of the emulsifier.
 */
export function leastDosage(target: EmulsionTarget): number {
  const { oil, beside = 0, drink, gumRatio, limits = ANY } = target;
  const phase = oil.mass + agentOf(target).added;
  const wet = (gumRatio * phase) / limits.inWater;
  return Math.max(phase + beside + wet, phase / limits.oil) / (drink.volume / 1000); // mL per L
}

/** Up to three figures, so that what is named as the least also works. */
function roundedUp(value: number): number {
  const digit = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.ceil(value / digit - 1e-9) * digit;
}

/**
 * An emulsion concentrate for a volume of drink (mL) at D g/L: agent as the match asks but never above its cap in the drink,
 * gum per g of oil phase (gum arabic 1–2, common practice), water to the mass. Conserves mass: oil + agent + gum + water + what is beside
 * them = D V.
 * @throws Refusal when oil, agent and gum are more than the dosage holds, or gum and oil more than can be worked in its water
 */
export function emulsionFor(target: EmulsionTarget): Emulsion {
  const { oil, beside = 0, agent, drink, gramsPerL, gumRatio } = target;
  const litres = drink.volume / 1000; // mL per L
  const { added, isWhole } = agentOf(target);
  const parts = agent ? [oil, { mass: gram(added), density: agent.density }] : [oil];
  const gum = gumRatio * (oil.mass + added);
  const mass = gramsPerL * litres;
  const least = leastDosage(target);
  if (gramsPerL < least * (1 - 1e-9))
    throw new Refusal(
      'oil, agent, and gum in its own water need at least {least} g/L of concentrate, not {gramsPerL} g/L',
      {
        least: { value: roundedUp(least), figures: 3 },
        gramsPerL,
      },
    );
  return {
    agent: gram(added),
    agentMgPerL: (added / litres) * 1000, // mg per g
    oilPhase: oilPhaseDensity(parts),
    matched: oil.density >= drink.density || (agent !== null && isWhole),
    gum: gram(gum),
    water: gram(Math.max(0, mass - oil.mass - added - gum - beside)),
    mass: gram(mass),
  };
}

/** g of weighting agent, and whether it is as much as the match asks. */
function agentOf({ oil, agent, drink }: EmulsionTarget): { added: number; isWhole: boolean } {
  if (!agent) return { added: 0, isWhole: false };
  const share = weightingShare({ oil: oil.density, agent: agent.density, target: drink.density });
  const asked = (oil.mass * share) / (1 - share);
  const added = Math.min(asked, (agent.capMgPerL * drink.volume) / 1e6); // mg/L and mL to g
  return { added, isWhole: added === asked };
}

/**
 * How fast a droplet rises (sinks when negative), mm per day. v = 2 r² Δρ g/(9 η). DIAMETER in µm, densities g/mL, viscosity
 * of the drink in mPa s. Source: Stokes; McClements, Food Emulsions, eq. 7.9. Check: radius 1 µm, 0.910 in 1.000 g/mL,
 * 1 mPa s: 17 mm/day. Below 1 mm/day is called stable (Dickinson 1992), yet that is 180 mm in half a year.
 * @throws Refusal for a size or viscosity that is not above 0
 */
export function risePerDay(drop: {
  diameterUm: number;
  oil: GramPerMl;
  drink: GramPerMl;
  viscosityMPaS: number;
}): number {
  if (!(drop.diameterUm > 0 && drop.viscosityMPaS > 0)) throw new Refusal('size and viscosity are above zero');
  const radius = drop.diameterUm / 2e6; // m
  const difference = (drop.drink - drop.oil) * 1000; // kg/m³
  const metrePerSecond = (2 * radius ** 2 * difference * GRAVITY) / (9 * (drop.viscosityMPaS / 1000)); // Pa s
  return metrePerSecond * SECONDS_PER_DAY * 1000; // mm per m
}

/** How fast droplets rise, mm a day, as far as densities are known: below 0 they sink. */
export interface Rise {
  readonly low: number;
  readonly high: number;
}

/** The same with each density give or take half its range, g/mL: the two ends. Source: as {@link risePerDay}. @throws Refusal as it does */
export function riseWithin(
  drop: Omit<Parameters<typeof risePerDay>[0], 'oil' | 'drink'> &
    Record<'oil' | 'drink', { value: number; half: number }>,
): Rise {
  const { oil, drink, ...size } = drop;
  const at = (phase: number, around: number) =>
    risePerDay({ ...size, oil: gramPerMl(phase), drink: gramPerMl(around) });
  return {
    low: at(oil.value + oil.half, drink.value - drink.half),
    high: at(oil.value - oil.half, drink.value + drink.half),
  };
}

/**
 * Days until the droplets of the top 10 mm have gathered in the neck, where a ring begins to show; Infinity when they do not
 * move. The 10 mm are our choice (no source). Take the size that 90 % of the oil stays below, not the mean: large droplets
 * make the ring.
 */
export function daysToRing(mmPerDay: number): number {
  return mmPerDay === 0 ? Infinity : RING / Math.abs(mmPerDay);
}
const RING = 10; // mm

/**
 * Required HLB of an oil phase, dimensionless: mean by mass (g), common practice. Check: five published phases 10.33, 10.04,
 * 9.71, 9.33, 9.72. @throws Refusal without a mass
 */
export function requiredHlb(parts: readonly { mass: Gram; hlb: number }[]): number {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  if (!(mass > 0)) throw new Refusal('an oil phase needs a mass above zero');
  return parts.reduce((sum, part) => sum + part.mass * part.hlb, 0) / mass;
}

/**
 * Share of emulsifier A in a blend of A and B that has the required HLB (arithmetic, mean by mass).
 * @throws Refusal when it lies outside both
 */
export function hlbShare(required: number, a: number, b: number): MassFraction {
  const share = (required - b) / (a - b);
  if (!(share >= 0 && share <= 1)) throw new Refusal('HLB {required} is not between {a} and {b}', { required, a, b });
  return massFraction(share);
}
