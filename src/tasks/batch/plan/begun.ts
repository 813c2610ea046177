/** Vessels that were begun again: what they had taken is gone, and is kept as it was then, whatever is planned after it. */
import * as z from 'zod/mini';
import { exact, plus, type Measured } from '../../../core/number/measured';
import { measuredSchema } from '../../../records/kind/quantity';
import { answer } from '../../engine/answers';
import { shaped } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import { oncePerRun } from '../../engine/oncePerRun';

const vesselName = z.enum(['concentrate', 'drink']);
export type VesselName = z.output<typeof vesselName>;

const begunSchema = z.object({
  /** Key of the step at which it was chosen. */
  at: z.string(),
  vessels: z.array(vesselName),
  /** What was in them, g. */
  was: z.array(z.object({ what: z.string(), lot: z.string(), massG: z.number(), scale: z.enum(['fine', 'coarse']) })),
  /** Grams that had left each bottle and vial for a concentrate that was given up, and why they are lost. */
  taken: z.array(z.object({ id: z.string(), massG: measuredSchema, why: z.string() })),
  /** Grams of the concentrate that stays, poured into a drink that was given up. */
  poured: z.nullable(measuredSchema),
  /** Weighings that had gone over, and what was done about each. */
  slips: z.array(
    z.object({ id: z.string(), what: z.string(), planned: z.number(), counted: z.number(), way: z.string() }),
  ),
});

/** One time that a vessel was begun again, or both: a drink that has the concentrate in it takes it along. */
export type Begun = z.output<typeof begunSchema>;

/** The answer that keeps them, in order. */
export const begunField = shaped('begun', z.array(begunSchema));

/** All that was begun again in a run, in order. */
export const begunIn = oncePerRun((run: RunState): readonly Begun[] => answer(run, begunField) ?? []);

/** How often a vessel was begun again: a count from 0. */
export function timesBegun(run: RunState, vessel: VesselName): number {
  return begunIn(run).filter(({ vessels }) => vessels.includes(vessel)).length;
}

/** The key of a weighing in the vessel as it is filled now: 'c.linalool', and 'c2.linalool' the second time. */
export function keyNow(key: string, times: number): string {
  return times === 0 ? key : key.replace('.', `${times + 1}.`);
}

/** g of the concentrate there is now that went into drinks that were given up. */
export function pouredBefore(run: RunState): Measured {
  const all = begunIn(run);
  const since = all.slice(all.findLastIndex(({ vessels }) => vessels.includes('concentrate')) + 1);
  return plus(exact(0), ...since.flatMap(({ poured }) => poured ?? []));
}
