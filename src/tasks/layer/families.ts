import { find, list } from '../../records/shelf';
import { mixOf } from '../../workshop/thing/mixOf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields } from './fields';

/** The colour family of a strip: chosen in this run, else the last one given to its vial or to another of the same smell, else none. */
export function familyOf(run: RunState, vial: string): string {
  return answer(run, fields.family(vial)) ?? lastFamily(vial) ?? 'none';
}

/**
 * What a vial smells of, as a key that outlives the vial: its materials. A vial made again of the same materials has
 * been smelled with whatever the old one was smelled with.
 */
export function smellOf(vial: string): string {
  const known = find('vial', vial);
  return (known && mixOf(known)) || vial;
}

function lastFamily(vial: string): string | undefined {
  const smell = smellOf(vial);
  for (const { strips } of list('layering')) {
    const strip = strips.find(({ vial: other, family }) => family !== undefined && smellOf(other) === smell);
    if (strip) return strip.family;
  }
  return undefined;
}
