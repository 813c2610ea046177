import { rankingOrders } from '../sensory/servingOrder';
import { Refusal } from '../text/refusal';
import type { Shares } from './region';

const TRIED = 60; // orders drawn, of which the best balanced is taken: our choice
const APART = 3; // our choice: at least so many places between a blend and its repeat, where there are as many

/** A blend as it is handed over: which of the design, as a place from 0, and whether it is the one that comes twice. */
export interface Served {
  readonly blend: number;
  readonly again: boolean;
}

/**
 * The order in which blends are judged, one of them twice, unannounced, so that it shows how well the nose repeats. Rows of
 * Williams squares are drawn, and that one is taken in which what was smelled before says least of what is smelled next, and
 * the place says least of the blend. Shares are fractions; `random` gives numbers from 0 to below 1.
 * Source: Williams 1949 for the rows; choosing by least correlation with the blend before is our own.
 * @throws Refusal for fewer than 2 blends or more than 26
 */
export function tastingOrder(blends: readonly Shares[], random: () => number): Served[] {
  if (blends.length < 2) throw new Refusal('an order needs 2 blends or more, not {blends}', { blends: blends.length });
  const drawn: number[][] = [];
  while (drawn.length < TRIED) drawn.push(...rankingOrders(blends.length, blends.length, random));
  const orders = drawn.slice(0, TRIED).map((order) => withRepeat(order, random));
  const loads = orders.map((order) => carryOver(order.map(({ blend }) => blends[blend]!)));
  return orders[loads.indexOf(Math.min(...loads))]!;
}

/**
 * How much the order of some blends (shares, fractions) tells of the next one: mean squared correlation of every share with
 * those of the blend before and with its place, from 0 to 1. Our own.
 */
export function carryOver(order: readonly Shares[]): number {
  const later = order.slice(1);
  const column = (of: readonly Shares[], part: number) => of.map((shares) => shares[part]!);
  const parts = order[0]!.map((_, part) => part);
  const place = order.map((_, i) => i);
  const all = parts.flatMap((now) => [
    correlation(column(order, now), place),
    ...parts.map((before) => correlation(column(later, now), column(order.slice(0, -1), before))),
  ]);
  return all.reduce((sum, r) => sum + r * r, 0) / all.length;
}

/** A blend of the first half comes again, some places later. */
function withRepeat(order: readonly number[], random: () => number): Served[] {
  const from = Math.floor((random() * order.length) / 2);
  const least = Math.min(from + APART, order.length);
  const to = least + Math.floor(random() * (order.length - least + 1));
  const served = order.map((blend) => ({ blend, again: false }));
  return [...served.slice(0, to), { blend: order[from]!, again: true }, ...served.slice(to)];
}

function correlation(x: readonly number[], y: readonly number[]): number {
  const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;
  const [mx, my] = [mean(x), mean(y)];
  const sum = (of: (i: number) => number) => x.reduce((total, _, i) => total + of(i), 0);
  const spread = sum((i) => (x[i]! - mx) ** 2) * sum((i) => (y[i]! - my) ** 2);
  return spread > 0 ? sum((i) => (x[i]! - mx) * (y[i]! - my)) / Math.sqrt(spread) : 0;
}
