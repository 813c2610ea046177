import { tidyCas } from '../../core/limits/cas';
import { neverFitRows, type NeverFit } from '../../tables/neverFit';

/**
 * Why a liquid is never fit for drinks, in one plain sentence, by its name (or several) and CAS number as typed; null when nothing
 * speaks against it. It says nothing of a bottle: food grade is still the word of its label.
 */
export function neverFit(names: string | readonly string[], cas?: string | null): string | null {
  const number = tidyCas(cas ?? '');
  const signs = (typeof names === 'string' ? [names] : names).map(signsOf);
  const row = neverFitRows.find((one) => one.cas.includes(number) || signs.some((name) => isMeant(name, one)));
  return row ? `${row.name} is never fit for drinks: smell only.` : null;
}

/** A name as words, numbers and % in small letters, without accents and signs that are not seen. */
function signsOf(name: string): string[] {
  const plain = name
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}]/gu, '')
    .toLowerCase();
  return plain.match(/[a-z]+|\d+(?:[.,]\d+)*|%/g) ?? [];
}

const LONGEST = 4; // signs in a name of the table: iso-propyl alcohol has 3

function isMeant(signs: readonly string[], row: NeverFit): boolean {
  return signs.some((_, from) =>
    Array.from({ length: LONGEST }, (_, i) => from + i + 1).some((to) => {
      const word = signs.slice(from, to).join('').replace(/[.,]/g, '');
      const [before, after] = [signs.slice(0, from), signs.slice(to)];
      if (row.alone.includes(word)) return [...before, ...after].every((sign) => isBeside(sign, row));
      const isOther = row.cas.length > 0 && isPartOfAnother(before, after);
      return row.anywhere.includes(word) && !isOther && !isDenied(before, after);
    }),
  );
}

/** Words of a label that make no other substance of the word beside them. */
const BESIDE =
  /^(?:[\d.,]+|%|v|w|vol|pure|purity|dry|anhydrous|abs|absolute|grade|food|kosher|lab|laboratory|technical|tech|cosmetic|pharma|pharmaceutical|usp|bp|ep|ph|eur|acs|hplc|solvent|alcohol|spirit|bottle|of|the|in|and|with|water|my|old|new)$/;

function isBeside(sign: string, { anywhere, alone }: NeverFit): boolean {
  return BESIDE.test(sign) || anywhere.includes(sign) || alone.includes(sign);
}

/** 'not denatured', 'free of methanol', 'methanol-free', 'extracted with acetone', 'acetone extract'. */
function isDenied(before: readonly string[], after: readonly string[]): boolean {
  const words = before.slice(-2).join(' ');
  return (
    /(?:^| )(?:not|non|no|never|un|without|nicht|pas|ohne)$/.test(words) ||
    /^(?:free of|free from|extracted with|extracted by)$/.test(words) ||
    /^(?:free|extract|extracts|extracted|extraction)$/.test(after[0] ?? '')
  );
}

/** Geranyl acetone, tetrahydrofuran-2-methanol, 1-phenylpropan-2-ol, acetone glycerol ketal: the name of another substance goes on. */
function isPartOfAnother(before: readonly string[], after: readonly string[]): boolean {
  const last = before.at(-1) ?? '';
  const isPlace = /^\d$/.test(last) && before.length > 1 && !BESIDE.test(before.at(-2)!);
  const isGroup =
    /(?:yl|ylidene|oxy|oxo|amino|chloro|bromo|nitro)$/.test(last) || /^(?:alpha|beta|gamma|[pom])$/.test(last);
  return isPlace || isGroup || after.some((sign) => /^(?:acetal|ketal|cyanohydrin|dimethyl|diethyl)$/.test(sign));
}
