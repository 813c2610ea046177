import { measuredSolubility, type CosolventShare, type WaterSolubility } from '../core/liquid/cosolvency';
import { ethanolDensity, ethanolMassFraction } from '../core/liquid/ethanol';
import { SUGAR, type Medium, type Solute, type Stage } from '../core/liquid/stage';
import { massFraction, REFERENCE_TEMPERATURE, volumeFraction } from '../core/number/units';
import { find } from '../records/shelf';
import { oilMakeUp } from '../tables/oilMakeUp';
import { logKow } from '../tables/partition';
import { cosolvents, mixWithOils, preservativeAcids, solventsInWater, thumbRule } from '../tables/solubility';
import { formatPlain } from '../ui/format';
import { ethanolOf } from './thing/carrier';
import { inWater, isOil } from './inWater';

const SUCROSE = 342.3; // g/mol
const LIMONENE = logKow['5989-27-5']!; // the main terpene of citrus oils stands for terpenes
const PURE_ETHANOL = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);

/** Density of what water is mixed with, g/mL, rounded: only shares of the volume come of it. */
const COSOLVENTS: Readonly<Record<string, { line: Omit<CosolventShare, 'fraction'>; density: number }>> = {
  ethanol: { line: cosolvents.ethanol, density: PURE_ETHANOL },
  'propylene-glycol': { line: cosolvents['propylene glycol'], density: 1.036 },
  glycerol: { line: cosolvents.glycerol, density: 1.261 },
};

/** What a material asks of a liquid at so many mg/L. An oil asks for its main parts and for terpenes; what is unknown says so. */
export function solutesOf(id: string, name: string, mgPerL: number): Solute[] {
  const material = find('material', id);
  const cas = material?.cas ?? '';
  const makeUp = oilMakeUp.find(({ oil }) => oil.includes(cas));
  if (makeUp) return partsOfOil(makeUp.parts, name, mgPerL);
  const water = inWater(cas, material);
  const isTerpenes = water?.basis === 'rule of thumb';
  const kow = logKow[cas] ?? (isTerpenes || (material && isOil(material)) ? LIMONENE : null);
  return [{ name, mgPerL, water, logKow: kow, solid: material?.form === 'solid' }];
}

/** In an oil its parts are liquid. The rest of it is between oxygenated terpenes, which water holds more of, and hydrocarbons. */
function partsOfOil(parts: (typeof oilMakeUp)[number]['parts'], name: string, mgPerL: number): Solute[] {
  const middle = (low: number, high: number) => (low + high) / 2;
  const shares = parts.map(([, low, high]) => middle(low, high));
  const rest = Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0));
  const { low } = thumbRule['terpene hydrocarbons'];
  const { high } = thumbRule['oxygenated monoterpenes'];
  const terpenes: WaterSolubility = { mgPerL: Math.sqrt(low * high), low, high, basis: 'rule of thumb' };
  return [
    ...parts.map(([cas], i) => ({
      name,
      mgPerL: mgPerL * shares[i]!,
      water: inWater(cas, undefined),
      logKow: logKow[cas] ?? null,
      solid: false,
    })),
    { name, mgPerL: mgPerL * rest, water: terpenes, logKow: LIMONENE, solid: false },
  ];
}

/** A solvent that does not mix with water, as something that is asked of it; nothing for those that mix. */
export function solventSolutes(id: string, name: string, mgPerL: number): Solute[] {
  const row = solventsInWater[id];
  if (!row) return [];
  const water = {
    mgPerL: Math.sqrt(row.low * row.high),
    low: row.low,
    high: row.high,
    basis: 'rule of thumb' as const,
  };
  return [{ name, mgPerL, water, logKow: row.logKow, solid: false }];
}

/** The free acid of a preservative: in an acid liquid (pH 3 and below) nearly all of it is free. */
export function freeAcid(id: string, name: string, mgPerL: number): Solute[] {
  const row = preservativeAcids[id];
  if (!row) return [];
  const water = { ...measuredSolubility(row.mgPerL, 0), low: row.low, high: row.high };
  return [{ name, mgPerL, water, logKow: row.logKow, solid: true, sugar: SUGAR }];
}

