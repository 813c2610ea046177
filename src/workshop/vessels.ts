import type { Vessel } from '../core/dilution/vessel';
import { find, list } from '../records/shelf';
import { vessels } from '../tables/vessels';

/** Vessels of the table as a sentence calls them. */
const IN_SENTENCE: Readonly<Record<string, string>> = {
  cylinder: 'a 10 mL cylinder A',
  'cylinder 10 B': 'a 10 mL cylinder',
  'cylinder 25 B': 'a 25 mL cylinder',
  'cylinder 50 B': 'a 50 mL cylinder',
  syringe: 'a syringe',
  'syringe 1': 'a 1 mL syringe',
  'syringe 5': 'a 5 mL syringe',
  'syringe 20': 'a 20 mL syringe',
};

/** The vessels of the table by their class, each an option of a choice. */
export function vesselClasses() {
  return vessels.map(({ id, label, hint }) => ({ value: id, label, short: IN_SENTENCE[id] ?? label, hint }));
}

/** Vessels that can be chosen: those on the Shelf, then those of the table by their class, each an option of a choice. */
export function vesselChoices() {
  return [
    ...list('vessel').map(({ id, name, sort }) => ({ value: id, label: name, short: name, hint: sort })),
    ...vesselClasses(),
  ];
}

/** The vessel of that id, on the Shelf or of the table; what is measured with one on the Shelf is off by the same each time, whatever else is of its class. */
export function vesselOf(id: string | null): Vessel | undefined {
  return find('vessel', id) ?? vessels.find((row) => row.id === id);
}
