import { computed } from '@preact/signals';
import { densityAt } from '../core/liquid/expansion';
import { ethanolDensity, ethanolMassFraction } from '../core/liquid/ethanol';
import { exact, measured, type Measured } from '../core/number/measured';
import { waterDensity } from '../core/liquid/water';
import { celsius, massFraction, REFERENCE_TEMPERATURE, volumeFraction } from '../core/number/units';
import type { Celsius, MassFraction } from '../core/number/units';
import type { Bottle, Material } from '../records/kind/material';
import { find, list, shelf } from '../records/shelf';
import type { Solvent, SolventCopy } from '../records/kind/solvent';
import { leftOf } from '../records/stock';
import type { Supply } from '../records/kind/supply';
import type { Vial } from '../records/kind/vial';
import { solvents, type LiquidClass } from '../tables/solvents';
import { alcoholOfVial } from './thing/carrier';
import type { DropLiquid } from './dropMass';
import type { Option } from '../ui/controls/field';
import { formatDay } from '../ui/format';
import { leftPhrase } from '../ui/left';
import { isSmellOnly, labelSays } from './drinkable/grade';
import { mayBeFood } from './drinkable/gradeCause';
import { tagOf } from './thing/labelled';
import { strengthText } from './thing/strengthText';
import { whyNotByItself } from './takenByItself';

/** A solvent that can be chosen: one of the table, or one of the person's own. */
export interface SolventOnHand extends SolventCopy {
  readonly liquid: LiquidClass;
  /** Density at the temperature of the room (settings; 20 °C unless changed), g/mL, with its uncertainty. */
  readonly now: Measured;
  /** False where no food grade of it exists: then it is smell only, whatever the bottle says. */
  readonly foodPossible: boolean;
}

/** The usual solvents of the bench, then the person's own. A usual one counts as food grade only when its bottle says so. */
export const solventsOnHand = (): readonly SolventOnHand[] => solventsNow.value;

/** Worked out when the Shelf or the room changes, not with every drop. */
const solventsNow = computed(() => {
  const usual = solvents.map((row) => ({
    id: row.id,
    name: row.name,
    liquid: row.liquid,
    food: false,
    foodPossible: mayBeFood(row.id, row.name),
    density: { gPerMl: row.density.value, atC: 20, source: row.density.source },
    now: densityNow(row),
    ...(row.flashPointC ? { flashC: row.flashPointC.value } : {}),
    dryOff: ({ minutes: 'minutes', slow: 'hours', stays: 'stays wet' } as const)[row.dryOff],
  }));
  return [...usual, ...list('solvent').map(ownOnHand)];
});

/** A solvent of the person's own, as it can be chosen. */
export function ownOnHand(row: Solvent): SolventOnHand {
  const { abv, density } = row;
  return {
    ...row,
    liquid: classOfAlcohol(abv),
    foodPossible: !isSmellOnly(row),
    now: inThisRoom(row.id, density.gPerMl, abv),
  };
}

/** Mean cubic expansion of any liquid of the bench, 1/K, with half its range: from water to ethanol (table of solvents). */
const ANY_EXPANSION = { value: 0.00065, halfWidth: 0.00045 };

/** Density in this room, g/mL, from that at 20 °C: as that of ethanol and water (R 22) where its alcohol is known, else within what liquids do. */
function inThisRoom(id: string, at20: number, abv: number | undefined): Measured {
  if (roomC() === 20) return exact(at20);
  if (abv !== undefined && abv > 0) {
    const strength = ethanolMassFraction(volumeFraction(abv));
    return exact((at20 * ethanolDensity(strength, celsius(roomC()))) / ethanolDensity(strength, REFERENCE_TEMPERATURE));
  }
  const { value, halfWidth } = ANY_EXPANSION;
  const source = { id: `expansion:${id}`, words: 'expansion with warmth, not known' };
  return densityAt(exact(at20), measured(value, halfWidth / Math.sqrt(3), source), celsius(roomC()));
}

const [SPIRIT, DILUTE] = [0.6, 0.2]; // mL/mL: above the first a drop is that of ethanol, above the second that of dilute spirit

/** Which typical drop stands in for a liquid with that much alcohol, mL/mL; nothing is known of one without alcohol. */
function classOfAlcohol(abv: number | null | undefined): LiquidClass {
  if (abv == null || abv < DILUTE) return 'unknown';
  return abv > SPIRIT ? 'ethanol' : 'dilute spirit';
}

/** Temperature of the room, °C: of the settings, else 20; within what the liquids are known for, also where an old file holds another. */
export function roomC(): number {
  return Math.min(40, Math.max(5, shelf.settings.value.roomC ?? 20));
}

