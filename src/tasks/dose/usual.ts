import type { Vial } from '../../records/kind/vial';
import { find, list } from '../../records/shelf';
import { formerMaxima } from '../../tables/useLevels';

const LIKED = 6; // of 9, "like slightly" on the hedonic scale and better

/** Levels of a material that were liked before, mg/kg: lowest and highest of one's own tastings; null without any. */
export function likedLevels(vial: Vial): { low: number; high: number } | null {
  if (vial.contents.length !== 1) return null;
  const id = vial.contents[0]!.material;
  const levels = list('tasting')
    .filter(({ liking }) => liking !== null && liking >= LIKED)
    .flatMap(({ reached }) => reached.filter(({ material }) => material === id).map(({ mgPerKg }) => mgPerKg.value));
  return levels.length === 0 ? null : { low: Math.min(...levels), high: Math.max(...levels) };
}

/** What a rule that is gone allowed of a single substance in food, mg/kg: an outer fence, never a target; null where none was read. */
export function formerMaximum(vial: Vial): { mgPerKg: number; source: string } | null {
  const cas = vial.contents.length === 1 ? find('material', vial.contents[0]!.material)?.cas?.trim() : undefined;
  const found = formerMaxima.flatMap(({ rows, source }) => {
    const mgPerKg = cas === undefined ? undefined : rows[cas];
    return mgPerKg === undefined ? [] : [{ mgPerKg, source }];
  });
  return found.sort((a, b) => a.mgPerKg - b.mgPerKg)[0] ?? null;
}
