/**
 * What a label holds on to longest, the first before the last. Code, strength and the bar (SMELL ONLY, OVER A LIMIT) come before all of these
 * and never go; of these the last goes first where room is short. The true value stays readable by way of the square code.
 */
export const LABEL_ORDER = [
  'the limit',
  'fit for drinks',
  'the allergens',
  'the name',
  'the rings',
  'the day it was made',
  'the day it was opened',
  'the use-by day',
  'the alcohol',
  'the volume',
  'the sugar',
  'the lot',
  'the short id',
  'the supplier',
  'the solvent',
  'the dosage',
  'the exact strength',
] as const;

/** A part of a label that may be left out. */
export type LabelPart = (typeof LABEL_ORDER)[number];

/** Rank of a part, 1 for what goes last of all. Our own order. */
export function rankOf(part: LabelPart): number {
  return LABEL_ORDER.indexOf(part) + 1;
}
