import { expanded, over } from '../../core/number/measured';
import type { RunState } from '../engine/fold';
import { answer } from '../engine/answers';
import type { Step } from '../engine/task';
import { isOver } from '../../core/limits/finding';
import { formatPlain } from '../../ui/format';
import { outcome } from '../../workshop/attempt';
import { dropsText, ofTarget } from '../../workshop/dropWords';
import { tagOf } from '../../workshop/thing/labelled';
import { stateWords } from '../../workshop/drinkable/limitRules';
import { worstState } from '../../core/limits/finding';
import { asksWhy } from '../shared/goingOn';
import { LimitsPanel } from '../shared/LimitsPanel';
import { drawCodes } from './DrawCodes';
import { seriesFields } from './fields';
import { vialOf } from './glass';
import { drawSeries } from './GlassRow';
import { judgeGlass } from './parts';
import { reachedResults } from './results';
import {
  blankOf,
  counterOf,
  isBlind,
  pouredOf,
  rungGlass,
  rungsOf,
  tastingOrder,
  type Poured,
  type Rung,
} from './series';
import { reachedText, seriesCard } from './seriesCard';
import { drawLiking, likingTold } from './TastingNote';

const REST = 'A sip, water, and half a minute of rest.';

/** A series of glasses: the card, codes, drops, tasting, the best one, and what was in them. */
export function seriesSteps(run: RunState): Step[] {
  const card = seriesCard(run);
  const { value: rungs } = outcome(() => rungsOf(run));
  if (!rungs || card.problem || run.at === 'blind') return [card]; // the first version asked that on a screen of its own
  const poured = pouredOf(run, rungs);
  const codes = isBlind(run) ? [codesStep(run, rungs, poured !== null)] : [];
  if (!poured) return [card, ...codes];
  const tasted = tastingOrder(run, poured);
  return [
    card,
    ...codes,
    ...poured.flatMap((one) => pourStep(run, rungs, one) ?? []),
    ...limitsStep(run, rungs),
    ...tasted.map((one) => tasteStep(run, one)),
    { key: 'best', say: 'Which glass was the best?', ask: [seriesFields.best(tasted.map(({ code }) => code))] },
    revealStep(run, poured),
  ];
}

function codesStep(run: RunState, rungs: readonly Rung[], drawn: boolean): Step {
  const blank = blankOf(run, rungs);
  return {
    key: 'codes',
    say: 'Write these codes under the glasses.',
    draw: drawCodes(rungs.length + (blank ? 1 : 0)),
    more: [`From the weakest to the strongest${blank ? ', the blank last' : ''}. If you can, let someone else pour.`],
    done: 'They are written',
    ...(drawn ? {} : { problem: 'The codes are not drawn yet.' }),
  };
}

/** No bottle is chosen for a blank, and it is tasted like the others. */
const BLANK =
  'The blank: the solvent without the material, from a bottle that is food grade, with a clean dropper of the same kind.';

/** The drops of one glass; null for a blank that gets none. */
function pourStep(run: RunState, rungs: readonly Rung[], { k, code, rung }: Poured): Step | null {
  const blank = rung ? null : blankOf(run, rungs);
  const drops = rung?.drops ?? blank?.drops ?? 0;
  const what = rung ? tagOf(vialOf(run, 1)!) : blank?.solvent;
  if (!what) return null;
  const counter = counterOf(k);
  return {
    key: counter,
    say: `‹${dropsText(drops)}› of ${what} into glass ‹${code}›.`,
    ...(rung ? {} : { more: [BLANK] }),
    draw: () => drawSeries(run, k) ?? <></>,
    pad: {
      counter,
      target: drops,
      live: (n) => (n === drops && rung ? reachedText(rung) : ofTarget(n, drops)),
    },
    ...((run.drops[counter] ?? 0) === 0 ? { problem: 'No drop is counted yet.' } : {}),
  };
}

/** What the rules say of the strongest glass, where it is over a limit: who goes on says why. */
function limitsStep(run: RunState, rungs: readonly Rung[]): Step[] {
  const strongest = outcome(() => rungGlass(run, rungs.length)).value;
  const { value: judgement } = outcome(() => strongest && judgeGlass(run, strongest));
  if (!judgement?.findings.some(isOver)) return [];
  return [
    {
      key: 'limits',
      say: `The strongest glass is ‹${stateWords[worstState(judgement.findings)].words}›.`,
      more: ['Read this before you taste it.'],
      ...asksWhy(run, judgement),
      draw: (walk) => <LimitsPanel walk={walk} judgement={judgement} />,
      done: 'Taste them',
    },
  ];
}

function tasteStep(run: RunState, { k, code, rung }: Poured): Step {
  const level = rung ? `About ${formatPlain(rung.target, 3)} mg/kg. ` : 'The blank. ';
  return {
    key: `taste.${k}`,
    say: `Taste glass ‹${code}›.`,
    more: [isBlind(run) ? REST : `${level}${REST}`],
    ask: [seriesFields.note(k)],
    draw: drawLiking(`liking.${k}`),
    told: likingTold(run, `liking.${k}`),
    done: 'Next',
  };
}

function revealStep(run: RunState, poured: readonly Poured[]): Step {
  const best = answer(run, seriesFields.best(poured.map(({ code }) => code)));
  const blank = poured.find(({ rung }) => rung === null);
  const isBlank = blank && best === blank.code;
  return {
    key: 'reveal',
    say:
      best === null || best === 'none'
        ? 'This was in them.'
        : `Glass ‹${best}› was the best${isBlank ? ': it was the blank' : ''}.`,
    more: [...(blank && !isBlank ? [`Glass ${blank.code} was the blank.`] : []), ...ratioWords(run, poured)],
    results: poured.flatMap(({ k, code, rung }) => {
      const glass = rung && outcome(() => rungGlass(run, k)).value;
      const [perKg] = glass ? reachedResults(glass) : [];
      const [[, liking]] = likingTold(run, `liking.${k}`) as [[string, string]];
      const label = [`Glass ${code}`, best === code && 'the best', liking !== '–' && `liked ${liking}`]
        .filter(Boolean)
        .join(' · ');
      return perKg ? [{ ...perKg, label }] : [];
    }),
    done: 'Save',
  };
}

/** How well the ratio of neighbouring glasses is known: drop mass and strength are the same in all of them, and cancel. */
function ratioWords(run: RunState, poured: readonly Poured[]): string[] {
  const amounts = poured.flatMap(({ k, rung }) => {
    const glass = rung && outcome(() => rungGlass(run, k)).value;
    const amount = glass ? reachedResults(glass)[0]?.amount : undefined;
    return amount && amount.value > 0 ? amount : [];
  });
  const ratios = amounts.slice(1).map((amount, i) => over(amount, amounts[i]!));
  if (ratios.length === 0) return [];
  const worst = Math.max(...ratios.map((ratio) => expanded(ratio) / ratio.value));
  return [
    `From glass to glass the ratio is known to ± ${formatPlain(worst * 100, 2)} %, better than the amounts: drop and strength are the same in all of them.`,
  ];
}
