import { expanded } from '../../core/number/measured';
import { formatPlain } from '../../ui/format';
import { dropsText } from '../../workshop/dropWords';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Card } from '../engine/task';
import { fields, type DiluteStep } from './fields';
import { inMl, type Order } from './making';
import { offWords } from './pouring';
import { solventsThatHold, stageIn } from './dissolves';
import type { WayDown } from './wayDown';

/** The one piece of advice: a better way; drops that come out another strength; drops that are only an estimate. */
export function adviceOf(now: RunState, order: Order, better: WayDown | null): Pick<Card<DiluteStep['key']>, 'advice'> {
  const few = order.byDrops
    ? 'It needs fewer than 3 drops, so one drop decides.'
    : 'It needs less than this scale can weigh well.';
  if (better)
    return {
      advice: {
        words: `${few} ${better.words}`,
        offer: { words: 'In one step all the same', type: types(fields.direct, 'yes') },
      },
    };
  const mgPerL = order.target * order.liquid.solventDensity * 1e6;
  const undissolved = undissolvedWords(order, mgPerL);
  if (undissolved) return { advice: { words: undissolved } };
  if (order.plan.tooLittle) return { advice: { words: few } };
  const { drops, exactG } = order.plan;
  const { mgPerDrop } = order.drop;
  const relative = expanded(mgPerDrop) / mgPerDrop.value;
  const isRough = !order.drop.calibrated && drops !== null && Math.abs(drops.error) < relative;
  if (drops && !isRough && answer(now, fields.exact) !== 'yes' && offWords(drops.error)) {
    const ml = inMl(order, exactG);
    const exactly = `Take ${formatPlain(ml, 3)} mL, then ${dropsText(drops.drops)} are exact`;
    const fits = ml <= order.sizeMl ? { offer: { words: exactly, type: types(fields.exact, 'yes') } } : {};
    return { advice: { words: offWords(drops.error).trim(), ...fits } };
  }
  if (!drops || order.drop.calibrated) return {};
  const percent = formatPlain(relative * 100, 2);
  return {
    advice: {
      words: `These drops are an estimate (± ${percent} %). Weigh them once after counting, and they become a measurement.`,
    },
  };
}

/** That it stays undissolved, or by the best estimate does; '' where it dissolves, or nothing is known. */
function undissolvedWords({ source, solvent }: Order, mgPerL: number): string {
  const stage = stageIn(source, solvent.id, mgPerL);
  if (!stage || stage.fullness.middle <= 1) return '';
  const [first] = solventsThatHold(source, mgPerL);
  const way = first ? ` ${first.charAt(0).toUpperCase()}${first.slice(1)} holds it.` : '';
  if (stage.verdict === 'stays cloudy')
    return `At this strength ${source.name} does not dissolve in ${solvent.name}.${way}`;
  return `At this strength ${source.name} may not dissolve in ${solvent.name}: try a little first.${way}`;
}
