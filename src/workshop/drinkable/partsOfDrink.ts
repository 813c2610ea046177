import { CONCENTRATE, SUGAR, WATER } from '../../core/drink/batchPlan';
import { exact, plus } from '../../core/number/measured';
import { PPM } from '../../core/number/units';
import type { Batch, Weighed } from '../../records/kind/batch';
import type { Tasting } from '../../records/kind/drink';
import type { Bottle } from '../../records/kind/material';
import type { Vial } from '../../records/kind/vial';
import { find } from '../../records/shelf';
import { acids, gumArabic, preservatives } from '../../tables/syrupAdditives';
import { weightingAgents } from '../../tables/weightingAgents';
import { bottlesOf, carriersOf, isCloudy } from '../thing/carrier';
import type { FinishedDrink, Part } from './judging';

/** Weighed for a drink without being judged. */
const PLAIN = [SUGAR, WATER, CONCENTRATE, 'ethanol', 'spirit', 'emulsion-water'];

/** CAS numbers of what is neither a material of the Shelf nor a solvent, by the id that it is weighed under. */
const NUMBERS: ReadonlyMap<string, string> = new Map([
  ...[...acids, ...preservatives, gumArabic].map(({ id, cas }) => [id, cas] as const),
  ...weightingAgents.map(({ cas }) => [`agent-${cas[0]}`, cas[0]!] as const),
]);

/** A drink as it was kept: what is in it, its strength and density, and what it is by how it was made. */
export interface KeptDrink {
  readonly parts: readonly Part[];
  readonly drink: FinishedDrink;
  readonly traits: Readonly<Record<string, string>>;
}

/** What is in a batch, from what was weighed and reached, mg per kg of drink; traits as they were said when it was made. */
export function partsOfBatch(batch: Batch): KeptDrink {
  const { litres, densityGPerMl, abv, emulsion, gas, brix } = batch.drink;
  const drinkG = litres.value * 1000 * densityGPerMl.value; // mL per L
  const share = pouredShare(batch.weighed);
  const inDrink = batch.weighed.map((one) => (one.into === 'concentrate' ? share : 1) * one.massG.value);
  const perKg = (grams: number) => exact((grams / drinkG) * PPM);
  const beside = batch.weighed.flatMap((one, i): Part[] => {
    if (PLAIN.includes(one.id) || batch.reached.some(({ material }) => material === one.id)) return [];
    const cas = NUMBERS.get(one.id);
    return [{ id: one.id, name: one.name, mgPerKg: perKg(inDrink[i]!), carrier: true, ...(cas ? { cas } : {}) }];
  });
  const brought = batch.weighed.flatMap(({ source }, i) => {
    const vial = find('vial', source);
    return vial ? carriedBy(vial, inDrink[i]!) : [];
  });
  const carried = [...brought, ...dilutedIn(batch, { inDrink, drinkG })].map(({ grams, ...one }): Part => {
    return { ...one, mgPerKg: perKg(grams), carrier: true };
  });
  const materials = batch.reached.map(({ material, name, mgPerKg }): Part => {
    const bottles = batch.weighed.flatMap((one) => (one.id === material ? bottlesBehind(one.source, material) : []));
    return { id: material, name, mgPerKg, bottles };
  });
  const said = Object.entries(batch.asked).filter(([key]) => key.startsWith('trait.'));
  return {
    parts: merged([...materials, ...beside, ...carried]),
    drink: { abv: abv.value, density: densityGPerMl.value },
    traits: {
      'trait.cloudy': yesNo(emulsion),
      'trait.carbonated': yesNo((gas?.volumes ?? 0) > 0),
      'trait.no added sugar': yesNo(brix.value === 0),
      ...Object.fromEntries(said),
    },
  };
}

/** What is in a drink that was dosed, mg per kg of it. */
export function partsOfTasting({ base, doses, reached, abv }: Tasting): KeptDrink {
  const poured = doses.flatMap(({ vial, massG }) => {
    const known = find('vial', vial);
    return known ? [{ vial: known, grams: massG.value }] : [];
  });
  const dosedG = doses.reduce((sum, { massG }) => sum + massG.value, 0);
  const dosedMl = poured.reduce((sum, { vial, grams }) => sum + grams / vial.densityGPerMl, 0);
  const drinkG = base.volumeMl * base.densityGPerMl + dosedG;
  const bottles = poured.flatMap(({ vial }) => bottlesOf(vial));
  const materials = reached.map(({ material, name, mgPerKg }): Part => {
    return { id: material, name, mgPerKg, bottles: bottles.filter((one) => one.material === material) };
  });
  const carried = poured
    .flatMap(({ vial, grams }) => carriedBy(vial, grams))
    .map(({ grams, ...one }): Part => {
      return { ...one, mgPerKg: exact((grams / drinkG) * PPM), carrier: true };
    });
  return {
    parts: merged([...materials, ...carried]),
    drink: { abv: abv?.value ?? base.abv, density: drinkG / (base.volumeMl + dosedMl) },
    traits: { 'trait.cloudy': yesNo(poured.some(({ vial }) => isCloudy(vial))) },
  };
}

function yesNo(is: boolean): string {
  return is ? 'yes' : 'no';
}

/** g of the concentrate that went into the drink, per g of it that was made. */
function pouredShare(weighed: readonly Weighed[]): number {
  const sum = (all: readonly Weighed[]) => all.reduce((grams, { massG }) => grams + massG.value, 0);
  const made = sum(weighed.filter(({ into }) => into === 'concentrate'));
  const poured = sum(weighed.filter(({ id, into }) => id === CONCENTRATE && into !== 'concentrate'));
  return made > 0 ? poured / made : 0;
}

interface Brought {
  readonly id: string;
  readonly name: string;
  readonly cas?: string;
  readonly grams: number;
}

/** The carrier in which materials were diluted to be weighed: what of their grams is not the material. */
function dilutedIn(batch: Batch, { inDrink, drinkG }: { inDrink: readonly number[]; drinkG: number }): Brought[] {
  const carrier = batch.weighed.find(({ id, into }) => into === 'concentrate' && id === batch.asked['carrier']);
  if (!carrier) return [];
  return batch.reached.flatMap(({ material, mgPerKg }) => {
    const own = batch.weighed.flatMap((one, i) => (one.id === material ? { ...one, grams: inDrink[i]! } : []));
    if (own.some(({ source }) => find('vial', source))) return [];
    const purity = find('bottle', own[0]?.source)?.purity ?? 1;
    const neat = (mgPerKg.value * drinkG) / PPM / purity;
    const rest = own.reduce((sum, { grams }) => sum + grams, 0) - neat;
    return rest > 0 ? [{ id: carrier.id, name: carrier.name, grams: rest }] : [];
  });
}

/** Solvents without ethanol, gum and weighting agent in so many g of a vial. */
function carriedBy(vial: Vial, grams: number): Brought[] {
  return carriersOf(vial)
    .filter(({ ethanol }) => ethanol === 0 || ethanol === null)
    .map(({ id, name, cas, share }) => ({ id, name, grams: share * grams, ...(cas === undefined ? {} : { cas }) }));
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
