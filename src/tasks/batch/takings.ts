import { exact, minus, plus, scaled, type Measured } from '../../core/number/measured';
import type { RunState } from '../engine/fold';
import { begunIn } from './plan/begun';
import type { Goods } from './plan/goods';
import { carrierKey, massAt, type Pour, type Stock } from './vessel/pour';

/** Grams by bottle and vial, by id. */
type Grams = [id: string, mass: Measured][];

const STOCK_REST = 'the rest of a dilution for the scale';
export const NOT_KEPT = 'concentrate that was not kept';
export const BEGUN_AGAIN = 'in a vessel that was begun again';

/** Grams that got into nothing, with their uncertainty, and why. */
export interface Loss {
  readonly id: string;
  readonly massG: Measured;
  readonly why: string;
}

/** The stock that a weighing was drawn from: its own, else that of the first of the same. */
function drawnFrom(pours: readonly Pour[], pour: Pour): Stock | null {
  return pour.stock ?? pours.find(({ id, stock }) => id === pour.id && stock)?.stock ?? null;
}

/** Sums grams by bottle and vial. */
function tally() {
  const grams = new Map<string, Measured>();
  return {
    put: ({ source }: Goods, mass: Measured) =>
      void (source && grams.set(source.id, plus(grams.get(source.id) ?? exact(0), mass))),
    all: (): Grams => [...grams],
  };
}

/** Grams of each bottle and vial that are really in the concentrate: of a stock, what was drawn. */
export function inConcentrate(pours: readonly Pour[]): Grams {
  const sum = tally();
  for (const pour of pours) {
    if (!pour.mass) continue; // a vessel that is given up half full
    const stock = drawnFrom(pours, pour);
    sum.put(pour.goods, scaled(pour.mass, stock?.share.value ?? 1));
    if (stock) sum.put(stock.carrier, scaled(pour.mass, 1 - stock.share.value));
  }
  return sum.all();
}

/**
 * Grams taken out of each bottle and vial: of a stock, all that was mixed; where more was drawn than was mixed, that much more,
 * since it must have been mixed too.
 */
function takenOut(pours: readonly Pour[]): Grams {
  const sum = tally();
  for (const pour of pours) if (pour.mass && drawnFrom(pours, pour) === null) sum.put(pour.goods, pour.mass);
  const stocked = pours.filter(({ stock }) => stock !== null);
  for (const id of new Set(stocked.map((pour) => pour.id))) {
    const own = pours.filter((pour) => pour.id === id);
    const drawn = own.reduce((grams, { mass }) => grams + (mass?.value ?? 0), 0);
    const mixed = own.reduce((grams, { stock }) => grams + (stock?.made?.value ?? 0), 0);
    const more = mixed > 0 ? Math.max(1, drawn / mixed) : 0;
    for (const { stock } of own)
      if (stock?.made) {
        sum.put(stock.from, scaled(stock.made, stock.share.value * more));
        sum.put(stock.carrier, scaled(stock.made, (1 - stock.share.value) * more));
      }
  }
  return sum.all();
}

/** Grams taken out that got into nothing: rests of stocks, and the shares (0 to 1) of the concentrate that are `away`. */
export function lossesOf(pours: readonly Pour[], away: readonly { share: number; why: string }[]): Loss[] {
  const inIt = new Map(inConcentrate(pours));
  const gramsIn = (id: string) => inIt.get(id) ?? exact(0);
  const rests = takenOut(pours).map(([id, mass]) => ({ id, massG: minus(mass, gramsIn(id)), why: STOCK_REST }));
  const poured = away.flatMap(({ share, why }) =>
    [...inIt].map(([id, mass]) => ({ id, massG: scaled(mass, share), why })),
  );
  return [...rests, ...poured].filter(({ id, massG }) => massG.value > 1e-9 * gramsIn(id).value); // less is rounding
}

/** Grams of a stock of which only one part was weighed when its vessel was given up. */
export function halfMixed(run: RunState, pours: readonly Pour[]): Loss[] {
  const parts = pours.flatMap(({ stock }): [key: string, goods: Goods][] =>
    !stock || stock.made
      ? []
      : [
          [stock.key, stock.from],
          [carrierKey(stock.key), stock.carrier],
        ],
  );
  return parts.flatMap(([key, { name, source }]) => {
    const massG = massAt(run, key, { of: name });
    return source && massG && massG.value > 0 ? [{ id: source.id, massG, why: STOCK_REST }] : [];
  });
}

/** Grams taken out of each bottle and vial, with what had left them for concentrates that were begun again. */
export function takenInAll(run: RunState, pours: readonly Pour[]): Grams {
  const grams = new Map(takenOut(pours));
  for (const { id, massG } of begunIn(run).flatMap(({ taken }) => taken))
    grams.set(id, plus(grams.get(id) ?? exact(0), massG));
  return [...grams];
}
