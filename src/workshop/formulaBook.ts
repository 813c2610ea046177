import { costPerLitre, differences, sharesOf, suppliesFor, type Stock } from '../core/drink/formula';
import { gram, massFraction } from '../core/number/units';
import type { Formula } from '../records/kind/formula';
import { list } from '../records/shelf';
import { formatPlain } from '../ui/format';
import { dropOf } from './dropMass';
import { liquidOfVial } from './onHand';
import { sourcesOf, whyNotNow } from './sources';
import { tagOf } from './thing/labelled';

/** What is asked of a formula: dose, mg/kg; concentrate, g/L; drink, L and g/mL; a glass, mL. */
export interface FormulaUse {
  readonly mgPerKg: number;
  readonly gramsPerL: number;
  readonly litres: number;
  readonly densityGPerMl: number;
  readonly glassMl: number;
}

/** One line as it is used. */
export interface UsedLine {
  readonly material: string;
  readonly name: string;
  /** g/g of the formula, and of the concentrate. */
  readonly share: number;
  readonly inConcentrate: number;
  readonly mgPerKg: number;
  /** g for all of the drink. */
  readonly grams: number;
  /** Drops of the vials on the Shelf for the glass, in words; smell-only vials are not among them. */
  readonly drops: readonly string[];
  /** Bottles it comes from, and what is missing, in words. */
  readonly bottles: readonly string[];
}

/** All versions of a formula, oldest first. */
export function versionsOf({ root }: Formula): Formula[] {
  return list('formula')
    .filter((one) => one.root === root)
    .sort((a, b) => a.version - b.version);
}

/** A version beside the one before it: shares in %, as text. */
export function besides(before: Formula, after: Formula) {
  const nameOf = (id: string) => [...after.lines, ...before.lines].find(({ material }) => material === id)!.name;
  return differences(before.lines, after.lines).map((line) => ({
    name: nameOf(line.id),
    before: line.before === 0 ? 'not in it' : `${formatPlain(line.before * 100, 3)} %`,
    after: line.after === 0 ? 'taken out' : `${formatPlain(line.after * 100, 3)} %`,
  }));
}

/** The lines of a formula as they are used. */
export function usedLines(formula: Formula, use: FormulaUse): UsedLine[] {
  const mgPerL = use.mgPerKg * use.densityGPerMl;
  const lines = sharesOf(formula.lines).map(({ id, share }) => ({
    id,
    share,
    grams: (share * mgPerL * use.litres) / 1000,
  }));
  const supplies = suppliesFor(
    lines.map(({ id, grams }) => ({ id, mass: gram(grams) })),
    lines.flatMap(({ id }) => stockOf(id)),
  );
  return lines.map(({ id, share, grams }, i) => ({
    material: id,
    name: formula.lines.find(({ material }) => material === id)!.name,
    share,
    grams,
    mgPerKg: share * use.mgPerKg,
    inConcentrate: massFraction((share * mgPerL) / (use.gramsPerL * 1000)),
    drops: dropsOf(id, share * use.mgPerKg, use),
    bottles: bottleWords(id, supplies[i]!),
  }));
}

/** Cost of the formula in a litre of drink, in the currency of the prices, and what has no price. */
export function costOf(formula: Formula, use: FormulaUse): { cost: number; unpriced: string[] } {
  const price = (material: string) =>
    sourcesOf(material).find(({ refusal, pricePerG }) => !refusal && pricePerG !== null)?.pricePerG ?? undefined;
  const { cost, unpriced } = costPerLitre(formula.lines, use.mgPerKg * use.densityGPerMl, price);
  return { cost, unpriced: unpriced.map((id) => formula.lines.find(({ material }) => material === id)!.name) };
}

/** Bottles that may be taken by themselves for a drink, whose rest is known. */
function stockOf(material: string): Stock[] {
  return sourcesOf(material).flatMap((source) => {
    const { id, bottle, leftG } = source;
    return bottle && leftG !== null && whyNotNow(source) === null ? [{ id, material, left: gram(leftG) }] : [];
  });
}

function bottleWords(material: string, supply: ReturnType<typeof suppliesFor>[number]): string[] {
  const sources = sourcesOf(material).filter(({ bottle, refusal }) => bottle && !refusal);
  if (sources.length === 0) return ['no bottle fit for drinks'];
  const taken = supply.from.map(({ bottle, mass, left }) => {
    const words = sources.find(({ id }) => id === bottle)!.words;
    return `${words}: ${formatPlain(mass, 3)} g, then ${formatPlain(left, 3)} g left`;
  });
  const unknown = sources
    .filter((one) => one.leftG === null && whyNotNow(one) === null)
    .map(({ words }) => `${words}: rest not known`);
  const missing = supply.missing > 0 && unknown.length === 0 ? [`${formatPlain(supply.missing, 3)} g missing`] : [];
  const notTaken = sources.flatMap((source) => {
    const why = whyNotNow(source);
    return why === null ? [] : [`${source.words}: ${why}`];
  });
  return [...taken, ...unknown, ...missing, ...notTaken];
}

/** Drops for a glass from the first dropper of one's own, or a typical drop; at most three vials. */
function dropsOf(material: string, mgPerKg: number, use: FormulaUse): string[] {
  const dropper = list('dropper')[0]?.id ?? 'typical';
  const mg = (mgPerKg * use.glassMl * use.densityGPerMl) / 1000; // g of drink per kg
  return sourcesOf(material)
    .flatMap((source) => {
      const { vial, strength } = source;
      if (!vial || whyNotNow(source) !== null) return [];
      const drop = dropOf(dropper, liquidOfVial(vial));
      const drops = mg / (drop.mgPerDrop.value * strength.value);
      const many = formatPlain(drops, 2);
      return [`${many === '1' ? '1 drop' : `${many} drops`} ${tagOf(vial)}${drop.calibrated ? '' : ' (typical)'}`];
    })
    .slice(0, 3);
}
