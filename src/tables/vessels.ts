import type { Vessel } from '../core/dilution/vessel';

/** A vessel of the bench with its class, as it can be chosen. */
export interface VesselRow extends Vessel {
  readonly label: string;
  readonly hint: string;
  readonly source: string;
}

const CYLINDERS = 'ASTM E1272-02 (2012), table 1; a reading to half of its finest division';
const SYRINGES = 'ISO 7886-1, table 1, as worked out by a testing laboratory (2016); a reading to half of its finest division';

/** Graduated cylinder: the same tolerance at every mark. */
function cylinder(id: string, [capacityMl, mL, readsMl]: readonly [number, number, number], marked: string): VesselRow {
  return {
    id,
    capacityMl,
    readsMl,
    tolerance: { mL },
    label: `Graduated cylinder, ${capacityMl} mL, ${marked}`,
    hint: `± ${mL} mL, each filling`,
    source: CYLINDERS,
  };
}

/** Syringe without a needle. Up to 2 mL 5 % from half full on, from 5 mL on 4 %. */
function syringe(id: string, [capacityMl, readsMl]: readonly [number, number], label: string): VesselRow {
  const small = capacityMl < 5;
  return {
    id,
    capacityMl,
    readsMl,
    tolerance: { halfFull: small ? 0.05 : 0.04, ofCapacity: 0.015, ofVolume: small ? 0.02 : 0.01 },
    label,
    hint: `± ${small ? 5 : 4} % from half full on, more below`,
    source: SYRINGES,
  };
}

/** Vessels for solvent. 'cylinder' and 'syringe' are what the first version called them, and are kept in its runs. */
export const vessels: readonly VesselRow[] = [
  cylinder('cylinder', [10, 0.1, 0.05], 'class A'),
  cylinder('cylinder 10 B', [10, 0.2, 0.1], 'class B or unmarked'),
  cylinder('cylinder 25 B', [25, 0.34, 0.25], 'class B or unmarked'),
  cylinder('cylinder 50 B', [50, 0.5, 0.5], 'class B or unmarked'),
  syringe('syringe', [10, 0.1], 'Syringe or graduated pipette, 10 mL'),
  syringe('syringe 1', [1, 0.005], 'Syringe, 1 mL'),
  syringe('syringe 5', [5, 0.1], 'Syringe, 5 mL'),
  syringe('syringe 20', [20, 0.5], 'Syringe, 20 mL'),
];
