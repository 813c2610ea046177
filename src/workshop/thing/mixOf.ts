import type { Vial } from '../../records/kind/vial';

/** What is in a vial, as a key that outlives it: the ids of its materials, whatever their strengths. '' of one that holds none. */
export function mixOf({ contents }: Pick<Vial, 'contents'>): string {
  return contents
    .map(({ material }) => material)
    .sort()
    .join('+');
}
