/**
 * What the rules say about a drink, in a fixed order: may it be added at all → numeric limit of the drink's category →
 * acceptable daily intake of its group → threshold of toxicological concern. Nothing here certifies a drink: a result is
 * green ('within') only where a confirmed figure was found and everything counted against it was confirmed too.
 */
import { contributions, summed, type Contribution, type DrinkMaterial } from './exposure';
import { isConfirmed } from './figure';
import type { BanRow, ConcernRow, CramerClass, Figure, IntakeRow, Jurisdiction, LimitRow } from './figure';
import { stateOf, STATES, worstFirst } from './finding';
import type { Drinker, Finding, JudgedDrink, OtherDrinker, OtherIntake, State } from './finding';
import { speaksOf } from './plant';
import { exact, plus, scaled, type Measured } from '../number/measured';
import { Refusal } from '../text/refusal';

/** Everything the tables bring. */
export interface Rules {
  readonly bans: readonly BanRow[];
  readonly limits: readonly LimitRow[];
  readonly intakes: readonly IntakeRow[];
  readonly concerns: readonly ConcernRow[];
  readonly cramer: (cas: string) => { cramerClass: CramerClass; figure: Figure } | null;
  /** CAS numbers of which an authority said that no number is needed: no threshold of concern is asked of them. */
  readonly needless: readonly string[];
}

/**
 * All findings for a drink, in the order of the checks, worst first within a check.
 * Amounts of materials in mg per kg of drink; portion and body weight in kg, above 0. The amount of a finding is in the
 * finding's unit, also where no figure was found: what no one has judged is said in mg a day.
 * Source: that of each row, given as `figure`.
 * @throws Refusal when portion or body weight is not above 0
 */
export function checkDrink(input: {
  materials: readonly DrinkMaterial[];
  drink: JudgedDrink;
  drinker: Drinker;
  others?: readonly OtherDrinker[];
  jurisdiction: Jurisdiction;
  rules: Rules;
}): Finding[] {
  const { drinker, others = [] } = input;
  if ([drinker, ...others].some(({ drinkKgPerDay, bodyKg }) => !(drinkKgPerDay > 0 && bodyKg > 0)))
    throw new Refusal('portion and body weight are above zero');
  const parts = contributions(input.materials).filter((part) => part.mgPerKg.value > 0);
  const here = <Row extends { jurisdiction: Jurisdiction }>(row: Row) => row.jurisdiction === input.jurisdiction;
  return [
    ...bans(input.materials, input.rules.bans.filter(here), input.drink),
    ...limits(parts, input.rules.limits.filter(here), input.drink),
    ...intakes(parts, input.rules.intakes, { drinker, others }),
    ...concerns(parts, input.rules, { drinker, others }),
  ];
}

function bans(materials: readonly DrinkMaterial[], rows: readonly BanRow[], drink: JudgedDrink): Finding[] {
  return materials
    .filter((material) => material.mgPerKg.value > 0)
    .flatMap((material) =>
      rows
        .filter((row) => concernsMaterial(row, material) && !(row.unless === 'alcoholic' && drink.alcoholic))
        .map((row) => ({
          check: 'added' as const,
          state: 'prohibited' as const,
          what: material.name,
          amount: material.mgPerKg,
          fixed: material.fixed ? material.mgPerKg : exact(0),
          max: 0,
          unit: 'mg/kg' as const,
          from: contributions([{ ...material, constituents: [] }]),
          figure: row,
          rule: row.rule,
        })),
    );
}

function concernsMaterial(row: BanRow, material: DrinkMaterial): boolean {
  return speaksOf(row, material) || material.cas.some((cas) => row.cas.includes(cas));
}

function limits(parts: readonly Contribution[], rows: readonly LimitRow[], drink: JudgedDrink): Finding[] {
  const present = (cas: readonly string[]) => parts.some((part) => part.cas.some((one) => cas.includes(one)));
  const due = rows.filter((row) => summed(parts, row).from.length > 0 && (row.onlyWith ?? []).every(present));
  return [...grouped(due, (row) => row.what)]
    .flatMap((same) => {
      const inside = same.filter((row) => isAbout(row, drink));
      if (inside.length > 0) return inside.map((row) => againstLimit(parts, row, drink));
      const strict = same.find((row) => row.outside === 'not allowed') ?? same.find((row) => row.outside === 'ask');
      return strict ? [outsideOf(parts, strict)] : [];
    })
    .filter((finding) => finding !== null)
    .sort(worstFirst);
}

function isAbout(row: LimitRow, drink: JudgedDrink): boolean {
  const kind = row.drink === 'any' || (row.drink === 'alcoholic') === drink.alcoholic;
  const strength = row.abvBelow === undefined || drink.abv < row.abvBelow;
  const special = row.whereNot !== undefined && drink.traits.includes(row.whereNot);
  return kind && strength && !special && (row.where === undefined || drink.traits.includes(row.where));
}

