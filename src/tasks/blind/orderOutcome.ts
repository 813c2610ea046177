import { comparePair, median } from '../../core/sensory/hedonic';
import { friedman, leastRankDistance } from '../../core/sensory/ranking';
import { formatPlain } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import { samplesOf, type Answer } from './answers';
import type { Design } from './design';
import { expectedOutcome } from './expectedOutcome';
import { answersInput, chanceResult, chanceText, riskInput, type Outcome } from './words';

/** What came out of a ranking: of the order expected, if one was, else whether there is any. */
export function rankingOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const rows = answers.map((answer, i) => {
    const order = samplesOf(design, i, answer); // least first
    return design.samples.map((_, sample) => order.indexOf(sample) + 1);
  });
  const any = anyOrder(design, rows);
  if (!design.expected) return any;
  const expected = expectedOutcome(design, rows);
  return {
    ...expected,
    more: [...expected.more, ...any.more.slice(0, 2)],
    results: [...expected.results, ...any.results],
  };
}

function anyOrder(design: Design, rows: readonly (readonly number[])[]): Outcome {
  const { rankSums, f, exact, chiSquared } = friedman(rows);
  const p = exact ?? chiSquared;
  const least = leastRankDistance(rows.length, design.samples.length, design.risk);
  const order = design.samples.map((name, i) => ({ name, sum: rankSums[i]! })).sort((a, b) => a.sum - b.sum);
  const apart = order.flatMap((low, i) =>
    order.slice(i + 1).flatMap((high) => (high.sum - low.sum > least ? [`${low.name} below ${high.name}`] : [])),
  );
  const shown = p <= design.risk;
  const sums = order.map(({ name, sum }) => `${name} (${formatPlain(sum)})`).join(', ');
  return {
    sentence: shown ? 'They differ, in this order.' : 'No order shown: as it came out, so chance does too.',
    more: [
      `From least to most: ${sums}. In brackets the sum of ranks.`,
      ...(shown && apart.length > 0
        ? [`Clearly apart, by more than ${formatPlain(least, 3)}: ${apart.join('; ')}.`]
        : []),
      `By chance alone it happens in ${chanceText(p)} such tests.`,
    ],
    results: [friedmanResult(design, { sittings: rows.length, sums, f, exact, p, least })],
    p,
  };
}

interface Ranked {
  readonly sittings: number;
  readonly sums: string;
  readonly f: number;
  readonly exact: number | null;
  readonly p: number;
  readonly least: number;
}

function friedmanResult({ expected, risk }: Design, { sittings, sums, f, exact, p, least }: Ranked): Result {
  const words = [
    `Friedman’s test: how far the sums of ranks lie from their mean. ${countedHow(exact)}`,
    'Two samples are clearly apart when their sums differ by more than z·√(J·p·(p + 1)/6).',
  ];
  const inputs = [
    answersInput('Sessions', String(sittings)),
    answersInput('Sums of ranks', sums),
    { words: 'Friedman’s F', text: formatPlain(f, 5), source: 'ISO 8587' },
    { words: 'Least difference that counts', text: formatPlain(least, 4), source: 'ISO 8587' },
    riskInput(risk),
  ];
  const result = chanceResult(p, words, inputs);
  return expected ? { ...result, label: 'Chance of any order so clear' } : result;
}

function countedHow(exact: number | null): string {
  return exact === null
    ? 'Its chance comes from chi-squared: too many orders to count.'
    : 'Its chance is exact: every order of every session counted.';
}

/** What came out of scores of liking. */
export function hedonicOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const rows = answers.map((answer, i) => {
    const order = samplesOf(design, i, answer);
    return design.samples.map((_, sample) => answer.liking[order.indexOf(sample)]!);
  });
  const medians = design.samples.map((name, i) => `${name} ${formatPlain(median(rows.map((row) => row[i]!)))}`);
  const { p, words, inputs } = design.samples.length === 2 ? twoLiked(design, rows) : manyLiked(rows);
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
        [words, 'The points of the scale are an order, not a measure: so medians, and tests by rank.'],
        [
          answersInput('Sessions', String(rows.length)),
          answersInput('Medians', medians.join(', ')),
          ...inputs,
          riskInput(design.risk),
        ],
      ),
    ],
    p,
  };
}

function twoLiked({ samples }: Design, rows: readonly (readonly number[])[]) {
  const { wilcoxonP, signP, firstLiked, secondLiked } = comparePair(
    rows.map((row) => row[0]!),
    rows.map((row) => row[1]!),
  );
  return {
    p: wilcoxonP,
    words: 'Wilcoxon’s signed ranks, every sign counted, both sides. Sessions that score both alike are left out.',
    inputs: [
      answersInput('Liked better', `${samples[0]} ${firstLiked} times, ${samples[1]} ${secondLiked} times`),
      { words: 'By the sign test alone', text: formatPlain(signP, 4), source: 'exact binomial, both sides' },
    ],
  };
}

function manyLiked(rows: readonly (readonly number[])[]) {
  const { f, exact, chiSquared } = friedman(rows);
  return {
    p: exact ?? chiSquared,
    words: `Friedman’s test on the scores of each session, ties sharing their ranks. ${countedHow(exact)}`,
    inputs: [{ words: 'Friedman’s F', text: formatPlain(f, 5), source: 'ISO 8587' }],
  };
}
