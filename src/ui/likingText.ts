import { formatFixed } from './format';

/** '7.2 ± 0.6': a liking with its standard uncertainty doubled. */
export function likingText({ value, uncertainty }: { value: number; uncertainty: number }): string {
  return `${formatFixed(value, 1)} ± ${formatFixed(2 * uncertainty, 1)}`;
}
