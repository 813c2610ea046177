import { heatUnits, type Moment } from '../../../core/keeping/heat';
import { leastFill } from '../../../core/keeping/hotFill';
import { LOW_ACID } from '../../../core/keeping/keeping';
import { fillTable, heatKinds, type HeatKind } from '../../../tables/keeping/preserved';
import { formatFixed, formatPlain } from '../../../ui/format';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { asked } from '../plan/asked';
import { keepAsked } from '../plan/keepAsked';
import { acidityOf } from './acidity';

/** What is said of heat: dangers, and lines. */
interface Said {
  readonly dangers: readonly string[];
  readonly lines: readonly string[];
  readonly sources: readonly string[];
}

const NOTHING: Said = { dangers: [], lines: [], sources: [] };

/** What the heating comes to, beside what is published. Nothing of it says that the drink keeps. */
export function heatWords(run: RunState): Said {
  const { treated } = keepAsked(run);
  const way = answer(run, treated);
  if (way === 'bottle') return bottleWords(run);
  if (way !== 'hot') return NOTHING;
  return { ...NOTHING, lines: hotWords(run), sources: [FILL_TABLE] };
}

/** The heating as it was typed: its log, else held at one temperature. */
function logOf(run: RunState): readonly Moment[] {
  const { heatLog, heatC, heatMin } = keepAsked(run);
  const [log, atC, minutes] = [answer(run, heatLog) ?? [], answer(run, heatC), answer(run, heatMin)];
  if (log.length > 0) return log;
  if (atC === null || minutes === null) return [];
  return [
    { minutes: 0, atC },
    { minutes, atC },
  ];
}

function bottleWords(run: RunState): Said {
  const kind = heatKinds.find(({ id }) => id === answer(run, keepAsked(run).heatKind));
  const log = logOf(run);
  const units = kind && outcome(() => ({ of: heatUnits(log, kind) })).value?.of;
  if (!kind || units === undefined) return NOTHING;
  const hottest = Math.max(...log.map(({ atC }) => atC));
  const isGassed = (answer(run, asked(run).volumes) ?? 0) > 0;
  return {
    sources: [kind.source],
    dangers: isGassed
      ? [
          `A bottle with gas in it has at ${formatPlain(hottest)} °C far more pressure than is computed here, and can burst in the bath. Heat it before it is carbonated, or leave it to licensed practice.`,
        ]
      : [],
    lines: [
      `‹${formatPlain(units, 3)}› units of heat: minutes as at ${formatPlain(kind.atC)} °C, ten times as fast every ${formatPlain(kind.z, 2)} °C.`,
      ...enoughWords(kind, units, acidityOf(run)?.ph),
      'What goes wrong: a bottle in the middle of the bath stays cooler, a cap never gets hot, spores survive. Keep a few bottles warm for weeks and check them, and have the process reviewed by someone licensed to.',
    ],
  };
}

/** Whether it is as much as is published for such a drink. */
function enoughWords({ enough, organism, name }: HeatKind, units: number, ph: number | undefined): string[] {
  if (!enough)
    return [`No number of units is right for every drink (${name}, against ${organism}): it takes more with juice, or with less acid.`];
  if (ph === undefined || ph > enough.upToPh)
    return [`Published up to pH ${formatPlain(enough.upToPh)} only: outside of it this drink is not covered.`];
  const least = formatPlain(enough.minutes * 60, 2);
  return units >= enough.minutes
    ? [`Inside of what is published for apple juice up to pH ${formatPlain(enough.upToPh)}: at least ${least} s, against ${organism}. That is no promise.`]
    : [`Less than the ${least} s that are published for apple juice, against ${organism}.`];
} // prettier-ignore

function hotWords(run: RunState): string[] {
  const { fillC, fillMin } = keepAsked(run);
  const [atC, minutes, ph] = [answer(run, fillC), answer(run, fillMin), acidityOf(run)?.ph];
  if (atC === null || minutes === null || ph === undefined) return [];
  const { value, problem } = outcome(() => ({ least: leastFill(fillTable, ph) }));
  if (!value) return [...(ph > LOW_ACID ? [] : [`${problem}.`]), ASK];
  const least = `${formatFixed(value.least, 0)} °C at pH ${formatFixed(ph, 1)}`;
  const isHot = atC >= value.least && minutes >= 1;
  return [
    isHot
      ? `Inside of what is published for filling acid food hot: at least ‹${least}›, held 1 to 3 min closed and upside down. That is no promise.`
      : `Outside of what is published for filling acid food hot: at least ‹${least}›, held 1 to 3 min closed and upside down.`,
    'What goes wrong: the last bottles are filled cooler, light plastic shrinks above about 60 °C, and cold glass cracks.',
    ASK,
  ];
}

const ASK = 'For anything that is sold, the process is set by someone licensed to.';
const FILL_TABLE = 'University of Arkansas: fill temperatures for acidified foods';
