import { formatOnScale } from '../ui/format';

/** '1 drop', '12 drops'. */
export function dropsText(drops: number): string {
  return drops === 1 ? '1 drop' : `${drops} drops`;
}

/** How drops are let fall so that they weigh what they were taken for: a first drop of air or a wet tip is 15 % and more off. Common practice. */
export const HOW_TO_DROP = 'Hold it upright, wipe the tip, let the first drop go to waste; then one a second.';

/** What whole drops are off by (share of the target): 'as planned', '3.2 % over', '14 % under'. */
export function offWords(error: number): string {
  const percent = Math.abs(error) * 100;
  return percent < 0.05
    ? 'as planned'
    : `${formatOnScale(percent, percent < 10 ? 0.1 : 1)} % ${error > 0 ? 'over' : 'under'}`;
}

/** What stands behind a count: 'of 4 drops'; past the target '2 too many: 4 planned'. */
export function ofTarget(count: number, target: number): string {
  return count > target ? `${count - target} too many: ${target} planned` : `of ${dropsText(target)}`;
}
