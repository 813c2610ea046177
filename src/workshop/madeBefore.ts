import { differences, doseHolding, type PartsLine } from '../core/drink/formula';
import { plus } from '../core/number/measured';
import type { Batch } from '../records/kind/batch';
import type { Tasting } from '../records/kind/drink';
import type { Formula } from '../records/kind/formula';
import { ancestors } from '../records/lineage';
import { find, list } from '../records/shelf';

/** A drink of a formula as it was made or tasted: dose of the whole formula, mg/kg, °Brix, % ABV, g/mL. */
export interface MadeBefore {
  readonly name: string;
  readonly mgPerKg: number;
  /** The parts of that version, and its number where it is known. */
  readonly lines?: readonly PartsLine[];
  readonly version?: number | null;
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
    ({ id, doses, glass }) => doses.length === 1 && glass?.best !== false && formulaBehind(id)?.root === root,
  );
  if (!batch && !tasting) return null;
  return !tasting || (batch && batch.made >= tasting.made) ? madeAs(batch!) : ofTasting(tasting);
}

/** The nearest formula that led to a thing. */
function formulaBehind(id: string): Formula | undefined {
  return ancestors(id).flatMap(({ record }) => find('formula', record.id) ?? [])[0];
}

/** The dose of a version as its last drink had it, mg/kg; where that was of another version, the dose at which what stayed keeps its mg/kg. */
export interface DoseBefore {
  readonly mgPerKg: number;
  readonly how: 'as made' | 'holds the others' | 'other proportions';
}

/** What dose a formula (its lines) has from the last drink of any of its versions; as made where its parts are not known. */
export function doseBefore(lines: readonly PartsLine[], before: MadeBefore): DoseBefore {
  const { mgPerKg, lines: then } = before;
  if (!then || then.length === 0 || differences(then, lines).length === 0) return { mgPerKg, how: 'as made' };
  const held = doseHolding(then, lines, mgPerKg);
  return held === null ? { mgPerKg, how: 'other proportions' } : { mgPerKg: held, how: 'holds the others' };
}

/** A batch as the drink that it became. */
export function madeAs({
  name,
  drink: { brix, abv, densityGPerMl },
  reached,
  asked,
  lines,
  formula,
}: Batch): MadeBefore {
  return {
    name,
    lines,
    version: formula.version,
    mgPerKg: doseOf(reached),
    brix: brix.value,
    abv: abv.value,
    densityGPerMl: densityGPerMl.value,
    asked,
  };
}

function ofTasting({ id, base: { name, brix, abv, densityGPerMl }, reached }: Tasting): MadeBefore {
  const formula = formulaBehind(id);
  const of = formula ? { lines: formula.lines, version: formula.version } : {};
  return { name, ...of, mgPerKg: doseOf(reached), brix, abv, densityGPerMl };
}

function doseOf(reached: Batch['reached'] | Tasting['reached']): number {
  return plus(...reached.map(({ mgPerKg }) => mgPerKg)).value;
}
