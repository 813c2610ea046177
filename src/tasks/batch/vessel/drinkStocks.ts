import { CONCENTRATE, WATER } from '../../../core/drink/batchPlan';
import { dilutionFor, type Diluted } from '../../../core/drink/weighList';
import { gram } from '../../../core/number/units';
import type { RunState } from '../../engine/fold';
import type { DrinkLine } from './drinkLines';
import { SPIRIT } from '../plan/goods';
import { strongestStock } from '../plan/strongestStock';
import { isWeighedAsBefore } from '../plan/weighedAsBefore';
import { leastOf, scaleFor } from './pour';

/** A line of the drink as it comes on the scale: g of it, or of the dilution with water that it is weighed from. */
export interface WeighedLine extends DrinkLine {
  readonly onScale: number;
  readonly diluted: Diluted | null;
}

const NEVER = [WATER, SPIRIT, CONCENTRATE];
const SPARED = 0.5; // of the water of a vessel, for what is diluted with it: our choice

/** The lines with what is too little for the scale diluted with the water of its vessel, which is so much less. */
export function withStocks(run: RunState, lines: readonly DrinkLine[]): WeighedLine[] {
  const plain = lines.map((line): WeighedLine => ({ ...line, onScale: line.mass, diluted: null }));
  const least = leastOf(run);
  if (isWeighedAsBefore(run) || least === null) return plain;
  const left = new Map(lines.flatMap((line) => (line.goods.id === WATER ? [[line.into, SPARED * line.mass]] : [])));
  const taken = new Map<string, number>();
  const weighed = plain.map((line) => {
    const { goods, mass, into } = line;
    if (NEVER.includes(goods.id) || mass >= least || scaleFor(run, mass) !== 'fine') return line;
    const so = { carrier: left.get(into) ?? 0, most: strongestStock(goods, WATER) };
    const diluted = dilutionFor(gram(mass), gram(least), so);
    if (!diluted) return line;
    const onScale = mass / diluted.strength;
    left.set(into, so.carrier - (onScale - mass));
    taken.set(into, (taken.get(into) ?? 0) + onScale - mass);
    return { ...line, onScale, diluted };
  });
  return weighed.map((line) =>
    line.goods.id === WATER ? { ...line, onScale: line.mass - (taken.get(line.into) ?? 0) } : line,
  );
}