function againstLimit(parts: readonly Contribution[], row: LimitRow, drink: JudgedDrink): Finding | null {
  const { total, fixed, from } = summed(parts, row);
  const toUnit = row.unit === 'mg/L' ? drink.density : 1; // mg/kg times kg/L; g/mL is kg/L
  const amount = scaled(total, toUnit);
  const state = row.effect === 'label' ? labelState(amount, row) : stateOf(amount, row.max, { figure: row, from });
  if (state === null) return null;
  const { what, max, unit } = row;
  const rule = row.note ?? '';
  return { check: 'limit', state, what, amount, fixed: scaled(fixed, toUnit), max, unit, from, figure: row, rule };
}

function outsideOf(parts: readonly Contribution[], row: LimitRow): Finding {
  const { total, fixed, from } = summed(parts, row);
  const banned = row.outside === 'not allowed';
  const rule = banned ? 'not named for this kind of drink: not allowed' : 'the text does not name this kind of drink';
  const state = banned ? 'over' : 'check';
  const max = banned ? 0 : null;
  return { check: 'limit', state, what: row.what, amount: total, fixed, max, unit: 'mg/kg', from, figure: row, rule };
}

function labelState(amount: Measured, row: LimitRow): State | null {
  return amount.value > row.max ? 'label' : null;
}

interface Drinkers {
  readonly drinker: Drinker;
  readonly others: readonly OtherDrinker[];
}

/** Body weight for which a figure per person is meant, kg: EFSA 2019 (TTC) counts adults of 60 kg. */
const PERSON_KG = 60;

function intakes(parts: readonly Contribution[], rows: readonly IntakeRow[], by: Drinkers): Finding[] {
  return rows
    .flatMap((row): Finding[] => {
      const { total, fixed, from } = summed(parts, row);
      if (from.length === 0) return [];
      const { drinkKgPerDay, bodyKg } = by.drinker;
      const perDay = drinkKgPerDay / (row.per === 'person' ? 1 : bodyKg);
      const amount = scaled(total, perDay);
      const perKg = row.max !== null && row.per === 'person' ? row.max / PERSON_KG : row.max;
      const others = perKg === null ? [] : othersOf(total.value, perKg, by.others);
      const state = row.max === null ? 'look' : stateOf(amount, row.max, { figure: row, from });
      const unit = row.per === 'person' ? 'mg/day' : 'mg/kg bw/day';
      const rule = `${row.body}: ${row.note ?? row.what}`;
      const { what, max } = row;
      const day = { amount, fixed: scaled(fixed, perDay), max, unit } as const;
      return [{ check: 'intake', state: withOthers(state, others), what, ...day, from, figure: row, rule, others }];
    })
    .sort(worstFirst);
}

/** What the others take in of `mgPerKg` of drink, times a maximum in mg per kg body weight and day. */
function othersOf(mgPerKg: number, maxPerKg: number, others: readonly OtherDrinker[]): OtherIntake[] {
  return others.map(({ who, drinkKgPerDay, bodyKg }) => ({
    who,
    times: (mgPerKg * drinkKgPerDay) / bodyKg / maxPerKg,
  }));
}

/** What passes for the drinker who is judged, and not for another, needs a look. */
function withOthers(state: State, others: readonly OtherIntake[]): State {
  const passes = STATES.indexOf(state) > STATES.indexOf('look');
  return passes && others.some(({ times }) => times > 1) ? 'look' : state;
}

function concerns(parts: readonly Contribution[], rules: Rules, by: Drinkers): Finding[] {
  const judged = new Set([...rules.intakes.flatMap((row) => row.cas), ...rules.needless]);
  const open = parts.filter(
    (part) => !(part.natural && bringsKnown(part, parts)) && !part.cas.some((cas) => judged.has(cas)),
  );
  return [...grouped(open, (part) => part.cas[0] ?? part.substance)]
    .map((same) => concernOf(same, rules, by))
    .sort(worstFirst);
}

function concernOf(same: readonly Contribution[], rules: Rules, { drinker, others }: Drinkers): Finding {
  const total = plus(...same.map((part) => part.mgPerKg));
  const fixed = plus(...same.filter((part) => part.fixed).map((part) => part.mgPerKg));
  const known = same[0]!.cas.map(rules.cramer).find((found) => found !== null);
  const row = known && rules.concerns.find((one) => one.cramerClass === known.cramerClass);
  const amount = scaled(total, drinker.drinkKgPerDay);
  const perDay = { amount, fixed: scaled(fixed, drinker.drinkKgPerDay), unit: 'mg/day' as const };
  const base = { check: 'concern' as const, what: same[0]!.substance, ...perDay, from: same };
  if (!known || !row) return { ...base, state: 'unknown', max: null, figure: null, rule: 'no class known' };
  const max = row.microgramPerPersonDay / 1000; // µg to mg
  const figure = isConfirmed(known.figure) ? row : known.figure; // a class from memory is not confirmed either
  const state = stateOf(amount, max, { figure, from: same });
  const theirs = othersOf(total.value, max / PERSON_KG, others);
  const rule = `Cramer class ${known.cramerClass}`;
  const told = withOthers(state === 'over' ? 'look' : state, theirs);
  return { ...base, state: told, max, figure: row, rule, others: theirs };
}

/** True when constituents of a natural material are counted, so that it is not judged as a whole. */
function bringsKnown(natural: Contribution, parts: readonly Contribution[]): boolean {
  return parts.some((part) => !part.asSuch && part.material === natural.material);
}

function grouped<T>(items: readonly T[], key: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return [...groups.values()];
}
