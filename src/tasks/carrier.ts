import { ethanolDensity, ethanolMassFraction } from '../core/ethanol';
import { massFraction, REFERENCE_TEMPERATURE, volumeFraction, type VolumeFraction } from '../core/units';
import { find } from '../records/shelf';
import type { SolventCopy } from '../records/solvent';
import type { Vial } from '../records/vial';
import { solvents } from '../tables/solvents';

/** Ethanol in the liquid of a vial, mL per mL at 20 °C: what its solvent brings, and what the vials it was made from bring. */
export function alcoholOfVial(vial: Vial): VolumeFraction {
  const ethanol = massOfEthanol(vial, new Set()) / vial.massG.value;
  const pure = ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE);
  return volumeFraction(Math.min(1, (ethanol * vial.densityGPerMl) / pure));
}

/** g of ethanol in all of a vial as made. */
function massOfEthanol(vial: Vial, seen: Set<string>): number {
  seen.add(vial.id);
  const parts = vial.uses.filter(({ id }) => find('vial', id) ?? find('bottle', id));
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  const parents = parts.length > 0 ? parts.reduce((sum, { massG }) => sum + massG, 0) : strength * vial.massG.value;
  const thinner = Math.max(0, vial.massG.value - parents);
  const brought = parts.map(({ id, massG }) => {
    const parent = find('vial', id);
    return parent && !seen.has(id) ? (massG * massOfEthanol(parent, new Set(seen))) / parent.massG.value : 0;
  });
  return thinner * ethanolOf(vial.solvent) + brought.reduce((sum, mass) => sum + mass, 0);
}

/** g of ethanol per g of a solvent. */
function ethanolOf(solvent: SolventCopy | null): number {
  if (solvent?.abv !== undefined) return ethanolMassFraction(volumeFraction(solvent.abv));
  return solvents.find(({ id }) => id === solvent?.id)?.ethanol.value ?? 0;
}
