import type { Jurisdiction } from '../core/limits/figure';
import { find } from '../records/shelf';
import { carriers } from '../tables/limitsCarriers';
import { needless } from '../tables/needless';
import { catalogue, type CatalogueRow } from './catalogue';
import type { JudgedMaterial } from './drinkable/judging';

/** Where a material is named as one that may be added. */
export interface ListedAs {
  readonly name: string;
  readonly words: string;
  /** False where a closed list was looked through and does not name it. */
  readonly named: boolean;
}

/**
 * Where each material is named, by the catalogue: Union list, FEMA, 21 CFR. "Not named" is said of flavouring substances in
 * the EU only, whose list is closed: an oil or extract is no substance, and no list of the US is closed. Nothing while the
 * catalogue is not here.
 */
export function listedAs(materials: readonly JudgedMaterial[], market: Jurisdiction): ListedAs[] {
  const here = catalogue.value;
  if (!here) return [];
  const once = [...new Map(materials.map((one) => [one.id, one])).values()];
  return once.map((material) => {
    const row = rowOf(material, here.rows);
    const flavour = row ? inLists(row, material, market) : { named: true, words: notInCatalogue(material) };
    return { name: material.name, ...(besideIn(material, market) ?? flavour) };
  });
}

/** What is no flavouring: a carrier, an acid, a gum, a preservative. Null for a material of the Shelf. */
function besideIn({ id, cas }: JudgedMaterial, market: Jurisdiction): Omit<ListedAs, 'name'> | null {
  if (find('material', id)) return null;
  const carrier = carriers.find((row) => cas.includes(row.cas));
  if (carrier) return { named: true, words: `carrier, ${carrier.eNumber}: ${carrierWords(carrier, market)}` };
  const needsNone = needless.find((row) => cas.includes(row.cas));
  return {
    named: true,
    words: needsNone ? `${needsNone.name}: ${needsNone.source}` : 'an additive: its limits are below',
  };
}

function carrierWords({ eu, us }: (typeof carriers)[number], market: Jurisdiction): string {
  return (market === 'EU' ? eu : us) || 'no section known';
}

function rowOf({ id, cas }: JudgedMaterial, rows: ReadonlyMap<string, CatalogueRow>): CatalogueRow | undefined {
  const own = rows.get(find('material', id)?.catalogue ?? '');
  return own ?? [...rows.values()].find((row) => row.cas !== undefined && cas.includes(row.cas[0]));
}

function inLists(row: CatalogueRow, { natural }: JudgedMaterial, market: Jurisdiction): Omit<ListedAs, 'name'> {
  const eu = row.eu && `Union list FL ${row.eu[0]}${row.eu[1] ? ` (${row.eu[1]})` : ''}`;
  const food = (row.us ?? []).filter((section) => /^(172|182|184)\./.test(section)); // the others are packaging and the like
  const us = food.length > 0 && `21 CFR ${food.join(', ')}`;
  const fema = row.fema && `FEMA ${row.fema[0]}`;
  const isSubstance = !natural && row.botanical === undefined;
  const missing = market === 'EU' && isSubstance && !row.eu;
  const words = [
    missing && 'not found in the Union list of May 2019',
    ...(market === 'EU' ? [eu, fema, us] : [us, fema, eu]),
  ].filter(Boolean);
  return { named: !missing, words: words.length > 0 ? words.join(' · ') : unlisted(isSubstance) };
}

function notInCatalogue({ natural }: JudgedMaterial): string {
  return natural ? unlisted(false) : 'not in the catalogue: look it up';
}

function unlisted(isSubstance: boolean): string {
  return isSubstance ? 'no list found; that is no ban' : 'oil or extract: no list of substances names it';
}
