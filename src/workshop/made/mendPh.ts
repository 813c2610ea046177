import { amountForPh, baseToPh, type Sour } from '../../core/acid/solution';
import { sourDrink } from '../../core/acid/weighed';
import { measured, propagate, scaled, type Measured } from '../../core/number/measured';
import type { Batch } from '../../records/kind/batch';
import { sourGoods } from '../../tables/keeping/acidity';
import { acids } from '../../tables/syrupAdditives';
import { outcome } from '../attempt';
import { densityNow, massNow, numberIn, readingsNow } from './measured';
import { acidOf, saltOf } from './mend';

/** What brings a pH to its target: grams as weighed of the acid of the drink, or of a buffer salt. */
export interface PhMending {
  readonly id: 'acid' | 'salt';
  readonly name: string;
  /** Enough where acid is missing; of a salt all of it. */
  readonly massG: Measured;
  /** What it takes where all the acid is in it, and something binds it: hard water, a juice. */
  readonly upToG: number;
  readonly now: number;
  readonly target: number;
}

/** A pH computed for a drink of this kind comes out within 0.2: a rectangle of that half-width. */
const COMPUTED_U = 0.2 / Math.sqrt(3);
/** g/L, more than a drink takes; with more of the salt its activities are not known. */
const MOST = { acid: 30, salt: 20 };
const STEP = 0.01; // of pH, for the slope

/**
 * What to add so that the pH is as it was meant: as it was asked for, else as the trial had it, else as it was computed, which counts in its ±.
 * From the drink as it was weighed, in two ways: with less of its acid, and with a strong base in it, so that it has the pH that was
 * measured. Null where no pH was measured, or acid was titrated too (which says it better), the two agree within their ±, or nothing up
 * to {@link MOST} does it.
 */
export function phMending(batch: Batch): PhMending | null {
  const { pH: reading, acid } = readingsNow(batch);
  const target = phTarget(batch);
  if (!reading || acid || !target) return null;
  const [now, u] = [reading.value, Math.hypot(reading.u, target.u)];
  if (Math.abs(now - target.ph) <= 2 * u) return null;
  const id = now > target.ph ? 'acid' : 'salt';
  const step = id === 'acid' ? STEP : -STEP; // further off, so that both are above 0
  const [here, beside] = [now, now + step].map((ph) => neededFor(batch, id, { ph, target: target.ph }));
  if (!here || !beside) return null;
  const meter = measured(now, u, { id: `reading:${reading.id}`, words: 'the pH meter' });
  const perLitre = propagate(here.least, [[meter, (beside.least - here.least) / step]]);
  const litres = massNow(batch).value / densityNow(batch).value / 1000;
  const { name } = id === 'acid' ? acidOf(batch) : saltOf(batch);
  return { id, name, massG: scaled(perLitre, litres), upToG: here.most * litres, now, target: target.ph };
}

/** g/L as weighed that lead from one pH to another; null where nothing does. */
function neededFor(batch: Batch, add: PhMending['id'], { ph, target }: { ph: number; target: number }) {
  const { id, strength = 1 } = add === 'acid' ? acidOf(batch) : { ...saltOf(batch), strength: 1 };
  const amount = (to: number, holds: (more: number) => Sour) => amountForPh(to, MOST[add], holds);
  const bound = outcome(() => ({ g: amount(target, withMore(batch, id, ph)) })).value?.g;
  if (bound === undefined) return null;
  const others = { ...batch, weighed: batch.weighed.filter((one) => one.id !== id) };
  const [then, now] = [target, ph].map((at) => outcome(() => ({ g: amount(at, withMore(others, id)) })).value?.g);
  const missing = add === 'acid' && then !== undefined && now !== undefined ? then - now : bound;
  return { least: Math.min(missing, bound) / strength, most: Math.max(missing, bound) / strength };
}

/** The pH that was meant, and how uncertain that is in itself. */
export function phTarget({ asked, keeping }: Batch): { readonly ph: number; readonly u: number } | null {
  const typed = numberIn(asked['ph.target']);
  if (typed !== undefined) return { ph: typed, u: 0 };
  if (keeping?.phMeasured !== undefined) return { ph: keeping.phMeasured, u: 0 };
  return keeping?.phComputed === undefined ? null : { ph: keeping.phComputed, u: COMPUTED_U };
}

/** The drink with so many g/L more of something in it; with `ph` given, with so much of a strong base too that it has that without. */
function withMore(batch: Batch, id: string, ph?: number): (more: number) => Sour {
  const goods = sourRows(batch);
  const held = { alkalinityMgPerL: numberIn(batch.asked['alkalinity']) ?? 0, volumes: 0 }; // gas out, as pH is measured
  const unnamed = ph === undefined ? 0 : baseToPh(sourDrink({ ...held, goods }), ph);
  return (more) => {
    const sour = sourDrink({ ...held, goods: [...goods, { goods: sourGoods[id]!, gramsPerL: more }] });
    return { ...sour, cations: sour.cations + unnamed };
  };
}

/** g/L of all that is sour, as it was weighed; the acid of a juice as citric acid. */
function sourRows({ weighed, drink }: Batch) {
  return weighed.flatMap(({ id, massG, share = 1, acid }) => {
    const goods = sourGoods[acid === undefined ? id : 'own-acid'];
    const strength = acid ?? acids.find((one) => one.id === id)?.strength ?? 1;
    return goods ? [{ goods, gramsPerL: (massG.value * share * strength) / drink.litres.value }] : [];
  });
}
