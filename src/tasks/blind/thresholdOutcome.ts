import { chanceOfStreaks } from '../../core/sensory/guessedStreak';
import { exact, measured, over, plus, scaled, times, type Measured } from '../../core/number/measured';
import { bestEstimate, groupThreshold } from '../../core/sensory/threshold';
import { MG_PER_G, PPM } from '../../core/number/units';
import { find } from '../../records/shelf';
import { formatPlain, measuredText } from '../../ui/format';
import type { Result } from '../../ui/controls/result';
import { contentsNow } from '../../workshop/thing/ageing';
import { dropOf } from '../../workshop/dropMass';
import { liquidOfVial } from '../../workshop/onHand';
import { isRight, type Answer } from './answers';
import type { Design } from './design';
import { answersInput, chanceResult, chanceText, type Input, type Outcome } from './words';
import { tagOf } from '../../workshop/thing/labelled';

/** One run up the series: which steps were named right, and the threshold that it gives. */
interface Climb extends ReturnType<typeof bestEstimate> {
  readonly right: readonly boolean[];
}

/** What came out of a threshold: from which strength on it is noticed, or that the series lies beside it. */
export function thresholdOutcome(design: Design, answers: readonly Answer[]): Outcome {
  const { levels, unit } = design;
  const climbs = Array.from({ length: answers.length / levels.length }, (_, r): Climb => {
    const right = levels.map(
      (_level, k) => isRight(design, r * levels.length + k, answers[r * levels.length + k]!) === true,
    );
    return { right, ...bestEstimate(levels, right) };
  });
  const bound = boundOf(climbs);
  const { amount, sdLog10 } = bound ? edgeOf(climbs, levels) : thresholdOf(climbs, levels);
  const p = chanceOfStreaks(climbs.map(({ right }) => right));
  const outside = climbs.filter((climb) => climb.outside !== null).length;
  const inputs = climbInputs(design, climbs);
  const converted = inMgPerKg(design, amount, inputs).map((one) => ({ ...one, ...bound }));
  return {
    sentence: sentenceOf(design, climbs, [{ amount, unit }, ...converted]),
    more: [
      `${climbs.map((climb, i) => `run ${i + 1}: ${climbText(climb, unit)}`).join('; ')}.`,
      ...(sdLog10 > 0
        ? [`The runs differ by a factor of ${formatPlain(10 ** sdLog10, 2)} (one standard deviation).`]
        : []),
      ...(outside > 0 ? ['Results outside the series give a bound only: move the series and repeat.'] : []),
      `A guesser does as well in ${chanceText(p)} such tests. One nose, one day: repeat it on another.`,
    ],
    results: [
      {
        label: outside > 0 ? 'Threshold, a bound only' : 'Threshold',
        amount,
        unit,
        how: { words: HOW, inputs },
        ...bound,
      },
      ...converted,
      chanceResult(p, [STREAKS], inputs),
    ],
    p,
  };
}

const HOW = [
  'Each run: the geometric mean of the strongest step missed and the next one above it (best estimate, ASTM E679 type). Over the runs: their geometric mean.',
  'All correct: half a step below the series. Strongest missed: half a step above. Both are bounds only.',
  'The ±: a run tells the step, not where in it (rectangle in the logarithm, GUM 4.3.7), and the scatter of the runs over √n. It is wide upwards: think of it as a factor.',
];
const STREAKS =
  'Steps named right without a miss up to the strongest, added over the runs: as many, or more, if every answer were a guess, 1 in 3 right. Exact; which count to take is our choice.';

/** On which side of its number a threshold lies when runs ended beyond the series. */
function boundOf(climbs: readonly Climb[]): Pick<Result, 'bound'> | null {
  const sides = new Set(climbs.flatMap(({ outside }) => outside ?? []));
  if (sides.size === 0) return null;
  return { bound: sides.size > 1 ? '≈' : sides.has('above') ? '>' : '<' };
}

