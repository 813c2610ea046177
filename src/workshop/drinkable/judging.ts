import {
  contributions,
  summed,
  worstConstituents,
  type Constituent,
  type DrinkMaterial,
} from '../../core/limits/exposure';
import type { Jurisdiction, Trait } from '../../core/limits/figure';
import type { Finding, OtherDrinker } from '../../core/limits/finding';
import { ceilings, type Ceiling } from '../../core/limits/highestDose';
import { checkDrink } from '../../core/limits/limits';
import { rowsAbout } from '../../core/limits/plant';
import { sharedSubstances, unknownShare, type SharedSubstance } from '../../core/limits/totals';
import type { Measured } from '../../core/number/measured';
import { gramPerMl, massFraction } from '../../core/number/units';
import type { Bottle } from '../../records/kind/material';
import { find } from '../../records/shelf';
import { constituents } from '../../tables/constituents';
import { drinkers } from '../../tables/drinkers';
import { solvents } from '../../tables/solvents';
import { rules } from './limitRules';
import { traitsByContent } from './traits';

/** A material or a solvent in a drink, mg per kg. `fixed` where it does not follow the dose that is looked at. */
export interface Part {
  readonly id: string;
  readonly name: string;
  readonly mgPerKg: Measured;
  readonly fixed?: boolean;
  /** A solvent that came along: judged too, but not part of what is dosed. */
  readonly carrier?: boolean;
  /** All bottles that it came from, where they may be several. */
  readonly bottles?: readonly Bottle[];
  /** CAS number of what is neither a material of the Shelf nor a solvent: acid, preservative, gum. */
  readonly cas?: string;
  /** Id of the bottle it comes from: what its certificate says of constituents is counted. */
  readonly bottle?: string;
}

/** The finished drink, % ABV and g/mL. */
export interface FinishedDrink {
  readonly abv: number;
  readonly density: number;
}

/** Where a content of a certificate comes from, in words. */
export const LOT = 'certificate of the lot';

/** A content from a certificate, g/g. */
export type Line = Parameters<typeof worstConstituents>[0]['certificate'][number];

/** Whose rules, for whom, and what is said of the drink and its lots. */
export interface Asked {
  readonly jurisdiction: Jurisdiction;
  /** g of drink in a day, and kg, both above 0. */
  readonly portionG: number;
  readonly bodyKg: number;
  /** 'yes' or 'no' where someone said so; else what is in the drink decides. */
  readonly saidOf: (trait: Trait) => string | undefined;
  /** What was typed from certificates of a material, beside those on its bottles. */
  readonly typed?: (material: string, published: readonly { cas: string; name: string }[]) => readonly Line[];
}

/** A material of a drink as it was judged. */
export interface JudgedMaterial extends DrinkMaterial {
  readonly carrier?: boolean;
}

/** What the rules say of a drink, and what they could not be asked. */
export interface Judgement {
  readonly findings: readonly Finding[];
  readonly jurisdiction: Jurisdiction;
  /** Everything that was judged; the same material may stand in it more than once. */
  readonly materials: readonly JudgedMaterial[];
  /** Lowest first; not those of a threshold of concern, which only asks for a look. */
  readonly ceilings: readonly Ceiling[];
  /** Names without a CAS number of which no content is known either: nothing can be looked up for them. */
  readonly silent: readonly string[];
  /** Substances that several materials bring, added up. */
  readonly shared: readonly SharedSubstance[];
  /** Share of what is dosed of which nothing is known, g/g. */
  readonly unknown: number;
  /** Traits of the drink on which a figure for something in it depends. */
  readonly traits: readonly Trait[];
  /** Those of all traits that the drink was judged with. */
  readonly has: readonly Trait[];
  /** Of those, what is so by what is in the drink, and what that is. */
  readonly because: ReadonlyMap<Trait, string>;
  /** What is counted for natural materials, by material id. */
  readonly counted: readonly { id: string; name: string; constituent: Constituent }[];
}

/** Whether a drink of that % ABV counts as alcoholic. EU: above 1.2 % its strength is stated; US: from 0.5 %. Our reading, from memory. */
const ALCOHOLIC: Readonly<Record<Jurisdiction, (abv: number) => boolean>> = {
  EU: (abv) => abv > 1.2,
  US: (abv) => abv >= 0.5,
};

/** The findings alone: what lists and labels ask. */
export function findingsOf(parts: readonly Part[], drink: FinishedDrink, asked: Asked): Finding[] {
  return judgedWith(parts, drink, asked).findings;
}

