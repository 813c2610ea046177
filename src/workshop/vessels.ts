import type { Vessel } from '../core/dilution/vessel';
import { find, list } from '../records/shelf';
import { vessels } from '../tables/vessels';

/** Vessels that can be chosen: those on the Shelf, then those of the table by their class, each an option of a choice. */
export function vesselChoices() {
  return [
    ...list('vessel').map(({ id, name, sort }) => ({ value: id, label: name, short: name, hint: sort })),
    ...vessels.map(({ id, label, short, hint }) => ({ value: id, label, short, hint })),
  ];
}

/** The vessel of that id, on the Shelf or of the table; what is measured with one on the Shelf is off by the same each time, whatever else is of its class. */
export function vesselOf(id: string | null): Vessel | undefined {
  return find('vessel', id) ?? vessels.find((row) => row.id === id);
}