/** A liquid as the medium of what it holds: `water`, `ethanol`, `sugar` and solvents in g, all else only counts towards its mass and volume. */
export interface Liquid {
  readonly ml: number;
  readonly grams: number;
  readonly waterG: number;
  readonly ethanolG: number;
  readonly sugarG: number;
  readonly solvents: readonly { readonly id: string; readonly grams: number; readonly ml: number }[];
}

/** The medium of a liquid. Shares are of the volumes of its solvents before they are mixed. */
export function mediumOf({ ml, grams, waterG, ethanolG, sugarG, solvents }: Liquid): Medium {
  const volumes = [
    { id: 'water', ml: waterG },
    { id: 'ethanol', ml: ethanolG / PURE_ETHANOL },
    ...solvents.map(({ id, ml: own }) => ({ id, ml: own })),
  ];
  const whole = volumes.reduce((sum, one) => sum + one.ml, 0);
  const share = (fits: (id: string) => boolean) =>
    whole > 0 ? volumes.reduce((sum, one) => sum + (fits(one.id) ? one.ml : 0), 0) / whole : 0;
  const lines = Object.entries(COSOLVENTS).map(([id, { line }]) => ({ ...line, fraction: share((one) => one === id) }));
  const isKnown = (id: string) => id === 'water' || id in COSOLVENTS || mixWithOils.includes(id);
  return {
    cosolvents: lines.filter(({ fraction }) => fraction > 0),
    sucrose: sugarG / SUCROSE / (ml / 1000), // mL per L
    ethanol: ethanolG / grams,
    oily: share((id) => mixWithOils.includes(id)),
    unknown: share((id) => !isKnown(id)),
  };
}

/** A drink or syrup of that % ABV and °Brix (g/g) as a medium; the little that is dosed into it does not change it. */
export function mediumOfDrink({
  abv,
  brix,
  densityGPerMl,
}: {
  abv: number;
  brix: number;
  densityGPerMl: number;
}): Medium {
  const [ml, grams] = [1000, 1000 * densityGPerMl];
  const ethanolG = (abv / 100) * ml * PURE_ETHANOL;
  return mediumOf({ ml, grams, ethanolG, sugarG: brix * grams, waterG: grams * (1 - brix) - ethanolG, solvents: [] });
}

/** g of a solvent as what it brings: water, ethanol, or itself. `gPerMl` its density; one whose alcohol is not known is unknown. */
export function solventIn(
  id: string,
  grams: number,
  gPerMl: number,
  abv?: number,
): Omit<Liquid, 'ml' | 'grams' | 'sugarG'> {
  if (id === 'water') return { waterG: grams, ethanolG: 0, solvents: [] };
  const ethanol = abv === undefined ? ethanolOf({ id }) : ethanolMassFraction(volumeFraction(abv));
  if (ethanol) return { waterG: grams * (1 - ethanol), ethanolG: grams * ethanol, solvents: [] };
  return { waterG: 0, ethanolG: 0, solvents: [{ id, grams, ml: grams / gPerMl }] };
}

const LEAST_SHOWN = 0.1; // mg/L

/** 'limonene: 25 mg/L needed; it holds 5 to 30: try it', a sentence for each thing that is asked. */
export function stageLines({ lines }: Stage): string[] {
  return lines.map(({ name, mgPerL, holds, verdict }) => {
    const needed = `${name}: ‹${amountText(mgPerL)}› needed`;
    if (!holds) return `${needed}; what the liquid holds of it is not known: try it.`;
    if (holds.low === Infinity) return `${needed}; it mixes: ‹${verdict}›.`;
    return `${needed}, the liquid holds ${amountText(holds.low)} to ${amountText(holds.high)}: ‹${verdict}›.`;
  });
}

/** mg/L, or g/L where there is more. */
export function amountText(mgPerL: number): string {
  if (mgPerL < LEAST_SHOWN) return `under ${formatPlain(LEAST_SHOWN)} mg/L`;
  return mgPerL < 1000 ? `${formatPlain(mgPerL, 2)} mg/L` : `${formatPlain(mgPerL / 1000, 2)} g/L`;
}

/** Names of what asks the most of the liquid, the first of them; '' where nothing does. */
export function mostAsked({ lines }: Pick<Stage, 'lines'>): string {
  const full = ({ mgPerL, holds }: Stage['lines'][number]) => (holds ? mgPerL / holds.middle : 0);
  return [...lines].sort((one, two) => full(two) - full(one))[0]?.name ?? '';
}
