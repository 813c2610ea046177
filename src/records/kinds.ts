import type * as z from 'zod/mini';
import { base, tasting } from './drink';
import { calibration, dropper } from './dropper';
import { formula } from './formula';
import { layering } from './layering';
import { bottle, material } from './material';
import { run } from './run';
import { settings } from './settings';
import { solvent } from './solvent';
import { vial } from './vial';

/** Every kind that is kept. A new kind is a line here. */
export const kinds = {
  material,
  bottle,
  solvent,
  vial,
  dropper,
  calibration,
  formula,
  layering,
  base,
  tasting,
  run,
  settings,
} as const;

export type KindName = keyof typeof kinds;
export type RecordOf<K extends KindName> = z.output<(typeof kinds)[K]['schema']>;
export type AnyRecord = { [K in KindName]: RecordOf<K> }[KindName];
