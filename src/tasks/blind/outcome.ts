import { testResult, type DiscriminationTest } from '../../core/discrimination';
import { bestEstimate, groupThreshold } from '../../core/threshold';
import { formatPlain } from '../../ui/format';
import { isRight, samplesOf, type Answer } from './answers';
import type { Design } from './design';
import { hedonicOutcome, rankingOutcome } from './orderOutcome';
import { chanceResult, chanceText, percent, type Outcome } from './words';

/** The outcome of a test in which every set was answered. */
export function outcomeOf(design: Design, answers: readonly Answer[]): Outcome {
  switch (design.method.id) {
    case 'ranking':
      return rankingOutcome(design, answers);
    case 'hedonic':
      return hedonicOutcome(design, answers);
    case 'threshold':
      return thresholdOutcome(design, answers);
    case 'preference':
      return preferenceOutcome(design, answers);
    default:
      return differenceOutcome(design, answers);
  }
}

function differenceOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const tries = design.sets.length;
  const test = design.method.id as DiscriminationTest;
  const right = answers.filter((answer, i) => isRight(design, i, answer)).length;
  const { p, needed, shown, belowChance, share } = testResult({ test, tries, risk: design.risk }, right);
  const [a, b] = design.samples;
  return {
    sentence: shown
      ? `${right} of ${tries} right: this nose tells ${a} from ${b}.`
      : `${right} of ${tries} right: no difference shown${needed === null ? '' : `; ${needed} were needed`}.`,
    more: [
      `By guessing alone it happens in ${chanceText(p)} such tests.`,
      `Truly told in ${percent(share.value)} of the tries, the rest guessed; 95 % limits ${percent(share.low)} to ${percent(share.high)}.`,
      ...(belowChance ? ['Fewer right than guessing gives: look for a mix-up of the cups.'] : []),
      ...(shown ? [] : ['Not shown is not the same as alike.']),
      'True of this nose and these samples on this day.',
    ],
    results: [
      chanceResult(p, 'Exact binomial: this many right, or more, if every answer were a guess.', [
        { words: 'Right answers', text: `${right} of ${tries}`, source: 'your locked answers' },
        { words: 'Right by guessing', text: test === 'triangle' ? '1 in 3' : '1 in 2', source: design.method.name },
      ]),
    ],
    p,
  };
}

function preferenceOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const tries = design.sets.length;
  const first = answers.filter((answer, i) => samplesOf(design, i, answer)[0] === 0).length;
  const { p, shown } = testResult({ test: 'preference', tries, risk: design.risk }, first);
  const liked = design.samples[first * 2 >= tries ? 0 : 1]!;
  const most = Math.max(first, tries - first);
  return {
    sentence: shown
      ? `${liked} is liked better: ${most} of ${tries}.`
      : `No preference shown: ${most} of ${tries} for ${liked}.`,
    more: [`Without any preference it happens in ${chanceText(p)} such tests.`],
    results: [
      chanceResult(p, 'Exact binomial, both sides: as many answers for one of the two, if both were liked alike.', [
        { words: 'Answers for it', text: `${most} of ${tries}`, source: 'your locked answers' },
      ]),
    ],
    p,
  };
}

function thresholdOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const { levels } = design;
  const runs = Array.from({ length: answers.length / levels.length }, (_, r) =>
    levels.map((_level, k) => isRight(design, r * levels.length + k, answers[r * levels.length + k]!) === true),
  );
  const estimates = runs.map((right) => bestEstimate(levels, right));
  const { value, sdLog10 } = groupThreshold(estimates.map((estimate) => estimate.value));
  const outside = estimates.filter((estimate) => estimate.outside !== null).length;
  const runText = estimates.map(
    (estimate, i) =>
      `run ${i + 1}: ${formatPlain(estimate.value, 3)}${estimate.outside ? `, ${estimate.outside} the ladder` : ''}`,
  );
  return {
    sentence: `Noticed from about ${formatPlain(value, 2)} mg/kg on.`,
    more: [
      `${runText.join('; ')}.`,
      ...(sdLog10 > 0
        ? [`The runs differ by a factor of ${formatPlain(10 ** sdLog10, 2)} (one standard deviation).`]
        : []),
      ...(outside > 0 ? ['A run beyond the ladder gives a bound only: move the ladder and repeat.'] : []),
      'A pure guesser ends above the ladder in two runs of three: repeat it on another day.',
    ],
    results: [],
    p: null,
  };
}
