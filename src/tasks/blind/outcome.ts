import {
  numberNeeded,
  power,
  testResult,
  type DiscriminationTest,
  type TestPlan,
} from '../../core/sensory/discrimination';
import { measured } from '../../core/number/measured';
import { formatPlain } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import { isRight, samplesOf, type Answer } from './answers';
import type { Design } from './design';
import { hedonicOutcome, rankingOutcome } from './orderOutcome';
import { thresholdOutcome } from './thresholdOutcome';
import { answersInput, chanceResult, chanceText, percent, riskInput, type Input, type Outcome } from './words';

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

type Share = ReturnType<typeof testResult>['share'];

function differenceOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const tries = design.sets.length;
  const plan = { test: design.method.id as DiscriminationTest, tries, risk: design.risk };
  const right = answers.filter((answer, i) => isRight(design, i, answer)).length;
  const { p, needed, shown, belowChance, share } = testResult(plan, right);
  const [a, b] = design.samples;
  const answered = answersInput('Right answers', `${right} of ${tries}`);
  const guessed = {
    words: 'Right by guessing',
    text: plan.test === 'triangle' ? '1 in 3' : '1 in 2',
    source: design.method.name,
  };
  return {
    sentence: shown
      ? `${right} of ${tries} right: this nose tells ${a} from ${b}.`
      : `${right} of ${tries} right: no difference shown${needed === null ? '' : `; ${needed} were needed`}.`,
    more: [
      `By guessing alone it happens in ${chanceText(p)} such tests.`,
      `Detected in ${percent(share.value)} of the tries, the rest guessed; 95 % limits ${percent(share.low)} to ${percent(share.high)}.`,
      ...(belowChance ? ['Fewer right than guessing gives: look for a mix-up of the cups.'] : []),
      ...(shown ? [] : ['Not shown is not the same as alike.']),
      'True of this nose and these samples on this day.',
    ],
    results: [
      chanceResult(
        p,
        ['Exact binomial: this many right, or more, if every answer were a guess.'],
        [answered, guessed, ...planInputs(plan, 0.5)],
      ),
      shareResult('Share who detect it', share, {
        words: [
          'Share right, less what guessing gives, over what guessing leaves: (right − g) / (1 − g), not below 0.',
          LIMITS,
        ],
        inputs: [answered, guessed],
      }),
    ],
    p,
  };
}

function preferenceOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const tries = design.sets.length;
  const plan = { test: 'preference' as const, tries, risk: design.risk };
  const first = answers.filter((answer, i) => samplesOf(design, i, answer)[0] === 0).length;
  const liked = first * 2 >= tries ? 0 : 1;
  const most = Math.max(first, tries - first);
  const { p, shown } = testResult(plan, first);
  const { share } = testResult(plan, most);
  const name = design.samples[liked]!;
  const answered = answersInput(`Answers for ${name}`, `${most} of ${tries}`);
  return {
    sentence: shown
      ? `${name} is liked better: ${most} of ${tries}.`
      : `No preference shown: ${most} of ${tries} for ${name}.`,
    more: [
      `Without any preference it happens in ${chanceText(p)} such tests.`,
      `Liked better in ${percent(share.value)} of the tries; 95 % limits ${percent(share.low)} to ${percent(share.high)}.`,
    ],
    results: [
      chanceResult(
        p,
        ['Exact binomial, both sides: as many answers for one of the two, or more, if both were liked alike.'],
        [answered, ...planInputs(plan, 0.75)],
      ),
      shareResult(`Answers for ${name}`, share, {
        words: ['Answers for it over all answers.', LIMITS],
        inputs: [answered],
      }),
    ],
    p,
  };
}

const LIMITS =
  'Limits: Clopper–Pearson, exact, 95 %. The ± is half their width; the limits themselves need not lie evenly about the value.';

/** What was known before the first sip: the number needed, and the power, for a share told so often. */
function planInputs(plan: TestPlan, share: number): Input[] {
  const needed = numberNeeded(plan);
  const told = plan.test === 'preference' ? 'one of three to one' : 'one detected half of the time';
  const difference = plan.test === 'preference' ? 'preference' : 'difference';
  return [
    riskInput(plan.risk),
    {
      words: 'Smallest number that shows it',
      text: needed === null ? 'none: too few tries' : `${needed} of ${plan.tries}`,
      source: 'exact binomial',
    },
    {
      words: `Power: a ${difference}, ${told}, is noticed with`,
      text: `${formatPlain(power(plan, share) * 100, 3)} %`,
      source: 'exact binomial, known before the first sip',
    },
  ];
}

function shareResult(label: string, { value, low, high }: Share, how: Result['how']): Result {
  const u = (high - low) / 4; // so that the ± at k = 2 is half the width of the limits
  const limits = {
    words: '95 % limits',
    text: `${formatPlain(low * 100, 3)} to ${formatPlain(high * 100, 3)} %`,
    source: 'Clopper & Pearson 1934',
  };
  return {
    label,
    amount: measured(value * 100, u * 100, { id: 'tries', words: 'so few tries' }),
    unit: '%',
    how: { words: how.words, inputs: [...how.inputs, limits] },
  };
}
