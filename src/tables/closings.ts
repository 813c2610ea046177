import type { Closing } from '../core/dilution/ageing';

/**
 * How vials lose ethanol or isopropanol. For small vials nothing is published: rates are our guess from what is known of caps (60 % ethanol in a
 * 105 mL jar with a lid lost 7 % in ten years; loss goes round the cap, in proportion to its circumference over the volume). An opening
 * of one minute loses up to 4.5 mg from a neck of 10 mm: 0.95 g/(m² s), the film model of dryOff.ts. Weighing the vial beats all of it.
 */
export const closings: Readonly<Record<'lined cap' | 'dropper cap', Closing>> = {
  'lined cap': { perYear: 0.04, perOpeningG: 0.0045 },
  'dropper cap': { perYear: 0.15, perOpeningG: 0.0045 },
};
