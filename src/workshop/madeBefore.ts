import { plus } from '../core/number/measured';
import type { Batch } from '../records/kind/batch';
import type { Tasting } from '../records/kind/drink';
import { ancestors } from '../records/lineage';
import { find, list } from '../records/shelf';

/** A drink of a formula as it was made or tasted: dose of the whole formula, mg/kg, °Brix, % ABV, g/mL. */
export interface MadeBefore {
  readonly name: string;
  readonly mgPerKg: number;
  readonly brix: number;
  readonly abv: number;
  readonly densityGPerMl: number;
  /** What a batch was asked for, by the names of its questions; a tasting was asked for nothing. */
  readonly asked?: Readonly<Record<string, string>>;
}

/**
 * The newest batch or tasting of any version of a formula, by the root of its versions; null where there is none. Of a drink that
 * was dosed from several vials no one knows the dose of the formula; of a ladder only the best glass counts.
 */
export function madeBefore(root: string): MadeBefore | null {
  const batch = list('batch').find(({ formula }) => find('formula', formula.id)?.root === root);
  const tasting = list('tasting').find(
    ({ id, doses, glass }) => doses.length === 1 && glass?.best !== false && rootBehind(id) === root,
  );
  if (!batch && !tasting) return null;
  return !tasting || (batch && batch.made >= tasting.made) ? madeAs(batch!) : ofTasting(tasting);
}

/** Root of the nearest formula that led to a thing. */
function rootBehind(id: string): string | undefined {
  return ancestors(id).flatMap(({ record }) => find('formula', record.id)?.root ?? [])[0];
}

/** A batch as the drink that it became. */
export function madeAs({ name, drink: { brix, abv, densityGPerMl }, reached, asked }: Batch): MadeBefore {
  return {
    name,
    mgPerKg: doseOf(reached),
    brix: brix.value,
    abv: abv.value,
    densityGPerMl: densityGPerMl.value,
    asked,
  };
}

function ofTasting({ base: { name, brix, abv, densityGPerMl }, reached }: Tasting): MadeBefore {
  return { name, mgPerKg: doseOf(reached), brix, abv, densityGPerMl };
}

function doseOf(reached: Batch['reached'] | Tasting['reached']): number {
  return plus(...reached.map(({ mgPerKg }) => mgPerKg)).value;
}
