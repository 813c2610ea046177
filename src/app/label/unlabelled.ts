import type { Vial } from '../../records/kind/vial';
import { find, keep, list } from '../../records/shelf';

/** Vials whose label waits to be printed or written, newest first. */
export function unlabelledVials(): Vial[] {
  return list('vial').filter(({ unlabelled }) => unlabelled);
}

/** Notes that these things have their labels now; what is no vial, or had one before, stays as it is. */
export async function noteLabelled(ids: readonly string[]): Promise<void> {
  const vials = ids.flatMap((id) => find('vial', id) ?? []).filter(({ unlabelled }) => unlabelled);
  if (vials.length > 0) await keep(vials.map(({ unlabelled: _, ...vial }) => vial));
}

/** Takes that back. */
export async function noteUnlabelled(ids: readonly string[]): Promise<void> {
  const vials = ids.flatMap((id) => find('vial', id) ?? []);
  await keep(vials.map((vial) => ({ ...vial, unlabelled: true })));
}
