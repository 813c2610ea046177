import type { Jurisdiction } from '../../core/limits/figure';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Part } from '../drinkable/judging';

/** One thing in a drink: what it is weighed as, g in a litre of drink, and the bottle or vial it is from. */
export interface Put {
  readonly id: string;
  readonly name: string;
  readonly gramsPerL: number;
  readonly source: AnyRecord | null;
  /** An ingredient of the drink, no part of the formula. */
  readonly own: boolean;
  /** Of such an ingredient: g of its acid, as anhydrous citric acid, in a gram. */
  readonly acid: number;
}

/** A drink, planned or made, as a label has to tell of it. */
export interface DrinkToLabel {
  readonly market: Jurisdiction;
  /** What the person calls it on the label; '' while that is open. */
  readonly name: string;
  readonly netMl: number | null;
  readonly puts: readonly Put[];
  /** Everything in it that is judged, mg per kg: its flavouring among them. */
  readonly parts: readonly Part[];
  /** mg per kg of substances by their CAS numbers. */
  readonly held: (cas: readonly string[]) => number;
  /** g per L, what its ingredients bring counted in. */
  readonly sugarPerL: number;
  readonly abv: number;
  /** Twice the standard uncertainty of it, % vol; null while it is not weighed. */
  readonly abvOff: number | null;
  /** The alcohol of something in it is not known. */
  readonly isAbvUnknown: boolean;
  readonly densityGPerMl: number;
  /** Of CO2; 0 for a still drink. */
  readonly volumes: number;
  readonly bestBefore: string;
  /** What keeps it beside preservatives: 'cold' where it has to stay cold. */
  readonly treated: string;
  /** '' while it is planned. */
  readonly lot: string;
}

/** One line of a draft: what is on the label, in ‹ › what is set apart there; what to know about it; and where the law says so. */
export interface DraftRow {
  readonly what: string;
  readonly words: string;
  readonly notes: readonly string[];
  readonly source: string;
}

/** True where the law of the market counts the drink as alcoholic, so that neither ingredients nor nutrition have to be told. */
export function isAlcoholic(
  { market, abv }: DrinkToLabel,
  from: { readonly EU: number; readonly US: number },
): boolean {
  return market === 'EU' ? abv > from.EU : abv >= from.US;
}
