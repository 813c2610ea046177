import { massOfDrops } from '../../core/drop/drop';
import { plus, times, type Measured } from '../../core/number/measured';
import { doseOf, dropsForPpm } from '../../core/drink/dose';
import { gram, massFraction } from '../../core/number/units';
import { valueOf } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { dropOf } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { liquidOfVial } from '../../workshop/onHand';
import { baseOf } from './drink';
import { fields } from './fields';
import { dropperOf, pourOf, vialOf, type Dosing, type Glass } from './glass';
import { tagOf } from '../../workshop/thing/labelled';

/** One glass of a ladder: asked for level in mg/kg, whole drops for it, what they give. */
export interface Rung {
  readonly target: number;
  readonly drops: number;
  readonly mgPerKg: number;
  /** Material in a drop, mg: mg/kg are known as well as it. */
  readonly known: Measured;
  readonly error: number;
}

/** True when several glasses are dosed, each at its own level. */
export function isLadder(run: RunState): boolean {
  return run.typed['mode'] === 'ladder';
}

/** The factor from glass to glass. */
export function factorOf(run: RunState): number | null {
  const factor = valueOf(run, fields.factor);
  return factor === 'own' ? valueOf(run, fields.ownFactor) : factor === null ? null : Number(factor);
}

/** The ladder from its lowest level up; null until all is known. @throws Refusal when a level cannot be reached */
export function rungsOf(run: RunState): Rung[] | null {
  const [low, count, factor] = [valueOf(run, fields.lowest), valueOf(run, fields.glasses), factorOf(run)];
  const [base, vial] = [baseOf(run), vialOf(run, 1)];
  if (low === null || count === null || factor === null || !base || !vial) return null;
  const drop = dropOf(dropperOf(run, 1), liquidOfVial(vial));
  const material = plus(...vial.contents.map((part) => part.strength));
  const strength = massFraction(material.value);
  return Array.from({ length: count }, (_, k) => {
    const target = low * factor ** k;
    const drink = gram(base.drink.mass.value);
    const { drops, mgPerKg, error } = dropsForPpm({ ppm: target, strength, mgPerDrop: drop.mgPerDrop.value, drink });
    return { target, drops, mgPerKg, error, known: times(drop.mgPerDrop, material) };
  });
}

/** Codes of the glasses: drawn at random when blind, else 1, 2, 3 … Null while they are still to be drawn. */
export function codesOf(run: RunState, count: number): readonly string[] | null {
  if (run.typed['blind'] !== 'yes') return Array.from({ length: count }, (_, k) => String(k + 1));
  const drawn = (run.typed['codes'] ?? '').split(' ').filter(Boolean);
  return drawn.length >= count ? drawn.slice(0, count) : null;
}

/** Glasses in the order in which they are tasted: by code when blind, since codes are random; else from weak to strong. */
export function tastingOrder(run: RunState, codes: readonly string[]): number[] {
  const order = codes.map((_, k) => k);
  return run.typed['blind'] === 'yes' ? order.sort((a, b) => codes[a]!.localeCompare(codes[b]!)) : order;
}

/** The glass of rung k (from 0) as it was dosed; null until drink, vial and dropper are known. */
export function rungGlass(run: RunState, k: number): Glass | null {
  const [base, vial] = [baseOf(run), vialOf(run, 1)];
  const dropper = dropperOf(run, 1);
  if (!base || !vial || dropper === '') return null;
  const drop = dropOf(dropper, liquidOfVial(vial));
  const drops = run.drops[`rung.${k + 1}`] ?? 0;
  const counting = { id: `rung.${k + 1}`, words: `drop by drop: scatter of ${dropsText(drops)} of ${tagOf(vial)}` };
  const mass = massOfDrops({ drops, mgPerDrop: drop.mgPerDrop, perDropSpread: drop.spread, ...counting });
  const dosing: Dosing = { vial, drop, dropper, drops, mass };
  return { base, dosings: [dosing], dose: doseOf([pourOf(dosing)], base.drink) };
}
