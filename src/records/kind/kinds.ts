import type * as z from 'zod/mini';
import { batch } from './batch';
import { base, tasting } from './drink';
import { calibration, dropper } from './dropper';
import { formula } from './formula';
import { layering } from './layering';
import { bottle, material } from './material';
import { run } from './run';
import { settings } from './settings';
import { solvent } from './solvent';
import { supply } from './supply';
import { test } from './test';
import { vial } from './vial';

/** Every kind that is kept. A new kind is a line here. */
export const kinds = {
  material,
  bottle,
  solvent,
  supply,
  vial,
  dropper,
  calibration,
  formula,
  layering,
  base,
  tasting,
  batch,
  test,
  run,
  settings,
} as const;

export type KindName = keyof typeof kinds;
export type RecordOf<K extends KindName> = z.output<(typeof kinds)[K]['schema']>;
export type AnyRecord = { [K in KindName]: RecordOf<K> }[KindName];

/** Whether a record is of a kind. */
export function isOf<K extends KindName>(kind: K, record: AnyRecord): record is Extract<AnyRecord, RecordOf<K>> {
  return record.kind === kind;
}
