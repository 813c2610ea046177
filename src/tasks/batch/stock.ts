import { exact, minus, over, plus, times } from '../../core/number/measured';
import type { WeighStep } from '../../core/drink/weighList';
import { formatPlain } from '../../ui/format';
import type { RunState } from '../engine/fold';
import type { Goods } from './goods';
import { massAt, type Stock } from './pour';

/** The stock a step is weighed from; null when it is weighed as it is. */
export function stockOf(run: RunState, step: WeighStep, of: { from: Goods; carrier: Goods }): Stock | null {
  if (!step.diluted) return null;
  const key = `t.${step.id}`;
  const [neat, thin] = [massAt(run, key), massAt(run, `${key}.thin`)];
  const whole = neat && thin && plus(neat, thin);
  const share = whole && whole.value > 0 && neat.value > 0 ? over(neat, whole) : exact(step.diluted.strength);
  const rest = minus(exact(1), share);
  const { tag: _, ...from } = of.from; // it is no longer what stands on the bottle
  const contents = [
    ...of.from.contents.map((one) => ({ ...one, strength: times(one.strength, share) })),
    ...of.carrier.contents.map((one) => ({ ...one, strength: times(one.strength, rest) })),
  ];
  return {
    key,
    neat: step.diluted.neat,
    thin: step.diluted.carrier,
    ...of,
    share,
    isMade: whole !== null,
    goods: { ...from, name: `${of.from.name}, thinned to ${formatPlain(share.value * 100, 3)} %`, contents },
  };
}
