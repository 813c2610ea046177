import { contributions, worstConstituents, type Constituent, type DrinkMaterial } from '../../core/limits/exposure';
import { rowsAbout } from '../../core/limits/plant';
import type { Jurisdiction, Trait } from '../../core/limits/figure';
import type { Finding } from '../../core/limits/finding';
import { ceilings, type Ceiling } from '../../core/limits/highestDose';
import { checkDrink } from '../../core/limits/limits';
import type { Measured } from '../../core/number/measured';
import { gramPerMl, massFraction } from '../../core/number/units';
import type { Bottle } from '../../records/kind/material';
import { find, shelf } from '../../records/shelf';
import { constituents } from '../../tables/constituents';
import { solvents } from '../../tables/solvents';
import { amount, choice, optionalAmount, textOf, valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { rules } from '../../workshop/limitRules';

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

/** What the rules say of a drink, and what they could not be asked. */
export interface Judgement {
  readonly findings: readonly Finding[];
  /** Lowest first; those of a concern threshold are apart, since they only ask for a look. */
  readonly ceilings: readonly Ceiling[];
  readonly looks: readonly Ceiling[];
  /** Names without a CAS number of which the tables know no content by the plant either: nothing can be looked up for them. */
  readonly silent: readonly string[];
  /** Traits of the drink on which a figure for something in it depends. */
  readonly traits: readonly Trait[];
  /** Those of all traits that the drink was judged with. */
  readonly has: readonly Trait[];
  /** What is counted for natural materials, by material id. */
  readonly counted: readonly { id: string; name: string; constituent: Constituent }[];
}

/** EU: drinks above 1.2 % vol must state their strength; US: from 0.5 % they are alcoholic. Our reading, from memory. */
const ALCOHOLIC: Readonly<Record<Jurisdiction, number>> = { EU: 1.2, US: 0.5 };

/** The questions of the limits panel. Shares of a certificate and traits are kept under keys of their own. */
export const judgeFields = {
  /** Stands on what the settings say, until it is switched in the run. */
  get jurisdiction() {
    return choice({
      name: 'jurisdiction',
      title: 'Rules of',
      preset: shelf.settings.value.jurisdiction ?? 'EU',
      options: [
        { value: 'EU', label: 'EU' },
        { value: 'US', label: 'US' },
      ],
    });
  },
  portion: amount({ name: 'portion', title: 'Drunk in a day', unit: 'g', above: 0, max: 10_000, preset: '300' }),
  body: amount({ name: 'body', title: 'Body weight', unit: 'kg', above: 0, max: 500, preset: '60' }),
  certificate: (material: string, constituent: { cas: string; name: string }) =>
    optionalAmount({
      name: `cert.${material}.${constituent.cas}`,
      title: constituent.name,
      unit: '% w/w',
      min: 0,
      max: 100,
    }),
};

const LOT = 'certificate of the lot';

/** Key under which a trait is typed, 'yes' or 'no'. */
export function traitKey(trait: Trait): string {
  return `trait.${trait}`;
}

/** What the rules say of the parts of a drink; null while portion or body weight is not a number. */
export function judge(run: RunState, parts: readonly Part[], drink: FinishedDrink): Judgement | null {
  const [portion, body] = [valueOf(run, judgeFields.portion), valueOf(run, judgeFields.body)];
  if (portion === null || body === null) return null;
  const jurisdiction = textOf(run, judgeFields.jurisdiction) as Jurisdiction;
  const judged = parts.flatMap((part) => materialOf(run, part) ?? []);
  const materials = judged.filter(({ cas, botanical }) => cas.length > 0 || botanical !== undefined);
  const asked = new Set(rules.limits.flatMap(({ where }) => where ?? []));
  const has = [...asked].filter((trait) => run.typed[traitKey(trait)] === 'yes');
  const findings = checkDrink({
    materials,
    drink: {
      abv: drink.abv,
      density: gramPerMl(drink.density),
      alcoholic: drink.abv > ALCOHOLIC[jurisdiction],
      traits: has,
    },
    drinker: { drinkKgPerDay: portion / 1000, bodyKg: body },
    jurisdiction,
    rules,
  });
  const dosed = parts.filter(({ fixed, carrier }) => !fixed && !carrier);
  const total = dosed.reduce((sum, one) => sum + one.mgPerKg.value, 0);
  const all = total > 0 ? ceilings(findings, total) : [];
  return {
    findings,
    ceilings: all.filter(({ finding }) => finding.check !== 'concern'),
    looks: all.filter(({ finding }) => finding.check === 'concern'),
    silent: [...new Set(judged.filter(nothingKnown).map(({ name }) => name))],
    traits: traitsFor(materials, jurisdiction),
    has,
    counted: [...new Map(judged.map((one) => [one.id, one])).values()].flatMap(({ id, name, constituents: held }) =>
      held.map((constituent) => ({ id, name, constituent })),
    ),
  };
}

function nothingKnown({ cas, constituents: held }: DrinkMaterial): boolean {
  return cas.length === 0 && held.length === 0;
}

/** A part with its CAS number, its plant and what it brings; null for water and ethanol, which are not judged. */
function materialOf(run: RunState, part: Part): DrinkMaterial | null {
  const solvent = solvents.find(({ id }) => id === part.id);
  if (solvent && (solvent.ethanol.value > 0 || solvent.id === 'water')) return null;
  const material = find('material', part.id);
  const cas = (part.cas ?? solvent?.cas ?? material?.cas ?? '').trim();
  const plant = material ? { name: material.name, botanical: material.botanical, part: material.part } : {};
  const published = rowsAbout(constituents, { ...plant, cas });
  const own = find('bottle', part.bottle);
  const certificate = [...lotLines(part.bottles ?? (own ? [own] : [])), ...typedLines(run, part.id, published)];
  const counted = worstConstituents({ published, certificate });
  const natural = material?.sort === 'natural';
  const { botanical, part: ofPlant } = plant;
  const latin = botanical ? { botanical, ...(ofPlant ? { part: ofPlant } : {}) } : {};
  return { ...part, ...latin, cas: cas === '' ? [] : [cas], constituents: counted, natural };
}

type Line = Parameters<typeof worstConstituents>[0]['certificate'][number];

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

/** What was typed from a certificate in this run. */
function typedLines(run: RunState, id: string, published: readonly { cas: string; name: string }[]): Line[] {
  return published.flatMap(({ cas, name }) => {
    const percent = valueOf(run, judgeFields.certificate(id, { cas, name }));
    return percent === null ? [] : [{ cas, name, share: massFraction(percent / 100), from: LOT }];
  });
}

function traitsFor(materials: readonly DrinkMaterial[], jurisdiction: Jurisdiction): Trait[] {
  const present = new Set(contributions(materials).flatMap(({ cas }) => cas));
  const rows = rules.limits.filter(
    (row) => row.jurisdiction === jurisdiction && row.cas.some((cas) => present.has(cas)),
  );
  return [...new Set(rows.flatMap(({ where }) => (where ? [where] : [])))];
}
