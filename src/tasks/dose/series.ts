import { massOfDrops } from '../../core/drop/drop';
import { plus, times, type Measured } from '../../core/number/measured';
import { doseOf, dropsForPpm } from '../../core/drink/dose';
import { gram, massFraction } from '../../core/number/units';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { contentsNow } from '../../workshop/thing/ageing';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { liquidOfVial } from '../../workshop/onHand';
import { asked } from './asked';
import { baseOf } from './drink';
import { fields, seriesFields } from './fields';
import { pourOf, vialOf, type Dosing, type Glass } from './glass';
import { tagOf } from '../../workshop/thing/labelled';

/** How the counters of the glasses of a series begin. */
export const SERIES_COUNTER = 'rung.';
/** A blank gets the solvent of the vial where that is more than so much of the strongest glass, g/g: 1 g in a kg can be tasted. Our choice. */
const NOTICED = 0.001;

/** One glass of a series: the level asked for in mg/kg, whole drops for it, what they give. */
export interface Rung {
  readonly target: number;
  readonly drops: number;
  readonly mgPerKg: number;
  /** Material in a drop, mg: mg/kg are known as well as it. */
  readonly known: Measured;
  readonly error: number;
}

/** The glass without the material: as many drops of the vial's solvent as the strongest glass has of the vial, where that can be noticed. */
export interface Blank {
  readonly drops: number;
  /** Name of the solvent; null where the blank is the drink alone. */
  readonly solvent: string | null;
}

/** A glass as it is poured and tasted: its number, from 1; 0 is the blank. */
export interface Poured {
  readonly k: number;
  readonly code: string;
  readonly rung: Rung | null;
}

/** True when several glasses are dosed, each at its own level. */
export function isSeries(run: RunState): boolean {
  return answer(run, fields.mode) === 'ladder';
}

/** Whether the glasses are served with codes. */
export function isBlind(run: RunState): boolean {
  return answer(run, asked(run).series.blind) === 'yes';
}

/** The factor from glass to glass. */
export function factorOf(run: RunState): number | null {
  const { factor, ownFactor } = asked(run).series;
  const chosen = answer(run, factor);
  return chosen === 'own' ? answer(run, ownFactor) : chosen === null ? null : Number(chosen);
}

/** The dropper of the series; '' while none is chosen. */
function dropperOf(run: RunState): string {
  return answer(run, asked(run).series.dropper) ?? '';
}

/** The glasses from the lowest level up; null until all is known. @throws Refusal when a level cannot be reached */
export function rungsOf(run: RunState): Rung[] | null {
  const { lowest, glasses } = asked(run).series;
  const [low, count, factor] = [answer(run, lowest), answer(run, glasses), factorOf(run)];
  const [base, vial] = [baseOf(run), vialOf(run, 1)];
  if (low === null || count === null || factor === null || !base || !vial || dropperOf(run) === '') return null;
  const drop = dropOf(dropperOf(run), liquidOfVial(vial));
  const material = plus(...contentsNow(vial).map((part) => part.strength));
  const strength = massFraction(material.value);
  return Array.from({ length: count }, (_, k) => {
    const target = low * factor ** k;
    const drink = gram(base.drink.mass.value);
    const { drops, mgPerKg, error } = dropsForPpm({ ppm: target, strength, mgPerDrop: drop.mgPerDrop.value, drink });
    return { target, drops, mgPerKg, error, known: times(drop.mgPerDrop, material) };
  });
}

/** The blank of a series; null where there is none. */
export function blankOf(run: RunState, rungs: readonly Rung[]): Blank | null {
  if (answer(run, asked(run).series.blank) !== 'yes') return null;
  const drops = Math.max(...rungs.map((rung) => rung.drops));
  const [vial, strongest] = [vialOf(run, 1), rungGlass(run, rungs.length, drops)];
  const poured = strongest?.dosings[0]?.mass.value ?? 0;
  const isNoticed = strongest !== null && poured > NOTICED * strongest.dose.mass.value;
  return { drops, solvent: isNoticed ? (vial?.solvent?.name ?? null) : null };
}

/** The glasses from weak to strong, the blank last, each under its code; null while codes are still to be drawn. */
export function pouredOf(run: RunState, rungs: readonly Rung[]): readonly Poured[] | null {
  const blank = blankOf(run, rungs);
  const codes = codesOf(run, rungs.length + (blank ? 1 : 0));
  if (!codes) return null;
  const dosed = rungs.map((rung, k): Poured => ({ k: k + 1, code: codes[k]!, rung }));
  return blank ? [...dosed, { k: 0, code: isBlind(run) ? codes.at(-1)! : '0', rung: null }] : dosed;
}

/** Codes of the glasses: drawn at random when blind, else 1, 2, 3 … Null while they are still to be drawn. */
export function codesOf(run: RunState, count: number): readonly string[] | null {
  if (!isBlind(run)) return Array.from({ length: count }, (_, k) => String(k + 1));
  const drawn = (answer(run, seriesFields.codes) ?? '').split(' ').filter(Boolean);
  return drawn.length >= count ? drawn.slice(0, count) : null;
}

/** Glasses in the order in which they are tasted: by code when blind, since codes are random; else from the blank up. */
export function tastingOrder(run: RunState, poured: readonly Poured[]): readonly Poured[] {
  return [...poured].sort((a, b) => (isBlind(run) ? a.code.localeCompare(b.code) : a.k - b.k));
}

/** The counter of glass k (from 1); 0 is the blank. */
export function counterOf(k: number): string {
  return k === 0 ? 'blank' : `${SERIES_COUNTER}${k}`;
}

/** Glass k (from 1) as it was dosed, or with so many drops; null until drink, vial and dropper are known. */
export function rungGlass(run: RunState, k: number, drops = run.drops[counterOf(k)] ?? 0): Glass | null {
  const [base, vial] = [baseOf(run), vialOf(run, 1)];
  const dropper = dropperOf(run);
  if (!base || !vial || dropper === '') return null;
  const drop = dropOf(dropper, liquidOfVial(vial));
  const counting = { id: counterOf(k), words: `drop by drop: scatter of ${dropsText(drops)} of ${tagOf(vial)}` };
  const mass = massOfDrops({ drops, mgPerDrop: drop.mgPerDrop, perDropSpread: drop.spread, ...counting });
  const dosing: Dosing = { vial, drop, dropper, drops, mass };
  return { base, dosings: [dosing], dose: doseOf([pourOf(dosing)], base.drink) };
}
