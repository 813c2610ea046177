import { find } from '../records/shelf';

/** The vials that were smelled for a formula, by id: those of the layering or the search for proportions that it came of. */
export function smelledVials(formula: string | null): string[] {
  return (find('formula', formula)?.from ?? []).flatMap(
    (origin) =>
      find('proportions', origin)?.vials.map(({ id }) => id) ??
      find('layering', origin)?.strips.map(({ vial }) => vial) ??
      [],
  );
}
