import type { Vial } from '../records/kind/vial';
import { find } from '../records/shelf';
import { carriersOf } from './thing/carrier';
import { solventsOnHand } from './onHand';

/** °C; liquids that flash up to here carry the flame (GHS, flammable liquids of categories 1 to 3; from memory, not verified). */
const FLAMMABLE = 60;

/** Share by mass: ethanol in water flashes at 62 °C with 5 % and at 49 °C with 10 % (engineering tables); for other liquids our choice, on the cautious side. */
const ENOUGH = 0.05;

/** True when what flashes up to 60 °C makes up more than 5 % of a vial: its solvents, those of the vials it was made from, and its materials. */
export function burns(vial: Vial): boolean {
  const flashes = new Map(solventsOnHand().map(({ id, flashC }) => [id, flashC]));
  const own = vial.solvent;
  if (own) flashes.set(own.id, own.flashC ?? flashes.get(own.id));
  const inSolvents = carriersOf(vial).map(
    ({ id, share, ethanol }) => share * (low(flashes.get(id)) ? 1 : (ethanol ?? 0)),
  );
  const inMaterials = vial.contents.map(({ material, strength }) =>
    burnsNeat(material) ? Math.min(1, strength.value) : 0,
  );
  return [...inSolvents, ...inMaterials].reduce((sum, share) => sum + share, 0) > ENOUGH;
}

/** True when the flash point of a material, where it is known, is 60 °C or lower. */
export function burnsNeat(material: string): boolean {
  return low(find('material', material)?.flash?.value);
}

function low(flashC: number | undefined): boolean {
  return flashC !== undefined && flashC <= FLAMMABLE;
}