/** What the rules say of the parts of a drink, with all that a panel shows beside it. */
export function judgeParts(parts: readonly Part[], drink: FinishedDrink, asked: Asked): Judgement {
  const { judged, materials, because, has, findings } = judgedWith(parts, drink, asked);
  const { jurisdiction } = asked;
  const dosed = judged.filter(({ fixed, carrier }) => !fixed && !carrier);
  const total = dosed.reduce((sum, one) => sum + one.mgPerKg.value, 0);
  const all = total > 0 ? ceilings(findings, total) : [];
  return {
    findings,
    jurisdiction,
    materials: judged,
    ceilings: all.filter(({ finding }) => finding.check !== 'concern'),
    silent: [...new Set(judged.filter(nothingKnown).map(({ name }) => name))],
    shared: sharedSubstances(materials),
    unknown: unknownShare(dosed),
    traits: traitsFor(materials, jurisdiction),
    has,
    because,
    counted: [...new Map(judged.map((one) => [one.id, one])).values()].flatMap(({ id, name, constituents: held }) =>
      held.map((constituent) => ({ id, name, constituent })),
    ),
  };
}

function judgedWith(parts: readonly Part[], drink: FinishedDrink, asked: Asked) {
  const { jurisdiction } = asked;
  const judged = parts.flatMap((part) => materialOf(part, asked) ?? []);
  const materials = judged.filter((one) => one.botanical !== undefined || !nothingKnown(one));
  const because = traitsByContent(materials.filter(({ mgPerKg }) => mgPerKg.value > 0));
  const has = TRAITS.filter((trait) => (asked.saidOf(trait) ?? (because.has(trait) ? 'yes' : 'no')) === 'yes');
  const alcoholic = ALCOHOLIC[jurisdiction](drink.abv);
  const findings = checkDrink({
    materials,
    drink: { abv: drink.abv, density: gramPerMl(drink.density), alcoholic, traits: has },
    drinker: { drinkKgPerDay: asked.portionG / 1000, bodyKg: asked.bodyKg },
    others: othersFor(asked, alcoholic),
    jurisdiction,
    rules,
  });
  return { judged, materials, because, has, findings };
}

/** Looks up mg per kg of drink of the substances with some CAS numbers, as such or as constituents at their worst; nothing typed from a certificate is in it. */
export function heldIn(parts: readonly Part[]): (cas: readonly string[]) => number {
  const all = contributions(parts.flatMap((part) => materialOf(part, {}) ?? []));
  return (cas) => summed(all, { cas }).total.value;
}

/** What the limits ask about a drink. */
const TRAITS = [...new Set(rules.limits.flatMap(({ where }) => where ?? []))];

/** Who else drinks it; a child only where it holds no alcohol. */
function othersFor({ portionG, bodyKg }: Asked, alcoholic: boolean): OtherDrinker[] {
  return drinkers
    .filter(({ alcoholToo }) => alcoholToo || !alcoholic)
    .map(({ who, portions, bodyKg: own }) => ({
      who,
      drinkKgPerDay: (portions * portionG) / 1000,
      bodyKg: own ?? bodyKg,
    }));
}

function nothingKnown({ cas, constituents: held }: DrinkMaterial): boolean {
  return cas.length === 0 && held.length === 0;
}

/** A part with its CAS number, its plant and what it brings; null for water and ethanol, which are not judged. */
function materialOf(part: Part, { typed }: Pick<Asked, 'typed'>): JudgedMaterial | null {
  const solvent = solvents.find(({ id }) => id === part.id);
  if (solvent && (solvent.ethanol.value > 0 || solvent.id === 'water')) return null;
  const material = find('material', part.id);
  const cas = (part.cas ?? solvent?.cas ?? material?.cas ?? '').trim();
  const plant = material ? { name: material.name, botanical: material.botanical, part: material.part } : {};
  const published = rowsAbout(constituents, { ...plant, cas });
  const own = find('bottle', part.bottle);
  const certificate = [...lotLines(part.bottles ?? (own ? [own] : [])), ...(typed?.(part.id, published) ?? [])];
  const counted = worstConstituents({ published, certificate });
  const natural = material?.sort === 'natural';
  const { botanical, part: ofPlant } = plant;
  const latin = botanical ? { botanical, ...(ofPlant ? { part: ofPlant } : {}) } : {};
  return { ...part, ...latin, cas: cas === '' ? [] : [cas], constituents: counted, natural };
}

/** What the certificates of bottles give: a constituent counts when every bottle tells it, and then at the highest of them. */
function lotLines(bottles: readonly Bottle[]): Line[] {
  const told = bottles.flatMap((bottle) => bottle.constituents ?? []);
  return [...new Set(told.map(({ cas }) => cas))].flatMap((cas) => {
    const same = told.filter((line) => line.cas === cas);
    const all = bottles.every((bottle) => bottle.constituents?.some((line) => line.cas === cas));
    const share = massFraction(Math.max(...same.map((line) => line.share)));
    return all ? [{ cas, name: same[0]!.name, share, from: LOT }] : [];
  });
}

function traitsFor(materials: readonly DrinkMaterial[], jurisdiction: Jurisdiction): Trait[] {
  const present = new Set(contributions(materials).flatMap(({ cas }) => cas));
  const rows = rules.limits.filter(
    (row) => row.jurisdiction === jurisdiction && row.cas.some((cas) => present.has(cas)),
  );
  return [...new Set(rows.flatMap(({ where }) => (where ? [where] : [])))];
}
