import { list } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import { smellOf } from './families';
import { isDry, notesOf, type Note } from './notes';

/** Vials smelled together once or more, in ids, with the mean of how they were liked (1 to 9), if they were. */
export interface SmelledSet {
  readonly vials: readonly string[];
  readonly liking: number | null;
}

/** A verdict, as far as it says what was smelled together and how that was liked. */
interface Verdict extends SmelledSet {
  readonly wet?: boolean | undefined;
}

/**
 * The sets smelled together in some notes, each once. A note on strips that were wet is none of them. A verdict is one more liking of
 * its set, unless it is only the last one of the notes, which it takes over.
 */
export function setsOf(notes: readonly Pick<Note, 'vials' | 'liking' | 'wet'>[], verdict?: Verdict): SmelledSet[] {
  const sets = new Map<string, { vials: readonly string[]; likings: number[] }>();
  const add = ({ vials, liking }: SmelledSet, isLast = false) => {
    if (vials.length === 0) return;
    const key = [...vials].sort().join(' ');
    const set = sets.get(key) ?? { vials, likings: [] };
    if (liking !== null && !(isLast && set.likings.at(-1) === liking)) set.likings.push(liking);
    sets.set(key, set);
  };
  for (const note of notes.filter(isDry)) add(note);
  if (verdict && !verdict.wet) add(verdict, true);
  return [...sets.values()].map(({ vials, likings }) => ({
    vials,
    liking: likings.length === 0 ? null : likings.reduce((sum, one) => sum + one, 0) / likings.length,
  }));
}

/** All that was ever smelled together, of earlier layerings and of this run, vials given by what they smell of. */
export function smelledSets(run: RunState): SmelledSet[] {
  const before = list('layering').flatMap(({ strips, readings, verdict: { liking, vials, wet } }) => {
    const fan = strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial);
    return setsOf(readings, { vials: vials ?? fan, liking, wet });
  });
  return [...setsOf(notesOf(run)), ...before].map(({ vials, liking }) => ({ vials: vials.map(smellOf), liking }));
}

/**
 * The sets in which a pair counts as met when strips are smelled `size` at a time: those of at most that many. So a pair of twos was
 * held under the nose by itself; a fan of five is one smell, not ten pairs, and says nothing of its twos and threes. Our decision.
 */
export function setsUpTo(sets: readonly SmelledSet[], size: number): (readonly string[])[] {
  return sets.flatMap(({ vials }) => (vials.length <= size ? [vials] : []));
}
