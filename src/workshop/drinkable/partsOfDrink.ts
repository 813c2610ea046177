import { ethanolDensity } from '../../core/liquid/ethanol';
import { CONCENTRATE, SUGAR, WATER } from '../../core/drink/batchPlan';
import { exact, plus, type Measured } from '../../core/number/measured';
import { massFraction, PPM, REFERENCE_TEMPERATURE } from '../../core/number/units';
import type { Batch, Weighed } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import type { Bottle } from '../../records/kind/material';
import type { Vial } from '../../records/kind/vial';
import { purityOf } from '../thing/purity';
import { find, shelf } from '../../records/shelf';
import { solvents } from '../../tables/solvents';
import { emulsifiers } from '../../tables/emulsion/emulsifiers';
import { acids, preservatives } from '../../tables/syrupAdditives';
import { syrupExtras } from '../../tables/keeping/syrupExtras';
import { weightingAgents } from '../../tables/emulsion/weightingAgents';
import { bottlesOf, carriersOf, ethanolOf, isCloudy, type Carrier } from '../thing/carrier';
import type { FinishedDrink, Part } from './judging';

/** Weighed for a drink without being judged. */
const PLAIN = [SUGAR, WATER, CONCENTRATE, 'ethanol', 'spirit', 'emulsion-water'];

/** CAS numbers of what is neither a material of the Shelf nor a solvent, by the id that it is weighed under. */
const NUMBERS: ReadonlyMap<string, string> = new Map([
  ...[...acids, ...preservatives, ...emulsifiers, ...syrupExtras].map(({ id, cas }) => [id, cas] as const),
  ...weightingAgents.map(({ cas }) => [`agent-${cas[0]}`, cas[0]!] as const),
]);

/** A drink as it was kept: what is in it, its strength and density, and what it is by how it was made. */
export interface KeptDrink {
  readonly parts: readonly Part[];
  /** Its strength without what is not known of it. */
  readonly drink: FinishedDrink;
  /** The most % ABV it may have: a solvent of which no one has said the alcohol counts as nothing but ethanol. */
  readonly mostAbv: number;
  readonly traits: Readonly<Record<string, string>>;
}

/** What is in a batch, from what was weighed and reached, mg per kg of drink; traits as they were said when it was made. */
export function partsOfBatch(batch: Batch): KeptDrink {
  const { litres, densityGPerMl, abv, emulsion, gas, brix } = batch.drink;
  const drinkG = litres.value * 1000 * densityGPerMl.value; // mL per L
  const share = pouredShare(batch.weighed);
  const inDrink = batch.weighed.map((one) => (one.into === 'concentrate' ? share : 1) * one.massG.value);
  const perKg = (grams: number) => exact((grams / drinkG) * PPM);
  const beside = batch.weighed.flatMap((one, i) =>
    isBeside(batch, one) ? [besideOf(one, inDrink[i]! * (one.share ?? 1))] : [],
  );
  const brought = batch.weighed.flatMap(({ source }, i) => {
    const vial = find('vial', source);
    return vial ? carriedBy(vial, inDrink[i]!) : [];
  });
  const carried = [...beside, ...brought, ...dilutedIn(batch, { inDrink, drinkG })];
  const gone = batch.weighed.reduce((sum, { source }, i) => sum + (isGone(source) ? inDrink[i]! : 0), 0);
  const materials = batch.reached.map(({ material, name, mgPerKg }): Part => {
    const bottles = batch.weighed.flatMap((one) => (one.id === material ? bottlesBehind(one.source, material) : []));
    return { id: material, name, mgPerKg, bottles };
  });
  const own = batch.weighed.flatMap((one, i): Part[] => {
    const bottles = bottlesBehind(one.source, one.id);
    return one.own
      ? [{ id: one.id, name: one.name, mgPerKg: perKg(inDrink[i]! * (one.share ?? 1)), fixed: true, bottles }]
      : [];
  });
  const said = Object.entries(batch.asked).filter(([key]) => key.startsWith('trait.'));
  const open = isWithoutOwn(batch) ? openIn(carried, true) + gone : 0;
  return {
    parts: merged([...materials, ...own, ...carried.filter(isJudged).map((one) => partOf(one, perKg))]),
    drink: { abv: abv.value, density: densityGPerMl.value },
    mostAbv: abv.value + percentVol(open, litres.value * 1000),
    traits: {
      'trait.cloudy': yesNo(emulsion),
      'trait.carbonated': yesNo((gas?.volumes ?? 0) > 0),
      'trait.no added sugar': yesNo(brix.value === 0),
      ...Object.fromEntries(said),
    },
  };
}

