import { same } from '../../core/blend/region';
import type { BlendFacts, BlendPoint } from '../../ui/plot/BlendMark';
import { likingText } from '../../ui/likingText';
import { formatPlain } from '../../ui/format';
import { dropsWords } from './blends';
import { foundIn, type Search } from './search';

/** A search as a picture: its surface, the blends judged, the best, and the next one while it goes on; told in words too. @throws Refusal without likings */
export function mapOf(search: Search, goesOn: boolean): BlendFacts {
  const { vials, bounds, judged } = search;
  const { best, bestDrops, next, nextDrops, belief } = foundIn(search);
  const tried = judged.filter((one, i) => judged.findIndex(({ shares }) => same(shares, one.shares)) === i);
  const words = (drops: readonly number[], shares: readonly number[]) =>
    `${dropsWords(drops, vials)}: expected ${likingText(belief.at(shares))}`;
  const points: BlendPoint[] = [
    ...tried.map(({ drops, shares }): BlendPoint => {
      const likings = judged.filter((one) => same(one.shares, shares)).map(({ liking }) => liking);
      const mean = likings.reduce((sum, one) => sum + one, 0) / likings.length;
      return { shares, sort: 'tried', liking: mean, words: `${words(drops, shares)}, judged ${likings.map((one) => formatPlain(one)).join(' and ')} of 9` }; // prettier-ignore
    }),
    ...(goesOn
      ? [{ shares: next, sort: 'next' as const, liking: null, words: `Next: ${words(nextDrops, next)}` }]
      : []),
    { shares: best.shares, sort: 'best', liking: null, words: `Expected best: ${words(bestDrops, best.shares)}` },
  ];
  return { parts: vials.map(({ tag }) => tag), bounds, surface: belief.at, points, words: points.map((one) => one.words).join('; ') }; // prettier-ignore
}
