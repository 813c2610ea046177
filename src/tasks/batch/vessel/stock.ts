import { exact, minus, over, plus, times } from '../../../core/number/measured';
import { formatPlain } from '../../../ui/format';
import type { RunState } from '../../engine/fold';
import type { Goods } from '../plan/goods';
import { carrierKey, massAt, type Pour, type Stock } from './pour';

/** What is mixed for a stock: g of the material's goods and of the carrier, and the share of the first as planned. */
interface Mix {
  readonly neat: number;
  readonly carrier: number;
  readonly strength: number;
}

/** A stock that is mixed under that key; null where nothing has to be diluted first. */
export function stockOf(
  run: RunState,
  key: string,
  mix: Mix | null,
  of: { from: Goods; carrier: Goods },
): Stock | null {
  if (!mix) return null;
  const [neat, carrier] = [
    massAt(run, key, { of: of.from.name }),
    massAt(run, carrierKey(key), { of: of.carrier.name }),
  ];
  const whole = neat && carrier && plus(neat, carrier);
  const share = whole && whole.value > 0 && neat.value > 0 ? over(neat, whole) : exact(mix.strength);
  const rest = minus(exact(1), share);
  const { tag: _, ...from } = of.from; // it is no longer what stands on the bottle
  const contents = [
    ...of.from.contents.map((one) => ({ ...one, strength: times(one.strength, share) })),
    ...of.carrier.contents.map((one) => ({ ...one, strength: times(one.strength, rest) })),
  ];
  return {
    key,
    neatG: mix.neat,
    carrierG: mix.carrier,
    ...of,
    share,
    made: whole,
    goods: { ...from, name: `${of.from.name}, diluted to ${formatPlain(share.value * 100, 3)} % w/w`, contents },
  };
}

/**
 * Another stock like the first, for `grams` g more than what was mixed still holds; null where that is enough, and where those
 * grams were weighed already without one (a run of an older version).
 */
export function moreStock(
  run: RunState,
  pours: readonly Pour[],
  more: { first: Stock; id: string; grams: number; cause: string; isWeighed: boolean },
): Stock | null {
  const { first, grams } = more;
  const own = pours.filter(({ id }) => id === more.id);
  const made = own.reduce((sum, { stock }) => sum + (stock?.made?.value ?? 0), 0);
  const drawn = own.reduce((sum, { mass }) => sum + (mass?.value ?? 0), 0);
  const key = `${first.key}.${more.cause}`;
  const isBegun = massAt(run, key, { of: first.from.name }) !== null;
  if (made - drawn >= grams || (more.isWeighed && !isBegun)) return null;
  const times = Math.max(1, grams / (first.neatG + first.carrierG));
  const mix = { neat: first.neatG * times, carrier: first.carrierG * times, strength: first.share.value };
  return stockOf(run, key, mix, { from: first.from, carrier: first.carrier });
}
