import { ethanolDensity, ethanolMassFraction } from '../../core/liquid/ethanol';
import { massFraction, REFERENCE_TEMPERATURE, volumeFraction, type VolumeFraction } from '../../core/number/units';
import type { Bottle } from '../../records/kind/material';
import { find } from '../../records/shelf';
import { holdingOf } from './holding';
import type { SolventCopy } from '../../records/kind/solvent';
import type { Vial } from '../../records/kind/vial';
import { solvents } from '../../tables/solvents';

/** What the materials of a vial are in, g per g of its liquid; `ethanol` g of ethanol per g of that, null where it is not known. */
export interface Carrier {
  readonly id: string;
  readonly name: string;
  readonly share: number;
  readonly ethanol: number | null;
  /** CAS number of what is no solvent: gum, weighting agent. */
  readonly cas?: string;
}

/** The solvents in a vial, and gum and weighting agent of an emulsion: its own, and those of the vials it was made from. */
export function carriersOf(vial: Vial): Carrier[] {
  const merged = new Map<string, Carrier>();
  for (const one of carriersIn(vial, new Set())) {
    const before = merged.get(one.id)?.share ?? 0;
    merged.set(one.id, { ...one, share: before + one.share });
  }
  return [...merged.values()].filter(({ share }) => share > ROUNDING);
}

/** True when the liquid of a vial is an emulsion, or was made from one: a drink becomes cloudy by it. */
export function isCloudy(vial: Vial): boolean {
  return carriersOf(vial).some(({ cas }) => cas !== undefined);
}

/** Ethanol in the liquid of a vial, mL per mL at 20 °C; null where the alcohol of a solvent in it is not known. */
export function alcoholOfVial(vial: Vial): VolumeFraction | null {
  return alcoholIsUnknownIn(vial).length > 0 ? null : mostAlcoholOfVial(vial);
}

/** Names of the solvents in a vial of which no one has said how much alcohol they hold. */
export function alcoholIsUnknownIn(vial: Vial): string[] {
  return carriersOf(vial).flatMap(({ ethanol, name }) => (ethanol === null ? [name] : []));
}

/** The most ethanol that the liquid of a vial may hold, mL per mL at 20 °C: what is not known counts as nothing but ethanol. */
export function mostAlcoholOfVial(vial: Vial): VolumeFraction {
  const ethanol = carriersOf(vial).reduce((sum, one) => sum + one.share * (one.ethanol ?? 1), 0);
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  return volumeFraction(Math.min(1, (ethanol * vial.densityGPerMl) / pure));
}

/** The bottles behind a vial, through all vials that it was made from. */
export function bottlesOf(vial: Vial, seen: ReadonlySet<string> = new Set()): Bottle[] {
  const bottles = vial.uses.flatMap(({ id }) => {
    const parent = seen.has(id) ? undefined : find('vial', id);
    return parent ? bottlesOf(parent, new Set([...seen, vial.id])) : (find('bottle', id) ?? []);
  });
  return [...new Map(bottles.map((one) => [one.id, one])).values()];
}

const ROUNDING = 1e-9; // g/g, what adding up shares leaves over

function carriersIn(vial: Vial, seen: ReadonlySet<string>): Carrier[] {
  const total = vial.massG.value;
  const parts = vial.uses.filter(({ id }) => find('vial', id) ?? find('bottle', id));
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  const put = parts.length > 0 ? parts.reduce((sum, { massG }) => sum + massG, 0) / total : strength;
  const brought = parts.flatMap(({ id, massG }) => {
    const parent = seen.has(id) ? undefined : find('vial', id);
    const within = parent ? carriersIn(parent, new Set([...seen, vial.id])) : alcoholOfBottle(find('bottle', id));
    return within.map((one) => ({ ...one, share: (one.share * massG) / total }));
  });
  const beside = (vial.beside ?? []).map((one) => ({ ...one, ethanol: 0 }));
  const rest = beside.reduce((left, { share }) => left - share, 1 - put);
  const own = vial.solvent ? [{ ...facts(vial.solvent), share: Math.max(0, rest) }] : [];
  return [...own, ...beside, ...brought];
}

/** The alcohol of a tincture or extract, as what came along with it. */
function alcoholOfBottle(bottle: Bottle | undefined): Carrier[] {
  const ethanol = bottle ? (holdingOf(bottle)?.ethanol ?? 0) : 0;
  return ethanol > 0 ? [{ id: `alcohol of ${bottle!.material}`, name: 'its alcohol', share: ethanol, ethanol: 1 }] : [];
}

function facts(solvent: SolventCopy): Omit<Carrier, 'share'> {
  return { id: solvent.id, name: solvent.name, ethanol: ethanolOf(solvent) };
}

/** g of ethanol per g of a solvent, as its copy says, else as its record says today, else by the table; null where it is not known. */
export function ethanolOf({ id, abv = find('solvent', id)?.abv }: Pick<SolventCopy, 'id' | 'abv'>): number | null {
  if (abv === 0) return 0; // the law finds its inverse by halving, and ends beside 0
  if (abv !== undefined) return ethanolMassFraction(volumeFraction(abv));
  return solvents.find((row) => row.id === id)?.ethanol.value ?? null;
}
