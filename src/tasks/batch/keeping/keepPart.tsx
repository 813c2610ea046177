import { activeShare } from '../../../core/keeping/preservative';
import { keepingOf, type Drink, type KeepFinding } from '../../../core/keeping/keeping';
import { preservings } from '../../../tables/keeping/preserved';
import { CurvePicture } from '../../../ui/plot/CurvePicture';
import { sentenceWords } from '../../../ui/sentence';
import { outcome } from '../../../workshop/attempt';
import { answer } from '../../engine/answers';
import { chips } from '../../engine/card';
import type { Field } from '../../engine/fields';
import type { RunState } from '../../engine/fold';
import type { SlotFacts } from '../../engine/task';
import { asked } from '../plan/asked';
import { amountIn, keepAsked } from '../plan/keepAsked';
import { planOf } from '../plan/plan';
import { acidityOf } from './acidity';
import { heatWords } from './heat';
import type { KeepPart } from './part';

/** What keeps the drink, and how far that is published and tested; with a best-before that the person sets. */
export function keepPart(run: RunState): KeepPart {
  const { benzoate, sorbate } = asked(run);
  const { treated, best, why, ...now } = keepAsked(run);
  const benzoic = answer(run, benzoate) === 0 ? '{benzoate}' : '{benzoate} of benzoic acid';
  const sorbic = answer(run, sorbate) === 0 ? '{sorbate}' : '{sorbate} of sorbic acid';
  const heat = heatOf(run);
  const until = answer(run, best) ? '; best before {best}' : '';
  const found = keepFindings(run) ?? [];
  const heated = heatWords(run);
  return {
    ask: [benzoate, sorbate, treated, ...heat.ask, best],
    slots: { ...slotsOf(run), best: { missing: 'best before', optional: true, beside: [why] } },
    section: {
      title: 'Keeping',
      sentence: `${benzoic}, ${sorbic}, {treated}${heat.words}${until}`,
      chips: [best.name, ...(heat.ask.includes(now.heatLog) ? [now.heatLog.name] : [])],
      dangers: dangersOf(run),
      lines: [...of(found, 'outside', 'inside', 'said'), ...heated.lines, ...bestWords(run)],
      folded: sourcesOf([...found.map(({ source }) => source), ...heated.sources]),
      picture: () => picture(run),
    },
  };
}

/** What can hurt someone who drinks it, or stands beside the bottle; a sentence each. */
export function dangersOf(run: RunState): string[] {
  return [...of(keepFindings(run) ?? [], 'danger'), ...heatWords(run).dangers];
}

function of(found: readonly KeepFinding[], ...states: readonly KeepFinding['state'][]): string[] {
  return found.filter(({ state }) => states.includes(state)).map(({ said }) => sentenceWords(said));
}

/** Where all of it comes from; nothing while nothing is said. */
function sourcesOf(sources: readonly string[]): string[] {
  return sources.length === 0 ? [] : ['Where this comes from.', ...new Set(sources.map((one) => `${one}.`))];
}

/** How it is heated, in the sentence. */
function heatOf(run: RunState): { ask: readonly Field[]; words: string } {
  const { treated, heatKind, heatC, heatMin, heatLog, fillC, fillMin } = keepAsked(run);
  const way = answer(run, treated);
  if (way === 'hot') return { ask: [fillC, fillMin], words: ' at {fill.c}, held closed for {fill.min}' };
  if (way !== 'bottle') return { ask: [], words: '' };
  const hasLog = (answer(run, heatLog) ?? []).length > 0;
  return hasLog
    ? { ask: [heatLog, heatKind], words: ' by the log {heat.log}, counted as for {heat.kind}' }
    : { ask: [heatC, heatMin, heatKind, heatLog], words: ' to {heat.c} for {heat.min}, counted as for {heat.kind}' };
}

function slotsOf(run: RunState): Record<string, SlotFacts> {
  const { benzoate, sorbate } = asked(run);
  const usual = chips(['0', '100', '150', '200'], 'mg/L');
  return {
    benzoate: { usual, ...(answer(run, benzoate) === 0 ? { shows: 'no benzoic acid' } : {}) },
    sorbate: { usual, ...(answer(run, sorbate) === 0 ? { shows: 'no sorbic acid' } : {}) },
    'heat.log': { missing: 'temperature log', optional: true },
    'heat.c': { usual: chips(['62', '65', '72'], '°C') },
    'heat.min': { usual: chips(['10', '20', '30'], 'min') },
    'fill.c': { usual: chips(['82', '85', '88'], '°C') },
    'fill.min': { usual: chips(['1', '2', '3'], 'min') },
  };
}

/** The drink as its keeping is judged; null until there is a plan. */
function drinkAs(run: RunState): Drink | null {
  const plan = outcome(() => planOf(run)).value;
  if (!plan) return null;
  const { brix } = plan.batch.drink;
  const acidity = acidityOf(run);
  return {
    ph: acidity?.ph ?? null,
    acidGPerL: acidity?.acidGPerL ?? 0,
    sugarPerL: brix * plan.drink.densityGPerMl * 1000, // mL per L
    brix: brix * 100,
    abv: plan.drink.abv,
    benzoicMgPerL: answer(run, asked(run).benzoate) ?? 0,
    sorbicMgPerL: answer(run, asked(run).sorbate) ?? 0,
    ascorbicMgPerL: amountIn(run, keepAsked(run).ascorbic),
    treated: answer(run, keepAsked(run).treated) ?? 'none',
  };
}

/** What is said of its keeping; null until there is a plan. */
export function keepFindings(run: RunState): KeepFinding[] | null {
  const drink = drinkAs(run);
  return drink && keepingOf(drink, preservings);
}

function bestWords(run: RunState): string[] {
  const { best, why } = keepAsked(run);
  if (!answer(run, best)) return [];
  const reason = answer(run, why);
  return [reason ? `You set the day because: ${reason}.` : 'You set the day: add how you know it, in the same place.'];
}

/** Active part of what keeps it against pH, with the drink on it. */
function picture(run: RunState) {
  const { benzoate, sorbate } = asked(run);
  const ph = acidityOf(run)?.ph;
  const isSorbic = (answer(run, sorbate) ?? 0) > 0;
  if (ph === undefined || (!isSorbic && !((answer(run, benzoate) ?? 0) > 0))) return null;
  const [name, acid] = isSorbic ? ['Sorbic acid', preservings.sorbic] : ['Benzoic acid', preservings.benzoic];
  const at = (x: number) => ({ x, y: 100 * activeShare(acid, x) });
  const [low, high] = [Math.min(2.5, ph), Math.max(6, ph)];
  return (
    <CurvePicture
      title={`${name} that works, %, against pH`}
      words="Less of it works the less sour the drink is."
      points={Array.from({ length: 33 }, (_, i) => at(low + ((high - low) * i) / 32))}
      here={at(ph)}
    />
  );
}
