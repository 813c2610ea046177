import { originalOf, partsOf } from '../records/lineage';
import { shelf } from '../records/shelf';
import type { Vial } from '../records/kind/vial';
import { solventsOnHand } from './onHand';
import { tagOf } from './labelled';

const NEVER = 'smell only, it never goes into a drink';

/**
 * Why a vial may not go into a drink, in one sentence; null when it may. What is smell only stays so through every
 * vial made from it, however far down, and whatever the label of the later one says.
 */
export function refusalOf(vial: Vial): string | null {
  const found = causeOf(vial.id, vial, new Set());
  return found && `${found.charAt(0).toUpperCase()}${found.slice(1)}: ${NEVER}.`;
}

function causeOf(id: string, vial: Vial, seen: Set<string>): string | null {
  seen.add(id);
  const own = solventCause(vial);
  if (own) return own;
  for (const parent of originsOf(vial)) {
    if (seen.has(parent)) continue;
    const cause = parentCause(vial, parent, seen);
    if (cause) return cause;
  }
  return vial.grade === 'smell only' ? gradeCause(vial) : null;
}

/** Ids of what is in it; and of the vial that it is the other copy of: what is smell only there is so here. */
function originsOf(vial: Vial): string[] {
  const original = originalOf(vial);
  const parts = partsOf(vial).flatMap(({ id }) => (id === vial.solvent?.id ? [] : id)); // a solvent is judged by itself
  return [...parts, ...(original ? [original.id] : [])];
}

function solventCause(vial: Vial): string | null {
  const { solvent } = vial;
  if (!solvent) return null;
  const known = solventsOnHand().find(({ id }) => id === solvent.id);
  if (known && !known.foodPossible) return `${tagOf(vial)} was thinned with ${solvent.name}`;
  return solvent.food ? null : `${tagOf(vial)} was thinned with ${solvent.name} that is not food grade`;
}

function gradeCause(vial: Vial): string {
  return `${tagOf(vial)} is marked so on its label`;
}

function parentCause(vial: Vial, id: string, seen: Set<string>): string | null {
  const origin = shelf.records.value.get(id);
  if (origin?.kind === 'bottle')
    return origin.grade === 'smell only' ? `${tagOf(vial)} comes from a bottle that is not fit for drinks` : null;
  if (origin?.kind === 'supply')
    return origin.grade === 'smell only'
      ? `${tagOf(vial)} was thinned from a bottle of ${origin.name} that is not fit for drinks`
      : null;
  if (origin?.kind === 'vial') {
    const cause = causeOf(id, origin, seen);
    return cause && `${tagOf(vial)} was made with ${tagOf(origin)}, and ${cause}`;
  }
  const taken = vial.uses.some((use) => use.id === id);
  const known = origin !== undefined || solventsOnHand().some((solvent) => solvent.id === id);
  return taken && !known ? `${tagOf(vial)} was made with something that is no longer on the Shelf` : null;
}
