import { list } from '../records/shelf';
import { formerMaxima } from '../tables/useLevels';

const LIKED = 6; // of 9, "like slightly" on the hedonic scale and better

/** Levels of a material that were liked before, mg/kg: lowest and highest of one's own tastings; null without any. */
export function likedLevels(material: string): { low: number; high: number } | null {
  const levels = list('tasting')
    .filter(({ liking }) => liking !== null && liking >= LIKED)
    .flatMap(({ reached }) => reached.filter((one) => one.material === material).map(({ mgPerKg }) => mgPerKg.value));
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
