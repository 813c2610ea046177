import { wordsOf } from '../core/text/search';
import { solvents, type Solvent } from '../tables/solvents';

const FEWEST_LETTERS = 3; // our choice: what is shorter begins too many names

/** Solvents of the table that a material is, by its CAS number, else by a name as it is typed: each of its words begins one of the solvent's. */
export function asSolvent(name: string, cas: string | undefined): readonly Solvent[] {
  const byNumber = cas ? solvents.filter((one) => one.cas === cas) : [];
  return byNumber.length > 0 ? byNumber : solvents.filter((one) => isCalled(one.name, name));
}

function isCalled(solvent: string, name: string): boolean {
  const [of, typed] = [wordsOf(solvent), wordsOf(name)];
  const begins = typed[0] !== undefined && typed[0].length >= FEWEST_LETTERS && of[0]!.startsWith(typed[0]);
  return begins && typed.every((word) => of.some((one) => one.startsWith(word)));
}
