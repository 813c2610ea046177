import { measured } from '../../core/number/measured';
import { repeatability } from '../../core/blend/nextBlend';
import { highestFrom } from '../../core/blend/highest';
import { lattice } from '../../core/blend/region';
import { bestCarried, heightAt, termParts, type Surface } from '../../core/blend/scheffe';
import type { Result } from '../../ui/controls/result';
import { formatChance, formatCount, formatFixed, formatShare } from '../../ui/format';
import { dropsWords } from './blends';
import { foundIn, type Found, type Search } from './search';

/** Whether the best blend is told apart from the one after it, in a sentence; '' where there is no other. */
export function apartWords({ lead, runnerUpDrops, toldApart }: Found, { vials }: Search): string {
  if (!lead || !runnerUpDrops) return '';
  const other = dropsWords(runnerUpDrops, vials);
  const by = `${formatFixed(lead.value, 1)} ± ${formatFixed(2 * lead.uncertainty, 1)} points`;
  return toldApart ? `Better than ${other} by ${by}.` : `No clear difference from ${other} yet: ${by} between them.`;
}

/** Whether another blend is worth it, in a sentence. */
export function enoughWords({ enough, gain }: Found): string {
  if (enough === 'clear') return 'That is enough: another blend would hardly change it.';
  if (enough === 'little to gain') return 'That is enough: what is left to gain is less than a nose can tell.';
  if (enough === 'many') return 'Thirty blends are enough for one nose.';
  return `The next one is expected to gain ${formatFixed(gain, 1)} points.`;
}

/** How well the nose repeats, in a sentence; '' where nothing was judged twice. */
export function repeatWords({ judged }: Search): string {
  const known = repeatability(judged);
  if (!known) return '';
  if (known.sd === 0) return 'You gave the same liking to a blend that came twice.';
  const times = known.freedom === 1 ? 'the one blend that came twice' : `${known.freedom} repeats`;
  return `When the same blend came up again, your likings differed by about ${formatFixed(known.sd * Math.SQRT2, 1)} points (from ${times}).`;
}

/** The liking that is expected of the best blend, with how it was worked out. @throws Refusal without likings */
export function resultOf(search: Search): Result {
  const { best, bestDrops, belief } = foundIn(search);
  const { judged, vials } = search;
  const surface = bestCarried(judged);
  return {
    label: `Expected liking of ${dropsWords(bestDrops, vials)}`,
    amount: measured(best.expected.value, best.expected.uncertainty, {
      id: `likings:${judged.length}`,
      words: `scatter of ${formatCount(judged.length)} likings`,
    }),
    unit: 'of 9',
    how: {
      words: [
        `From your ${formatCount(judged.length)} likings it is estimated how much you would like every other mix of these vials.`,
        'A Gaussian process over the true shares of the drops, averaged over how fast liking may change and how well a nose repeats.',
        'The next blend is the one whose judging tells most of an expected improvement: little of one that is known well already. Two blends differ clearly when it is by twice the uncertainty of their difference.',
        ...(surface ? surfaceWords(surface, search) : []),
      ],
      inputs: [
        { words: 'Likings', text: formatCount(judged.length), source: 'your judging, 1 to 9' },
        { words: 'One judgement scatters by', text: `${formatFixed(belief.noise, 1)} points`, source: 'fitted, SD' },
        ...(surface ? termInputs(surface, vials.map(({ tag }) => tag)) : []), // prettier-ignore
      ],
    },
  };
}

/** The plain surface that the likings carry, where it is highest, and whether it fits. */
function surfaceWords(surface: Surface, { vials, bounds }: Search): string[] {
  const { model, r2, rmse, lackOfFit } = surface;
  const tags = vials.map(({ tag }) => tag).join(', ');
  const top = highestFrom(lattice(bounds, STEPS), (shares) => heightAt(surface, shares), bounds);
  const at = top.flatMap((share, i) => (share > 0.005 ? `${formatShare(share, 2)} ${vials[i]!.tag}` : [])).join(', ');
  const fit = `Beside it, a ${model} surface of Scheffé in the shares of ${tags}: R² ${formatFixed(r2, 2)}, scatter ${formatFixed(rmse, 2)} points, highest at ${at}.`;
  if (!lackOfFit) return [fit];
  const told = lackOfFit.p < 0.05 ? 'it misses more than repeats differ by' : 'no lack of fit shows';
  return [fit, `Against the repeats ${told} (chance ${formatChance(lackOfFit.p)}).`];
}

const STEPS = 8; // of a share between the blends that the way up begins at

/** Its coefficients: what each vial is alone, and what several lift each other by. */
function termInputs(
  { model, coefficients, standardErrors }: Surface,
  tags: readonly string[],
): Result['how']['inputs'] {
  return termParts(tags.length, model).map((parts, i) => ({
    words: parts.map((part) => tags[part]!).join(' × '),
    text: `${formatFixed(coefficients[i]!, 1)} ± ${formatFixed(2 * standardErrors[i]!, 1)} points`,
    source: parts.length === 1 ? 'alone' : 'together, beyond each alone',
  }));
}
