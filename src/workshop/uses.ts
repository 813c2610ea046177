import { standardUncertainty, type Measured } from '../core/number/measured';
import type { Bottle } from '../records/kind/material';
import type { Use } from '../records/kind/quantity';
import { find } from '../records/shelf';
import type { Supply } from '../records/kind/supply';
import type { Vial } from '../records/kind/vial';
import { forFile } from '../ui/format';
import { strengthText } from './thing/strengthText';

/** What a thing is called in a record of what was taken from it: code, name, strength as on its label, lot and supplier of today. */
export function calledNow(thing: Bottle | Vial | Supply): Partial<Use> {
  const { lot, supplier } = thing;
  if (thing.kind === 'supply') return told({ name: thing.name, lot, supplier });
  if (thing.kind === 'vial')
    return told({ code: thing.code, name: thing.name, strength: strengthOnLabel(thing), lot, supplier });
  const material = find('material', thing.material);
  return told({ code: material?.code, name: material?.name, strength: 'neat', lot, supplier });
}

/** The strength on a vial's label, such as '1 % w/v', as it is stored. */
export function strengthOnLabel(vial: Pick<Vial, 'label' | 'contents'>): string {
  return forFile(() => strengthText(vial));
}

/** What was taken of the bottle, vial or pack of that id, g with its uncertainty, and how that is known. */
export function useOf(id: string, mass: Measured, known: Partial<Use>): Use {
  const thing = find('vial', id) ?? find('bottle', id) ?? find('supply', id);
  return { id, massG: mass.value, u: standardUncertainty(mass), ...(thing ? calledNow(thing) : {}), ...told(known) };
}

/** The dropper that something was counted with, as it is called today; nothing where it was none of the Shelf. */
export function droppedBy(dropper: string): Partial<Use> {
  const known = find('dropper', dropper);
  return known ? { dropper: { id: known.id, name: known.name } } : {};
}

/** Without what is not known. */
function told(facts: { readonly [K in keyof Use]?: Use[K] | undefined }): Partial<Use> {
  return Object.fromEntries(Object.entries(facts).filter(([, fact]) => fact !== undefined && fact !== ''));
}