/** What is in a drink that was dosed, mg per kg of it. */
export function partsOfTasting(tasting: Tasting): KeptDrink {
  const { base, doses, reached } = tasting;
  const poured = doses.flatMap(({ vial, massG }) => {
    const known = find('vial', vial);
    return known ? [{ vial: known, grams: massG.value }] : [];
  });
  const dosedG = doses.reduce((sum, { massG }) => sum + massG.value, 0);
  const dosedMl = poured.reduce((sum, { vial, grams }) => sum + grams / vial.densityGPerMl, 0);
  const drinkG = base.volumeMl * base.densityGPerMl + dosedG;
  const drinkMl = base.volumeMl + dosedMl;
  const bottles = poured.flatMap(({ vial }) => bottlesOf(vial));
  const materials = reached.map(({ material, name, mgPerKg }): Part => {
    return { id: material, name, mgPerKg, bottles: bottles.filter((one) => one.material === material) };
  });
  const carried = poured.flatMap(({ vial, grams }) => carriedBy(vial, grams));
  const perKg = (grams: number) => exact((grams / drinkG) * PPM);
  const known = carried.reduce((sum, { grams, ethanol }) => sum + grams * (ethanol ?? 0), 0);
  const abv = tasting.abv?.value ?? (base.abv * base.volumeMl) / drinkMl + percentVol(known, drinkMl);
  const gone = doses.reduce((sum, { vial, massG }) => sum + (isGone(vial) ? massG.value : 0), 0);
  const open = isWithoutOwn(tasting) ? openIn(carried, tasting.abv !== undefined) + gone : 0;
  return {
    parts: merged([...materials, ...carried.filter(isJudged).map((one) => partOf(one, perKg))]),
    drink: { abv, density: drinkG / drinkMl },
    mostAbv: abv + percentVol(open, drinkMl),
    traits: { 'trait.cloudy': yesNo(poured.some(({ vial }) => isCloudy(vial))) },
  };
}

function yesNo(is: boolean): string {
  return is ? 'yes' : 'no';
}