/** The bound: the mean of the runs, with the last step that was tasted where a run ended beyond the series. */
function edgeOf(climbs: readonly Climb[], levels: readonly number[]): { amount: Measured; sdLog10: number } {
  const edge = { above: levels.at(-1)!, below: levels[0]! } as const;
  const { value, sdLog10 } = groupThreshold(climbs.map((climb) => (climb.outside ? edge[climb.outside] : climb.value)));
  return { amount: exact(value), sdLog10 };
}

function thresholdOf(climbs: readonly Climb[], levels: readonly number[]): { amount: Measured; sdLog10: number } {
  const { value, sdLog10 } = groupThreshold(climbs.map((climb) => climb.value));
  const runs = Math.sqrt(climbs.length);
  const inLog = (log10: number): number => (value * Math.LN10 * log10) / runs;
  const step = Math.log10(levels[1]! / levels[0]!) / Math.sqrt(12);
  const amount = plus(
    measured(value, inLog(step), { id: 'threshold step', words: 'width of a step of the series' }),
    measured(0, inLog(sdLog10), { id: 'threshold runs', words: 'scatter of the runs' }),
  );
  return { amount, sdLog10 };
}

function sentenceOf(
  { levels, unit }: Design,
  climbs: readonly Climb[],
  told: readonly Pick<Result, 'amount' | 'unit'>[],
): string {
  const all = (side: 'above' | 'below') => climbs.every(({ outside }) => outside === side);
  if (all('above'))
    return `Not noticed up to ${formatPlain(levels.at(-1)!, 3)} ${unit}: the threshold lies above the series.`;
  if (all('below'))
    return `Noticed from the weakest step on, ${formatPlain(levels[0]!, 3)} ${unit}: the threshold lies below the series.`;
  const [own, ...others] = told.map(({ amount, unit: its }) => `about ${formatPlain(amount.value, 2)} ${its}`);
  return `Noticed from ${own} on${others.map((other) => `, ${other}`).join('')}.`;
}

function climbText({ value, outside }: Climb, unit: string): string {
  return `${formatPlain(value, 3)} ${unit}${outside ? `, ${outside} the series` : ''}`;
}

function climbInputs({ levels, unit, samples }: Design, climbs: readonly Climb[]): Input[] {
  const steps = levels.map((level) => formatPlain(level, 3)).join(', ');
  return [
    {
      words: 'Series',
      text: `${steps} ${unit}`,
      source: `of ${samples[1]} in ${samples[0]}, chosen before the first sip`,
    },
    ...climbs.map((climb, i) =>
      answersInput(`Run ${i + 1}, weakest step first`, climb.right.map((one) => (one ? '✓' : '✗')).join(' ')),
    ),
    { words: 'Right by guessing', text: '1 in 3', source: '3-AFC' },
  ];
}

/** The same in mg/kg, where drops of a vial made the series and the drink in a cup is known: mass of the drops times strength over all. */
function inMgPerKg({ drops }: Design, amount: Measured, inputs: readonly Input[]): Result[] {
  const vial = find('vial', drops?.vial);
  if (!drops || !vial) return [];
  const { mgPerDrop, source } = dropOf(drops.dropper, liquidOfVial(vial));
  const strength = plus(...contentsNow(vial).map((part) => part.strength));
  const mass = times(amount, mgPerDrop);
  const cup = exact(drops.cupG * MG_PER_G);
  const reached = scaled(over(times(mass, strength), plus(cup, mass)), PPM);
  const words = [
    ...HOW.slice(0, 1),
    'Then: drops times mass of a drop times strength of the vial, over the drink with the drops in it.',
  ];
  const more: Input[] = [
    { words: 'One drop', text: measuredText(mgPerDrop, 'mg'), source },
    {
      words: `${tagOf(vial)}, all its materials`,
      text: measuredText(scaled(strength, PPM), 'mg/kg'),
      source: 'the vial as made',
    },
    { words: 'Drink in each cup', text: `${formatPlain(drops.cupG)} g`, source: 'typed; taken as exact' },
  ];
  return [{ label: 'That is', amount: reached, unit: 'mg/kg', how: { words, inputs: [...inputs, ...more] } }];
}
