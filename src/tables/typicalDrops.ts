import type { LiquidClass } from './solvents';

/**
 * Drops of droppers no one has weighed: what is in until a calibration, with its honest wide spread. mg per drop.
 * Half-widths are the range over glass droppers, bottle inserts and pipettes of unknown tip; u = half-width/√3
 * (rectangular, GUM 4.3.7). Predictions are Tate's law with the Harkins–Brown correction from the tip that gives 50 mg
 * of water; real tips give 34–63 mg, so every prediction is spread by about 30 %. A bottle lip can give far more: 33 mg
 * of ethanol, 40–50 mg of oil (apothecaries' book, 1893).
 */
export interface TypicalDrop {
  readonly liquid: LiquidClass;
  /** mg per drop, middle of the range. */
  readonly meanMg: number;
  /** mg, half of the range. */
  readonly halfWidthMg: number;
  /** mg, standard uncertainty: half-width over √3. */
  readonly uMg: number;
  readonly source: string;
  /** True where drops were counted or weighed by others; false where the number rests on a prediction. */
  readonly verified: boolean;
}

function row(liquid: LiquidClass, [low, high]: readonly [number, number], source: string, verified: boolean): TypicalDrop {
  const halfWidthMg = (high - low) / 2;
  return { liquid, meanMg: (low + high) / 2, halfWidthMg, uMg: halfWidthMg / Math.sqrt(3), source, verified };
}

export const typicalDrops: readonly TypicalDrop[] = [
  row(
    'neat oil',
    [17, 33],
    'predicted 17–26 mg for terpenes, carvone, benzaldehyde; bottle inserts weighed in three investigations (1999, 2000, 2016): 33 mg on average',
    true,
  ),
  row('fatty oil', [17, 35], 'predicted 19–23 mg; light oils 32 mg on average (Martindale & Westcott 1901)', true),
  row(
    'ethanol',
    [11, 21],
    'standard dropper 95 %: 65 drops per g, 15.4 mg (State Pharmacopoeia of the USSR); glass dropper 20.6 mg (Gorgas); wider and finer tips',
    true,
  ),
  row(
    'dilute spirit',
    [13, 26],
    'predicted 17–21 mg for 40–70 % vol; counted 20 mg (Hahnemann) and 25 mg (Gorgas)',
    true,
  ),
  row('isopropanol', [10, 19], 'predicted 13.6 mg, spread over tips; no counts found', false),
  row('propylene glycol', [18, 34], 'predicted 24–26 mg, spread over tips; surface tension uncertain, no counts found', false),
  row('triacetin', [17, 32], 'predicted 23 mg, spread over tips; no counts found', false),
  row(
    'glycerol',
    [27, 70],
    'two sources contradict one another: 0.78 of the water drop (Eschbaum 1895) and 1.13 of it (Gorgas)',
    true,
  ),
  row('unknown', [10, 70], 'nothing is known of the liquid: from the lightest drop of this table to the heaviest', false),
  row('water', [34, 63], '19 eye-drop bottles 33.8–63.4 µL (German et al.); standard dropper 50 ± 5 mg (USP 32 <1101>)', true),
];
