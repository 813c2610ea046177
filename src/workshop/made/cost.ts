import { CONCENTRATE } from '../../core/drink/batchPlan';
import { carbonDioxidePerLitre } from '../../core/liquid/carbonation';
import type { Batch } from '../../records/kind/batch';
import { find, shelf } from '../../records/shelf';
import { filledOf } from './bottles';

/** Keys of prices that are no goods: a bottle with lid and label, each. */
export const BOTTLE = 'bottle';
export const GAS = 'carbon-dioxide';

/** One line of what a batch costs: g or pieces, price of one of them, null where none is known. */
export interface CostLine {
  readonly id: string;
  readonly name: string;
  readonly amount: number;
  readonly unit: 'g' | 'pieces';
  readonly price: number | null;
  /** Where its price is: on the bottle, or among the prices of the settings, which are per kg or piece. */
  readonly by: 'bottle' | 'settings';
}

/** All that a batch took, with what it costs: bottles by their own price, the rest by those of the settings, and gas and bottles. */
export function costLines(batch: Batch): CostLine[] {
  return merged([...usedLines(batch), ...plainLines(batch), ...gasLine(batch), ...bottleLine(batch)]);
}

/** In the money of the prices: all of it, and what has no price. */
export function costOfBatch(batch: Batch): { all: number; perLitre: number; perBottle: number | null; open: string[] } {
  const lines = costLines(batch);
  const all = lines.reduce((sum, { amount, price }) => sum + amount * (price ?? 0), 0);
  const { count, litres } = filledOf(batch);
  const perLitre = all / batch.drink.litres.value;
  return {
    all,
    perLitre,
    perBottle: count === 0 ? null : (perLitre * litres) / count,
    open: lines.flatMap(({ name, price }) => (price === null ? [name] : [])),
  };
}

/** What came from bottles and vials of the Shelf, what was lost included. */
function usedLines({ uses }: Batch): CostLine[] {
  return uses.map(({ id, massG, name = id, code }): CostLine => {
    const solvent = find('supply', id)?.solvent;
    if (solvent !== undefined) return byKilo(solvent, name, massG);
    return { id, name: code ?? name, amount: massG, unit: 'g', price: pricePerGram(id), by: 'bottle' };
  });
}

/** What was weighed from nothing of the Shelf: sugar, water, acid, spirit; and the carrier in which something was diluted to be weighed. */
function plainLines(batch: Batch): CostLine[] {
  const carrier = batch.weighed.find(({ id, into }) => into === 'concentrate' && id === batch.asked['carrier']);
  return batch.weighed.flatMap(({ id, name, into, source, massG, share }) => {
    if (id === CONCENTRATE) return [];
    if (source === null) return [byKilo(id, name.replace(/, diluted to .*/, ''), massG.value * (share ?? 1))];
    const isInCarrier = into === 'concentrate' && share !== undefined && carrier;
    return isInCarrier ? [byKilo(carrier.id, carrier.name, massG.value * (1 - share))] : [];
  });
}

function gasLine({ drink: { gas, litres } }: Batch): CostLine[] {
  if (!gas) return [];
  return [byKilo(GAS, 'carbon dioxide', carbonDioxidePerLitre(gas.volumes) * litres.value)];
}

function bottleLine(batch: Batch): CostLine[] {
  const { count } = filledOf(batch);
  const price = shelf.settings.value.prices?.[BOTTLE] ?? null;
  const line = { id: BOTTLE, name: 'bottles with lid and label', amount: count, unit: 'pieces', price, by: 'settings' };
  return count === 0 ? [] : [line as CostLine];
}

function byKilo(id: string, name: string, amount: number): CostLine {
  const perKilo = shelf.settings.value.prices?.[id];
  return {
    id,
    name: name.replace(/, more$/, ''),
    amount,
    unit: 'g',
    price: perKilo === undefined ? null : perKilo / 1000,
    by: 'settings',
  };
}

/** Price of a gram of a bottle; of a vial that of what went into it; null where any of it has none. */
function pricePerGram(id: string): number | null {
  const bottle = find('bottle', id);
  if (bottle) return bottle.pricePerG ?? null;
  const vial = find('vial', id);
  if (!vial) return null;
  const parts = vial.uses.map((use) => [use.massG, pricePerGram(use.id)] as const);
  if (parts.some(([, price]) => price === null)) return null;
  return parts.reduce((sum, [grams, price]) => sum + grams * price!, 0) / vial.massG.value;
}

/** Each thing once. */
function merged(lines: readonly CostLine[]): CostLine[] {
  const all = new Map<string, CostLine>();
  for (const line of lines) {
    const before = all.get(line.id);
    all.set(line.id, before ? { ...before, amount: before.amount + line.amount } : line);
  }
  return [...all.values()];
}
