import { list } from '../records/shelf';
import { formerMaxima } from '../tables/useLevels';

const LIKED = 6; // of 9, "like slightly" on the hedonic scale and better

/** Levels of a material, or of several together, that were liked before, mg/kg: lowest and highest of one's own tastings that had all of them; null without any. */
export function likedLevels(materials: readonly string[]): { low: number; high: number } | null {
  const levels = list('tasting')
    .filter(({ liking }) => liking !== null && liking >= LIKED)
    .flatMap(({ reached }) => {
      const own = reached.filter(({ material }) => materials.includes(material));
      return own.length === materials.length ? own.reduce((sum, { mgPerKg }) => sum + mgPerKg.value, 0) : [];
    });
  return levels.length === 0 ? null : { low: Math.min(...levels), high: Math.max(...levels) };
}

/** What a rule that is gone allowed of a substance in food, mg/kg: an outer fence, never a target; null where none was read. */
export function formerMaximum(cas: string | undefined): { mgPerKg: number; source: string } | null {
  const found = formerMaxima.flatMap(({ rows, source }) => {
    const mgPerKg = cas === undefined ? undefined : rows[cas.trim()];
    return mgPerKg === undefined ? [] : [{ mgPerKg, source }];
  });
  return found.sort((a, b) => a.mgPerKg - b.mgPerKg)[0] ?? null;
}
