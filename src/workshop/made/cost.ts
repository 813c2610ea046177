import { CONCENTRATE } from '../../core/drink/batchPlan';
import { carbonDioxidePerLitre } from '../../core/liquid/carbonation';
import type { Batch } from '../../records/kind/batch';
import { find, shelf } from '../../records/shelf';
import { filledOf } from './bottles';

/** Keys of prices that are no goods: a bottle with lid and label; the work on a batch; the duty on a litre of pure alcohol. */
export const BOTTLE = 'bottle';
export const WORK = 'work';
export const DUTY = 'duty';
export const GAS = 'carbon-dioxide';

/** One line of what a batch costs: g, pieces or L of pure alcohol, price of one of them, null where none is known. */
export interface CostLine {
  readonly id: string;
  readonly name: string;
  readonly amount: number;
  readonly unit: 'g' | 'pieces' | 'L';
  readonly price: number | null;
  /** Where its price is: on the bottle, or among the prices of the settings, which are per kg or piece. */
  readonly by: 'bottle' | 'settings';
  /** Left out by many: without a price it is no gap. */
  readonly optional?: true;
}

/** All that a batch took, with what it costs: bottles by their own price, the rest by those of the settings, and gas and bottles. */
export function costLines(batch: Batch): CostLine[] {
  return merged([
    ...usedLines(batch),
    ...plainLines(batch),
    ...gasLine(batch),
    ...bottleLine(batch),
    ...dueLines(batch),
  ]);
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
    open: lines.flatMap(({ name, price, optional }) => (price === null && !optional ? [name] : [])),
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

/** % ABV from which on duty is asked about. Our choice: laws begin at 0.5 or 1.2 (from memory). */
const DUTY_FROM = 0.5;

/** The work on it, and the duty on its alcohol. */
function dueLines({ drink: { litres, abv } }: Batch): CostLine[] {
  const prices = shelf.settings.value.prices ?? {};
  const own = { by: 'settings', optional: true } as const;
  const alcohol = (litres.value * abv.value) / 100;
  const work = { id: WORK, name: 'work', amount: 1, unit: 'pieces', price: prices[WORK] ?? null, ...own } as const;
  const duty = { id: DUTY, name: 'duty', amount: alcohol, unit: 'L', price: prices[DUTY] ?? null, ...own } as const;
  return abv.value >= DUTY_FROM ? [work, duty] : [work];
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
