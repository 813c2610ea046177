import { closedGauge, mostVolumes, type Closed } from '../../../core/drink/gas';
import { carbonDioxidePerLitre } from '../../../core/liquid/carbonation';
import { celsius } from '../../../core/number/units';
import { formatFixed, formatPlain, formatTyped, withLocalSign } from '../../../ui/format';
import { CurvePicture } from '../../../ui/plot/CurvePicture';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import { chips } from '../../engine/card';
import type { RunState } from '../../engine/fold';
import type { Offer, SlotFacts } from '../../engine/task';
import { asked } from '../plan/asked';
import { keepAsked } from '../plan/keepAsked';
import { bottleOf, gasHeld, gaugeIn } from './bottle';
import type { KeepPart } from './part';

/** °C of a bottle left in the sun or in a car; our choice, and the end of what is known of the gas. */
const HOT = 40;
/** °C on a summer’s day; our choice. */
const WARM = 30;

/** Bottles of a drink with gas: their rating beside the pressure in them; null for a still drink. */
export function gasPart(run: RunState): KeepPart | null {
  if (!((answer(run, asked(run).volumes) ?? 0) > 0)) return null;
  const { rating, headspace, air } = keepAsked(run);
  const isRated = answer(run, rating) !== null;
  const bottle = bottleOf(run);
  return {
    ask: [rating, headspace, air],
    slots: {
      'bottle.bar': {
        missing: 'bottle rating',
        optional: true,
        usual: chips(['5', '6', '10'], 'bar'),
        ...tooMuch(run),
      },
      'bottle.head': { usual: chips(['3', '5', '10'], '%') },
    },
    section: {
      title: 'Gas',
      sentence: `${isRated ? 'Bottles rated for {bottle.bar} with' : 'Bottles with'} {bottle.head} of headspace, {bottle.air} in it`,
      chips: [rating.name],
      lines: bottle ? gasWords(run, bottle) : [],
      folded: bottle ? WAYS : [],
      picture: () => bottle && picture(run, bottle),
    },
  };
}

/** A closed bottle that gets over its rating in the sun is refused, with the gas that it bears. */
function tooMuch(run: RunState): SlotFacts {
  const bottle = bottleOf(run);
  const rating = answer(run, keepAsked(run).rating);
  if (!bottle || rating === null) return {};
  const { value, problem } = outcome(() => ({ bar: closedGauge(bottle, celsius(HOT)) }));
  if (value && value.bar <= rating) return {};
  const reached = value
    ? `it reaches ${formatFixed(value.bar, 1)} bar`
    : problem!.replace(/^it would be/, 'it reaches');
  const wrong = `At ${HOT} °C ${reached}${value ? '' : ','} in a bottle rated for ${formatPlain(rating)} bar: it can burst in someone’s hand.`;
  const offer = lessOffer(bottle, rating);
  return { wrong, ...(offer ? { mend: offer } : {}) };
}

/** The most gas that it bears, rounded down. */
function lessOffer(bottle: Closed, rating: number): Offer | null {
  const most = outcome(() => ({ of: mostVolumes(bottle, rating, celsius(HOT)) })).value?.of ?? 0;
  const volumes = formatTyped(Math.floor(most * 10) / 10, 2);
  return most >= 0.1 ? { words: `Take ${withLocalSign(volumes)} volumes`, type: { gas: volumes } } : null;
}

function gasWords(run: RunState, bottle: Closed): string[] {
  const { volumes, atC, share } = bottle;
  const filling = outcome(() => ({ bar: gaugeIn(run, volumes, atC) })).value;
  const at = (t: number) => outcome(() => ({ bar: closedGauge(bottle, celsius(t)) }));
  const [warm, hot] = [at(WARM), at(HOT)].map(({ value, problem }) => (value ? `‹${formatFixed(value.bar, 1)} bar›` : `${problem}`)) as [string, string]; // prettier-ignore
  const grams = formatPlain(carbonDioxidePerLitre(volumes), 3);
  const rating = answer(run, keepAsked(run).rating);
  return [
    ...(filling ? [`‹${formatFixed(filling.bar, 1)} bar› on the gauge at ${formatPlain(atC)} °C holds it: ‹${grams} g/L›.`] : []),
    `Closed, at ${WARM} °C: ${warm}; at ${HOT} °C: ${hot}.`,
    ...(rating === null ? ['Say what bottle and cap are rated for: no other bottle should get gas.'] : []),
    ...sharedWords(run, share),
  ]; // prettier-ignore
}

/** What sugar and alcohol do to the gas. */
function sharedWords(run: RunState, share: number): string[] {
  const { problem } = gasHeld(run);
  if (problem) return [`Counted as water: ${problem}.`];
  if (share > 0.995) return [];
  return [
    `Sugar and alcohol are counted: the drink holds ${formatFixed(share * 100, 0)} % of what water does (EU rule for sparkling wine, 20 °C).`,
  ];
}

/** Ways of gassing a little, and what they need. Common practice. */
const WAYS = [
  'Ways to gas a little of it.',
  'Keg: cold drink, the pressure above, and two to five days; shaken or through a stone, an hour.',
  'Bottle with a carbonating cap: cold, shaken hard for a minute, then left alone before it is opened.',
  'Siphon: a charge of 8 g in 1 L is about 4 volumes at most, less what stays in the headspace.',
  'Stronger water: gas the water and mix it with cold, still syrup. Half a volume and more goes in the mixing.',
  'Yeast in the bottle makes alcohol, and easily too much gas: only if you measure it.',
  'All of it works better at 1 to 4 °C, and without foam: bubbles take the gas out again.',
];

function picture(run: RunState, bottle: Closed) {
  const rating = answer(run, keepAsked(run).rating);
  const points = Array.from({ length: 21 }, (_, i) => i * 2).flatMap(
    (t) => outcome(() => ({ x: t, y: closedGauge(bottle, celsius(t)) })).value ?? [],
  );
  return (
    <CurvePicture
      title="Pressure in the closed bottle, bar, against °C"
      words="The pressure rises as the bottle gets warmer."
      points={points}
      {...(rating === null ? {} : { line: { y: rating, words: 'rating' } })}
    />
  );
}
