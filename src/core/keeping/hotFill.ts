import { Refusal } from '../text/refusal';

/** Least °C at filling for a pH: that of the drink or the next above it counts. */
export type FillTable = readonly (readonly [ph: number, atC: number])[];

/**
 * Least °C at which a drink of a pH is filled so that bottle and cap are heated too, straight lines between the rows of a
 * table from the lowest pH up; below its first pH as there. Source: that of the table. @throws Refusal above its last pH
 */
export function leastFill(table: FillTable, ph: number): number {
  const last = table.at(-1)!;
  if (!(ph <= last[0]))
    throw new Refusal('filling hot is published up to pH {most}, not for pH {ph}', {
      most: last[0],
      ph: { value: ph, decimals: 1 },
    });
  const at = table.findIndex(([one]) => one >= ph);
  const [[high, hot], [low, warm]] = [table[at]!, table[Math.max(0, at - 1)]!];
  return high === low ? hot : warm + ((hot - warm) * (ph - low)) / (high - low);
}
