import type { PlanInstance } from '../../core/plan/instance';
import type { TradePoint } from '../../core/plan/tradeOff';
import { expanded, over, plus, scaled, times, type Measured } from '../../core/number/measured';
import type { RunState } from '../engine/fold';
import { dropperOf } from './fields';
import { dropOfStock, stockOf } from './stock';

const CLOSE = 0.1; // our choice: a line within 10 % of its target is as near as a first trial needs
const FINE = 0.05; // our choice: where only chance in counting is left, 5 % is worth stopping at

/**
 * The plan that is proposed: the one of the fewest drops that is as near as the vials are known, or within 10 % where they are known less
 * well; from where chance in counting is larger than rounding on, one within 5 %. Else the nearest. Our choice.
 */
export function kneeOf(worth: readonly TradePoint[], own: number): TradePoint {
  const near = Math.min(own, CLOSE);
  const chance = worth.findIndex(({ recommended }) => recommended);
  return worth.find(({ objective }, at) => objective <= (at < chance ? near : Math.max(near, FINE))) ?? worth.at(-1)!;
}

/**
 * How well the vials and their drops themselves are known: the largest relative expanded uncertainty (k = 2, a fraction) of what a line
 * brings by a plan, apart from the scatter of single drops. Of the shares where only these count: what all vials have in common cancels.
 */
export function ownUncertainty(run: RunState, { components, scale }: PlanInstance, plan: TradePoint['plan']): number {
  const lines = components.map(({ stocks }) =>
    stocks.flatMap(({ id }) => {
      const stock = stockOf(id);
      const drops = plan[id] ?? 0;
      if (!stock || drops === 0) return [];
      const strength = plus(...stock.contents.map((part) => part.strength));
      return [times(scaled(dropOfStock(stock, dropperOf(run)).mgPerDrop, drops), strength)];
    }),
  );
  const brought = lines.flatMap((parts) => (parts.length > 0 ? [plus(...parts)] : []));
  const all = plus(...brought);
  const known: Measured[] = scale.kind === 'free' ? brought.map((one) => over(one, all)) : brought;
  return Math.max(0, ...known.map((one) => expanded(one) / one.value));
}