/** g of the concentrate that went into the drink, per g of it that was made. */
export function pouredShare(weighed: readonly Weighed[]): number {
  const sum = (all: readonly Weighed[]) => all.reduce((grams, { massG }) => grams + massG.value, 0);
  const made = sum(weighed.filter(({ into }) => into === 'concentrate'));
  const poured = sum(weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate'));
  return made > 0 ? poured / made : 0;
}

/** A solvent, gum or agent in the drink; `ethanol` as in {@link Carrier}. */
interface Brought extends Omit<Carrier, 'share'> {
  readonly grams: number;
}

/** Whether what was weighed is a carrier or an additive: no material, and not sugar, water or spirit. */
function isBeside(batch: Batch, { id, own }: Weighed): boolean {
  return !own && !PLAIN.includes(id) && !batch.reached.some(({ material }) => material === id);
}

function besideOf({ id, name }: Weighed, grams: number): Brought {
  const cas = NUMBERS.get(id);
  return cas === undefined ? { id, name, grams, ethanol: ethanolOf({ id }) } : { id, name, grams, ethanol: 0, cas };
}

function partOf({ id, name, cas, grams }: Brought, perKg: (grams: number) => Measured): Part {
  return { id, name, mgPerKg: perKg(grams), carrier: true, ...(cas === undefined ? {} : { cas }) };
}

/** Alcohol is not judged as a part: it is counted in the strength. */
function isJudged({ ethanol }: Brought): boolean {
  return ethanol === 0 || ethanol === null;
}

/** Whether the strength that was kept may lack that of a solvent: one of which no one had said it, or in the first version any of the person's own. */
function isWithoutOwn(record: Batch | Tasting): boolean {
  const isOfFirstVersion = record.uses.some(({ how }) => how === undefined);
  return isOfFirstVersion || (record.kind === 'batch' ? record.drink.abvUnknown === true : !record.abv);
}

/**
 * g of ethanol that a strength may lack: all of a solvent of which no one has said the alcohol, none of one that holds none, and
 * of the person's own what was said since, where it was not counted.
 */
function openIn(all: readonly Brought[], isOwnOpen: boolean): number {
  const isOwn = ({ id }: Brought) => !solvents.some((row) => row.id === id);
  const open = all.filter((one) => one.ethanol === null || (isOwnOpen && isOwn(one)));
  return open.reduce((sum, { grams, ethanol }) => sum + grams * (ethanol ?? 1), 0);
}

/** Whether a vial or bottle is no longer on the Shelf, so that nothing is known of what it was in. */
function isGone(id: string | null): boolean {
  return id !== null && !shelf.records.value.has(id);
}

/** % vol that so many g of ethanol make in so many mL. */
function percentVol(ethanolG: number, ml: number): number {
  return (100 * ethanolG) / ethanolDensity(massFraction(1), REFERENCE_TEMPERATURE) / ml;
}

/** What is less than this share of what was weighed is no carrier, g/g: rounding, or a purity that was known otherwise then. */
const ROUNDING = 0.03;

/** The carrier in which materials were diluted to be weighed: what of their grams is not the material. */
function dilutedIn(batch: Batch, { inDrink, drinkG }: { inDrink: readonly number[]; drinkG: number }): Brought[] {
  const carrier = batch.weighed.find(({ id, into }) => into === 'concentrate' && id === batch.asked['carrier']);
  if (!carrier) return [];
  return batch.reached.flatMap(({ material, mgPerKg }) => {
    const own = batch.weighed.flatMap((one, i) => (one.id === material ? { ...one, grams: inDrink[i]! } : []));
    if (own.some(({ source }) => find('vial', source))) return [];
    const bottle = find('bottle', own[0]?.source);
    const purity = bottle ? (bottle.purity ?? purityOf(bottle, find('material', material)).value) : 1;
    const neat = (mgPerKg.value * drinkG) / PPM / purity;
    const all = own.reduce((sum, { grams }) => sum + grams, 0);
    const rest = all - neat;
    const { id, name } = carrier;
    return rest > ROUNDING * all ? [{ id, name, ethanol: ethanolOf({ id }), grams: rest }] : [];
  });
}

/** Solvents, gum and weighting agent in so many g of a vial. */
function carriedBy(vial: Vial, grams: number): Brought[] {
  return carriersOf(vial).map(({ share, ...one }) => ({ ...one, grams: share * grams }));
}

function bottlesBehind(source: string | null, material: string): Bottle[] {
  const bottle = find('bottle', source);
  if (bottle) return [bottle];
  const vial = find('vial', source);
  return vial ? bottlesOf(vial).filter((one) => one.material === material) : [];
}

/** Each id once, with all of it. */
function merged(parts: readonly Part[]): Part[] {
  const all = new Map<string, Part>();
  for (const part of parts) {
    const before = all.get(part.id);
    all.set(part.id, before ? { ...before, mgPerKg: plus(before.mgPerKg, part.mgPerKg) } : part);
  }
  return [...all.values()];
}
