import { SUGAR, WATER } from '../../../core/drink/batchPlan';
import type { Content } from '../../../core/drink/dose';
import { ethanolMassFraction } from '../../../core/liquid/ethanol';
import { exact } from '../../../core/number/measured';
import { volumeFraction } from '../../../core/number/units';
import type { Bottle } from '../../../records/kind/material';
import { holdingOf } from '../../../workshop/thing/holding';
import { carriersOf, ethanolOf } from '../../../workshop/thing/carrier';
import type { SolventOnHand } from '../../../workshop/onHand';
import type { Source } from '../../../workshop/sources';
import type { acids } from '../../../tables/syrupAdditives';
import type { RecipeLine } from './recipe';
import { tagOf } from '../../../workshop/thing/labelled';

/** Ids of what is weighed beside materials and carriers. */
export const ETHANOL = 'ethanol';
export const SPIRIT = 'spirit';
export const EMULSION_WATER = 'emulsion-water';
/** The acid of an ingredient of one's own, as citric acid. */
export const OWN_ACID = 'own-acid';

/**
 * What may be in a vessel: its name, where it comes from, and what it consists of, g/g. What an extract, juice or the like brings beside
 * its own name is counted within it: its sugar is in the grams of the juice, and in the sugar of the drink.
 */
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
  /** An ingredient of the drink, no part of the formula. */
  readonly own?: true;
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

/** An acid as it is weighed: of a solution, its strength and the rest of it water. */
export function acidGoods({ id, name, cas, strength = 1 }: (typeof acids)[number]): Goods {
  const rest = strength < 1 ? [{ material: WATER, strength: exact(1 - strength) }] : [];
  return {
    ...pure(id, name, { cas, beside: 'fixed' }),
    contents: [{ material: id, strength: exact(strength) }, ...rest],
  };
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
    contents: [{ material: line.material, strength: source.strength }, ...rest, ...broughtBy(source.bottle)],
    unknown: carriers.filter(({ ethanol }) => ethanol === null),
  };
}

/** Sugar, alcohol and acid within an extract, tincture, infusion, juice or puree. */
function broughtBy(bottle: Bottle | null): Content[] {
  const holding = bottle && holdingOf(bottle);
  if (!holding) return [];
  const parts = [
    [SUGAR, holding.sugar],
    [ETHANOL, holding.ethanol],
    [OWN_ACID, holding.acid],
  ] as const;
  return parts.flatMap(([material, share]) => (share > 0 ? [{ material, strength: exact(share) }] : []));
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

/** Spirit of that many % ABV, from no bottle of the Shelf. */
export function spiritGoods(abv: number): Goods {
  const contents = thinner(SPIRIT, 1, ethanolMassFraction(volumeFraction(abv / 100)));
  return { id: SPIRIT, name: `spirit, ${abv} % ABV`, source: null, contents };
}

/** Spirit from a bottle of the Shelf, of a solvent with alcohol. */
export function spiritFrom(solvent: SolventOnHand, source: Source): Goods {
  return { id: SPIRIT, name: solvent.name, source, contents: thinner(SPIRIT, 1, ethanolOf(solvent)) };
}

/** g of ethanol in a gram of some goods. */
export function ethanolIn(goods: Goods): number {
  return contentOf(goods, ETHANOL);
}

/** g of something in a gram of some goods. */
export function contentOf(goods: Goods, id: string): number {
  return goods.contents.reduce((sum, { material, strength }) => sum + (material === id ? strength.value : 0), 0);
}

function thinner(id: string, share: number, ethanol: number | null): Content[] {
  if (ethanol === null || ethanol === 0) return [{ material: id === 'water' ? 'water' : id, strength: exact(share) }];
  return [
    { material: ETHANOL, strength: exact(share * ethanol) },
    { material: 'water', strength: exact(share * (1 - ethanol)) },
  ];
}