/** Density of a solvent of the table in this room, g/mL: water by its own law, ethanol and water by R 22, others by their expansion. */
function densityNow({ id, name, density, expansionPerK, ethanol }: (typeof solvents)[number]): Measured {
  const uncertain = ({ value, halfWidth }: { value: number; halfWidth: number }, what: string) =>
    measured(value, halfWidth / Math.sqrt(3), { id: `${what}:${id}`, words: `${what} of ${name}` });
  const [at20, here] = [uncertain(density, 'density'), celsius(roomC())];
  if (here === 20) return at20;
  const byExpansion = densityAt(at20, uncertain(expansionPerK, 'expansion'), here);
  const pure = id === 'water' ? waterDensity : ethanol.value > 0 ? byR22(massFraction(ethanol.value)) : null;
  if (!pure) return byExpansion;
  const value = (density.value * pure(here)) / pure(REFERENCE_TEMPERATURE);
  return { value, sources: id === 'water' ? at20.sources : byExpansion.sources };
}

function byR22(strength: MassFraction): (t: Celsius) => number {
  return (t) => ethanolDensity(strength, t);
}

/** Bottles of solvent on the Shelf, of one or of any, newest first; last those that are not taken by themselves. */
export function solventBottles(of?: string): Supply[] {
  const known = of === undefined ? solventsOnHand().map(({ id }) => id) : [of];
  const bottles = list('supply').filter(({ solvent }) => solvent !== undefined && known.includes(solvent));
  const rank = new Map(bottles.map((one) => [one, Number(whyNotByItself(one) !== null)]));
  return bottles.sort((a, b) => rank.get(a)! - rank.get(b)!);
}

/** Options of a choice. */
export function solventBottleOptions(of?: string): Option[] {
  return solventBottles(of).map((one) => ({
    value: one.id,
    label: [one.name, one.lot && `lot ${one.lot}`].filter(Boolean).join(', '),
    hint: [
      one.supplier,
      leftPhrase(leftOf(one)!, 'g'),
      labelSays(one) === 'smell only' && 'smell only',
      whyNotByItself(one),
    ]
      .filter(Boolean)
      .join(', '),
  }));
}

/** Droppers as options, with the drop no one has weighed last; in the slot of a sentence by their short words. */
export function dropperOptions(): Option[] {
  const own = list('dropper').map(({ id, name, tip }) => ({
    value: id,
    label: name,
    short: `dropper ${name}`,
    hint: tip,
  }));
  const typical: Option = {
    value: 'typical',
    label: 'One I have not weighed',
    short: 'a dropper not weighed yet',
    hint: 'typical drop mass, with a wide ±',
  };
  return [...own, typical];
}

/** The liquid that comes out of a vial's dropper: its solvent with a little material. */
export function liquidOfVial(vial: Vial): DropLiquid {
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  const solvent = solventsOnHand().find(({ id }) => id === vial.solvent?.id);
  const liquid = vial.solvent && (solvent?.liquid ?? classOfAlcohol(alcoholOfVial(vial)));
  return { id: vial.solvent?.id ?? vial.contents[0]!.material, liquid, strength };
}

/** A neat material in a dropper; of a thick one nothing is known beforehand. */
export function neatLiquid({ id, form }: Material): DropLiquid {
  return { id, liquid: form === 'viscous' ? 'unknown' : null, strength: 1 };
}

/** Density of an aroma material no one has looked up, g/mL: most oils and aroma liquids lie between 0.84 and 1.06. Typical, not confirmed. */
export const TYPICAL_DENSITY = { value: 0.95, halfWidth: 0.11 };

/** A bottle with its material, or null when either is gone. */
export function bottleWithMaterial(id: string | null | undefined): { bottle: Bottle; material: Material } | null {
  const bottle = find('bottle', id);
  const material = find('material', bottle?.material);
  return bottle && material ? { bottle, material } : null;
}

/** Vials as options of a choice, newest first: code and strength, grade, day. */
export function vialOptions(vials?: readonly Vial[]): readonly Option[] {
  return vials ? vials.map(vialOption) : allVials.value;
}

const allVials = computed(() => list('vial').map(vialOption));

function vialOption(vial: Vial): Option {
  const why = whyNotByItself(vial);
  return {
    value: vial.id,
    label: `${tagOf(vial)} · ${vial.name}`,
    hint: `${strengthText(vial)}${isSmellOnly(vial) ? ', smell only' : ''}, made ${formatDay(vial.madeOn)}${why ? `, ${why}` : ''}`,
  };
}
