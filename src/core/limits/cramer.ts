import type { CramerClass, Figure } from './figure';

/** CAS numbers by class, space between, and where they come from. */
export interface CramerList {
  readonly classes: Readonly<Record<CramerClass, string>>;
  readonly figure: Figure;
}

/**
 * A look-up of the Cramer class by CAS number over lists in order of trust: the first list that knows it answers (our choice),
 * with its source.
 */
export function cramerFinder(
  lists: readonly CramerList[],
): (cas: string) => { cramerClass: CramerClass; figure: Figure } | null {
  const known = new Map<string, { cramerClass: CramerClass; figure: Figure }>();
  for (const { classes, figure } of lists)
    for (const cramerClass of ['III', 'II', 'I'] as const)
      for (const cas of classes[cramerClass].split(' ')) if (!known.has(cas)) known.set(cas, { cramerClass, figure });
  return (cas) => known.get(cas) ?? null;
}
