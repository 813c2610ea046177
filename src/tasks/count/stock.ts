import { computed } from '@preact/signals';
import type { Bottle } from '../../records/kind/material';
import { find, list } from '../../records/shelf';
import type { SolventCopy } from '../../records/kind/solvent';
import { leftOf } from '../../records/stock';
import type { Vial } from '../../records/kind/vial';
import { strengthText } from '../../workshop/thing/strengthText';
import { dropOf, type DropLiquid, type DropOnHand } from '../../workshop/dropMass';
import { materialDensity } from '../../workshop/materialDensity';
import { bottleWithMaterial, liquidOfVial, neatLiquid, TYPICAL_DENSITY } from '../../workshop/onHand';
import { contentsNow } from '../../workshop/thing/ageing';
import { purityOf } from '../../workshop/thing/purity';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { tagOf } from '../../workshop/thing/labelled';
import { whyNotByItself } from '../../workshop/takenByItself';

/** Something drops can be counted from: a vial, or a bottle of a neat liquid. Strengths in g of neat material per g of the liquid. */
export interface Stock {
  readonly id: string;
  /** Code and strength, as in 'CARD 1 %' and 'CARD neat'. */
  readonly tag: string;
  readonly name: string;
  /** Strength and solvent, in words. */
  readonly what: string;
  readonly contents: Vial['contents'];
  readonly liquid: DropLiquid;
  /** Whether it may not go into a drink. */
  readonly smellOnly: boolean;
  readonly solvent: SolventCopy | null;
  readonly densityGPerMl: number;
  /** YYYY-MM-DD, or '' where none is known. */
  readonly useBy: string;
  /** What is left as reckoned, g; null where the book does not know what there was. */
  readonly leftG: number | null;
}

const stocks = computed(() => {
  const all = [...list('vial').map(ofVial), ...list('bottle').flatMap(ofBottle)];
  return new Map(all.map((stock) => [stock.id, stock]));
});

/** Every vial and every bottle of a liquid on the Shelf, vials first, newest first. */
export function stocksOnHand(): Stock[] {
  return [...stocks.value.values()];
}

/** The stock of that id, also where it was put away since; undefined when it is gone. */
export function stockOf(id: string): Stock | undefined {
  const [vial, bottle] = [find('vial', id), find('bottle', id)];
  return stocks.value.get(id) ?? (vial ? ofVial(vial) : bottle && ofBottle(bottle)[0]);
}

/** What one drop of a stock weighs from a dropper. */
export function dropOfStock(stock: Stock, dropper: string): DropOnHand {
  return dropOf(dropper, stock.liquid);
}

/** Whole drops left of a stock as reckoned, from this dropper; null where the book does not know. */
export function leftDrops(stock: Stock, dropper: string): number | null {
  if (stock.leftG === null) return null;
  return Math.floor((stock.leftG * 1000) / dropOfStock(stock, dropper).mgPerDrop.value);
}

/** Strength of a stock in all its materials together, g/g. */
export function strengthOf(stock: Stock): number {
  return stock.contents.reduce((sum, part) => sum + part.strength.value, 0);
}

/** Whether a stock holds this material and nothing else. */
export function holdsOnly({ contents }: Stock, material: string): boolean {
  return contents.length === 1 && contents[0]!.material === material;
}

/** Why a stock is not taken by itself; null when it may be. */
export function whyNotTaken({ id }: Stock): string | null {
  const record = find('vial', id) ?? find('bottle', id);
  return record ? whyNotByItself(record) : null;
}

function ofVial(vial: Vial): Stock {
  const { id, name, solvent, densityGPerMl, useBy } = vial;
  const contents = contentsNow(vial);
  return {
    id,
    tag: tagOf(vial),
    name,
    contents,
    smellOnly: isSmellOnly(vial),
    solvent,
    densityGPerMl,
    useBy,
    what: `${strengthText(vial)}${solvent ? ` in ${solvent.name}` : ''}`,
    liquid: liquidOfVial(vial),
    leftG: leftOf(vial)?.value ?? null,
  };
}

function ofBottle(bottle: Bottle): Stock[] {
  const material = bottleWithMaterial(bottle.id)?.material;
  if (!material || material.form === 'solid') return [];
  const { id, useBy = '', density: known = material.density } = bottle;
  return [
    {
      id,
      smellOnly: isSmellOnly(bottle),
      useBy,
      tag: tagOf(bottle),
      name: material.name,
      what: 'neat',
      solvent: null,
      contents: [{ material: material.id, name: material.name, strength: purityOf(bottle, material) }],
      liquid: neatLiquid(material),
      densityGPerMl: known ? materialDensity(known, id).value : TYPICAL_DENSITY.value,
      leftG: leftOf(bottle)?.value ?? null,
    },
  ];
}

/** The code that a thing has its colour by: that of the vial, else that of its material. */
export function labelledCode(stock: string | undefined, material: string): string {
  const own = find('vial', stock)?.code;
  return own ?? find('material', find('bottle', stock)?.material ?? material)?.code ?? material;
}
