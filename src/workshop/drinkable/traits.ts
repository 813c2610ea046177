import type { DrinkMaterial } from '../../core/limits/exposure';
import type { Trait } from '../../core/limits/figure';
import { traitPlants } from '../../tables/traitPlants';

/** What a drink is by what is in it, until someone says otherwise: each trait with the name of what makes it so. */
export function traitsByContent(materials: readonly DrinkMaterial[]): Map<Trait, string> {
  const found = new Map<Trait, string>();
  for (const { trait, plants, cas } of traitPlants) {
    const made = materials.find((one) => plants.includes(genusOf(one)) || one.cas.some((own) => cas.includes(own)));
    if (made) found.set(trait, made.name);
  }
  return found;
}

/** The first word of the Latin name, with a capital letter. */
function genusOf({ botanical = '' }: DrinkMaterial): string {
  const [genus = ''] = botanical.trim().toLowerCase().split(/\s+/);
  return genus.charAt(0).toUpperCase() + genus.slice(1);
}
