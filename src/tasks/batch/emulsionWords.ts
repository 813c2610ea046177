import type { Rise } from '../../core/drink/emulsion';
import { formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import type { RunState } from '../engine/fold';
import { creaming } from './plan/emulsion';
import { EMULSION_WATER } from './plan/goods';
import { isOfOil, isOfOneVessel } from './plan/phases';
import type { Plan } from './plan/planParts';

/** What of the formula is oil, how well it matches the drink, and when a ring begins to show. */
export function emulsionWords(run: RunState, plan: Plan): string[] {
  const { emulsion, drink } = plan;
  if (!emulsion) return [];
  const rise = outcome(() => creaming(run, plan)).value;
  const isMatched = rise ? isStill(rise) : emulsion.matched;
  return [
    ...phaseWords(run, plan),
    `The oil phase has ‹${formatPlain(emulsion.oilPhase, 4)} g/mL›, the drink ‹${formatPlain(drink.densityGPerMl, 4)}›: ${isMatched ? 'matched' : 'not matched'}.`,
    ...(emulsion.agent > 0 ? [`Weighting agent in the drink: ‹${formatPlain(emulsion.agentMgPerL, 3)} mg/L›.`] : []),
    ...ringWords(run, plan),
  ];
}

/** What is dissolved in the water instead of the oil. */
function phaseWords(run: RunState, { concentrate }: Plan): string[] {
  if (isOfOneVessel(run)) return [];
  const other = concentrate.filter(
    ({ goods: { id, source } }) => source !== null && id !== EMULSION_WATER && !isOfOil(id),
  );
  return other.length > 0 ? [`Not oil, so in its water: ${other.map(({ goods }) => goods.name).join(', ')}.`] : [];
}

/** Whether, as far as densities are known, droplets may as well rise as sink. */
function isStill({ low, high }: Rise): boolean {
  return low < 0 && high > 0;
}

/** How fast the droplets move, and after how long a ring shows: as a range, since no density is exact. */
export function ringWords(run: RunState, plan: Plan): string[] {
  const rise = outcome(() => creaming(run, plan)).value;
  if (!rise) return [];
  const { low, high, days } = rise;
  const between = (from: number, to: number) =>
    formatPlain(from, 2) === formatPlain(to, 2)
      ? formatPlain(to, 2)
      : `${formatPlain(from, 2)} to ${formatPlain(to, 2)}`;
  const practice = 'Below 1 mm a day is called stable, yet that is 180 mm in half a year.';
  if (isStill(rise))
    return [
      `Matched as far as densities are known: such droplets move ‹${formatPlain(Math.max(-low, high), 2)} mm a day› at most (Stokes), so no ring for ‹${formatPlain(days.low, 2)} days› and more.`,
      practice,
    ];
  const [slow, fast] = [Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high))];
  const where = high <= 0 ? 'sink' : 'rise';
  const what = high <= 0 ? 'a layer at the bottom' : 'a ring at the top';
  return [
    `Such droplets ${where} ‹${between(slow, fast)} mm a day› (Stokes): ${what} after about ‹${between(days.low, days.high)} days›.`,
    practice,
  ];
}
