import { measured, plus, type Measured } from '../number/measured';
import { Refusal } from '../text/refusal';

/** How far a filling may be off: up to `mL` anywhere on the scale; or, of a syringe, by shares of its capacity and of what is let out. */
export type Tolerance =
  { readonly mL: number } | { readonly halfFull: number; readonly ofCapacity: number; readonly ofVolume: number };

/** A vessel with graduations: what it holds and how far a reading may be off, mL (half-widths). */
export interface Vessel {
  readonly id: string;
  readonly capacityMl: number;
  readonly tolerance: Tolerance;
  readonly readsMl: number;
}

/**
 * A volume as measured with a vessel, mL, in as many fillings as it takes. Its tolerance is one source `vessel:<id>`, the same for
 * all that is measured with it: a filling twice counts twice. Each reading is a source of its own, `<own>:readings`, n fillings √n.
 * Source: rectangles over √3 (GUM 4.3.7), linear within a source (GUM 5.2.2); tolerances from the table of vessels.
 * @throws Refusal unless the volume is above zero
 */
export function volumeBy(vessel: Vessel, mL: number, own: { id: string; words: string }): Measured {
  if (!(mL > 0 && Number.isFinite(mL))) throw new Refusal('a volume is more than 0 mL, not {mL}', { mL });
  const full = Math.ceil(mL / vessel.capacityMl - 1e-9) - 1;
  const rest = mL - full * vessel.capacityMl;
  const off = full * toleranceMl(vessel, vessel.capacityMl) + toleranceMl(vessel, rest);
  const reading = vessel.readsMl * Math.sqrt(full + 1);
  return plus(
    measured(mL, off / Math.sqrt(3), { id: `vessel:${vessel.id}`, words: `${own.words}: the vessel` }),
    measured(0, reading / Math.sqrt(3), { id: `${own.id}:readings`, words: `${own.words}: read off its marks` }),
  );
}

/** How far one filling of `mL` may be off, mL. Check: 4 mL from a syringe of 10 mL, 0.19 mL (ISO 7886-1, worked example). Source: as the table. */
export function toleranceMl({ tolerance, capacityMl }: Vessel, mL: number): number {
  if ('mL' in tolerance) return tolerance.mL;
  const { halfFull, ofCapacity, ofVolume } = tolerance;
  return mL >= capacityMl / 2 ? halfFull * mL : ofCapacity * capacityMl + ofVolume * mL;
}
