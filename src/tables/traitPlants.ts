import type { Trait } from '../core/limits/figure';

/** What a drink is by what is in it: the first word of a plant's Latin name, or the CAS number of an oil or a substance. */
export interface TraitRow {
  readonly trait: Trait;
  readonly plants: readonly string[];
  readonly cas: readonly string[];
}

/** Plants by botany, bitters by common practice of the trade. Only a preset: the person who knows the drink decides. */
export const traitPlants: readonly TraitRow[] = [
  { trait: 'mint', plants: ['Mentha'], cas: ['8006-90-4', '8008-79-5', '68917-18-0', '8013-99-8'] },
  { trait: 'from Artemisia', plants: ['Artemisia'], cas: ['8008-93-3'] },
  { trait: 'citrus oil', plants: ['Citrus'], cas: ['8008-56-8', '8008-57-9', '8008-26-2', '8016-20-4', '8007-75-8', '8008-31-9', '68916-04-1'] },
  { trait: 'bitter', plants: ['Gentiana', 'Cinchona', 'Quassia', 'Picrasma', 'Centaurium', 'Teucrium', 'Menyanthes'], cas: ['130-95-0', '130-89-2', '6119-47-7', '804-63-7', '6119-70-6', '76-78-8'] },
];
