import type { Content } from '../../../core/drink/dose';
import { ethanolMassFraction } from '../../../core/liquid/ethanol';
import { exact } from '../../../core/number/measured';
import { volumeFraction } from '../../../core/number/units';
import { carriersOf, ethanolOf } from '../../../workshop/thing/carrier';
import type { SolventOnHand } from '../../../workshop/onHand';
import type { Source } from '../../../workshop/sources';
import type { RecipeLine } from './recipe';
import { tagOf } from '../../../workshop/thing/labelled';

/** Ids of what is weighed beside materials and carriers. */
export const ETHANOL = 'ethanol';
export const SPIRIT = 'spirit';
export const EMULSION_WATER = 'emulsion-water';

/** What may be in a vessel: its name, where it comes from, and what it consists of, g/g. */
export interface Goods {
  readonly id: string;
  readonly name: string;
  /** Code and strength on the bottle or vial of a material: 'CARD neat'. */
  readonly tag?: string;
  /** CAS number where it is neither a material of the Shelf nor a solvent. */
  readonly cas?: string;
  readonly source: Source | null;
  readonly contents: readonly Content[];
  /** Solvents in it of which no one has said how much alcohol they hold. */
  readonly unknown?: readonly { readonly id: string; readonly name: string }[];
  /** Judged beside the dose: what follows it (gum, agent) and what does not (carrier, acid). */
  readonly beside?: 'carrier' | 'fixed';
}

/** Goods and how many grams of them are planned. */
export interface Planned {
  readonly goods: Goods;
  readonly mass: number;
}

/** Sum of the masses, g. */
export function massOf(all: readonly Planned[]): number {
  return all.reduce((sum, { mass }) => sum + mass, 0);
}

/** Something that is one substance through and through. */
export function pure(id: string, name: string, more: Pick<Goods, 'cas' | 'beside'> = {}): Goods {
  return { id, name, source: null, contents: [{ material: id, strength: exact(1) }], ...more };
}

/** A material as it comes from its bottle or vial. */
export function materialGoods(line: RecipeLine, source: Source): Goods {
  const from = source.vial ?? source.bottle;
  const carriers = source.vial ? carriersOf(source.vial) : [];
  const rest = carriers.flatMap((one) => thinner(one.id, one.share, one.ethanol));
  return {
    id: line.material,
    name: line.name,
    ...(from ? { tag: tagOf(from) } : {}),
    source,
    contents: [{ material: line.material, strength: source.strength }, ...rest],
    unknown: carriers.filter(({ ethanol }) => ethanol === null),
  };
}

/** A solvent as the carrier of a concentrate, from its bottle where one was named. */
export function carrierGoods(solvent: SolventOnHand, source: Source | null): Goods {
  const ethanol = ethanolOf(solvent);
  return {
    id: solvent.id,
    name: solvent.name,
    source,
    beside: 'fixed', // the dosage stays, whatever the dose
    contents: thinner(solvent.id, 1, ethanol),
    ...(ethanol === null ? { unknown: [solvent] } : {}),
  };
}

/** Spirit of that many % ABV. */
export function spiritGoods(abv: number): Goods {
  const contents = thinner(SPIRIT, 1, ethanolMassFraction(volumeFraction(abv / 100)));
  return { id: SPIRIT, name: `spirit, ${abv} % ABV`, source: null, contents };
}

/** g of ethanol in a gram of some goods. */
export function ethanolIn(goods: Goods): number {
  return goods.contents.reduce((sum, { material, strength }) => sum + (material === ETHANOL ? strength.value : 0), 0);
}

function thinner(id: string, share: number, ethanol: number | null): Content[] {
  if (ethanol === null || ethanol === 0) return [{ material: id === 'water' ? 'water' : id, strength: exact(share) }];
  return [
    { material: ETHANOL, strength: exact(share * ethanol) },
    { material: 'water', strength: exact(share * (1 - ethanol)) },
  ];
}
