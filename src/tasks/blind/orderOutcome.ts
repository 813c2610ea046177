import { comparePair, median } from '../../core/hedonic';
import { friedman, leastRankDistance } from '../../core/ranking';
import { formatPlain } from '../../ui/format';
import { samplesOf, type Answer } from './answers';
import type { Design } from './design';
import { chanceResult, chanceText, type Outcome } from './words';

/** What came out of a ranking. */
export function rankingOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const rows = answers.map((answer, i) => {
    const order = samplesOf(design, i, answer); // least first
    return design.samples.map((_, sample) => order.indexOf(sample) + 1);
  });
  const { rankSums, exact, chiSquared } = friedman(rows);
  const p = exact ?? chiSquared;
  const least = leastRankDistance(rows.length, design.samples.length, design.risk);
  const order = design.samples.map((name, i) => ({ name, sum: rankSums[i]! })).sort((a, b) => a.sum - b.sum);
  const apart = order.flatMap((low, i) =>
    order.slice(i + 1).flatMap((high) => (high.sum - low.sum > least ? [`${low.name} below ${high.name}`] : [])),
  );
  const shown = p <= design.risk;
  return {
    sentence: shown ? 'They differ, in this order.' : 'No order shown: as it came out, so chance does too.',
    more: [
      `From least to most: ${order.map(({ name, sum }) => `${name} (${formatPlain(sum)})`).join(', ')}. In brackets the sum of ranks.`,
      ...(shown && apart.length > 0
        ? [`Clearly apart, by more than ${formatPlain(least, 3)}: ${apart.join('; ')}.`]
        : []),
      `By chance alone it happens in ${chanceText(p)} such tests.`,
    ],
    results: [
      chanceResult(
        p,
        exact === null
          ? 'Friedman’s test, by chi-squared: too many to count.'
          : 'Friedman’s test, every order counted.',
        [{ words: 'Sittings', text: String(rows.length), source: 'your locked answers' }],
      ),
    ],
    p,
  };
}

/** What came out of scores of liking. */
export function hedonicOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const rows = answers.map((answer, i) => {
    const order = samplesOf(design, i, answer);
    return design.samples.map((_, sample) => answer.liking[order.indexOf(sample)]!);
  });
  const medians = design.samples.map((name, i) => `${name} ${formatPlain(median(rows.map((row) => row[i]!)))}`);
  const two = design.samples.length === 2;
  const ranked = two ? null : friedman(rows);
  const p = ranked
    ? (ranked.exact ?? ranked.chiSquared)
    : comparePair(
        rows.map((row) => row[0]!),
        rows.map((row) => row[1]!),
      ).wilcoxonP;
  return {
    sentence: p <= design.risk ? 'They are not liked alike.' : 'No difference in liking shown.',
    more: [
      `Middle liking, 1 to 9: ${medians.join(', ')}.`,
      `By chance alone it happens in ${chanceText(p)} such tests.`,
      'One nose’s liking, not people’s.',
    ],
    results: [
      chanceResult(
        p,
        two ? 'Wilcoxon’s signed ranks, every sign counted.' : 'Friedman’s test on the scores of each sitting.',
        [{ words: 'Sittings', text: String(rows.length), source: 'your locked answers' }],
      ),
    ],
    p,
  };
}
