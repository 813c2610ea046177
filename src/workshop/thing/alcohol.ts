import { formatPlain } from '../../ui/format';

/** What is said where the alcohol of some solvents is not known, and where it can be said. */
export function unknownWords(names: readonly string[]): string {
  return `No one has said how much alcohol is in ${names.join(' and ')}: on the Shelf, under Own solvents, it can be changed.`;
}

/** The alcohol of a solvent of the person's own, in words. */
export function ownAlcoholText(abv: number | undefined): string {
  return abv === undefined ? 'not known' : `${formatPlain(abv * 100, 3)} % vol`;
}
