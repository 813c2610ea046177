import type { RunState } from '../fold';

/** The colour family of a strip: chosen in this run, else none. */
export function familyOf(run: RunState, vial: string): string {
  return run.typed[`family.${vial}`] ?? 'none';
}
