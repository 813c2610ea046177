import { list } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import { smellOf } from './families';
import { readingsOf, type ReadingKept } from './readings';

/** Vials smelled together once or more, in ids, with the mean of how they were liked (1 to 9), if they were. */
export interface SmelledSet {
  readonly vials: readonly string[];
  readonly liking: number | null;
}

/** The sets smelled together in some readings, each once; a verdict on one of them counts as one more liking of it. */
export function setsOf(
  readings: readonly Pick<ReadingKept, 'vials' | 'liking'>[],
  verdict?: { vials: readonly string[]; liking: number | null },
): SmelledSet[] {
  const sets = new Map<string, { vials: readonly string[]; likings: number[] }>();
  for (const { vials, liking } of [...readings, ...(verdict ? [verdict] : [])]) {
    if (vials.length === 0) continue;
    const key = [...vials].sort().join(' ');
    const set = sets.get(key) ?? { vials, likings: [] };
    if (liking !== null) set.likings.push(liking);
    sets.set(key, set);
  }
  return [...sets.values()].map(({ vials, likings }) => ({
    vials,
    liking: likings.length === 0 ? null : likings.reduce((sum, one) => sum + one, 0) / likings.length,
  }));
}

/** All that was ever smelled together, of earlier layerings and of this run, vials given by what they smell of. */
export function smelledSets(run: RunState): SmelledSet[] {
  const before = list('layering').flatMap((layering) => {
    const { strips, readings, verdict } = layering;
    const fan = strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial);
    return setsOf(readings, { vials: verdict.vials ?? fan, liking: verdict.liking });
  });
  return [...setsOf(readingsOf(run)), ...before].map(({ vials, liking }) => ({ vials: vials.map(smellOf), liking }));
}
