import { doseOf, dropsForPpm, type Dose, type Pour } from '../../core/drink/dose';
import { massOfDrops } from '../../core/drop/drop';
import { exact, plus, type Measured } from '../../core/number/measured';
import { gram, gramPerMl, massFraction, volumeFraction } from '../../core/number/units';
import { weighedNet } from '../../workshop/scales';
import { find } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { contentsNow } from '../../workshop/thing/ageing';
import { alcoholIsUnknownIn, alcoholOfVial, mostAlcoholOfVial } from '../../workshop/thing/carrier';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { dropOf, type DropOnHand } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { liquidOfVial } from '../../workshop/onHand';
import { asked, vialsIn } from './asked';
import { baseOf, type BaseDrink } from './drink';
import { fields, named, ON_SCALE } from './fields';
import { tagOf } from '../../workshop/thing/labelled';

/** What was let fall, or weighed, from one vial. `drops` is null when it was weighed. */
export interface Dosing {
  readonly vial: Vial;
  readonly drop: DropOnHand | null;
  /** Id of the dropper, 'typical' for one that was not weighed, 'scale' for none. */
  readonly dropper: string;
  readonly drops: number | null;
  readonly mass: Measured;
}

/** The glass after the first doses. */
export interface Glass {
  readonly base: BaseDrink;
  readonly dosings: readonly Dosing[];
  readonly dose: Dose;
}

/** The vial of dose i, when one is chosen and may be dosed. */
export function vialOf(run: RunState, i: number): Vial | null {
  const vial = find('vial', chosenVial(run, i));
  return vial && !isSmellOnly(vial) ? vial : null;
}

/** Id of the vial that is chosen for dose i, fit or not; null while none is. */
export function chosenVial(run: RunState, i: number): string | null {
  const dose = asked(run).doses[i - 1];
  return dose ? answer(run, dose.vial) : answer(run, fields.vial(i));
}

/** Drops of dose i that have fallen. */
export function dropsOf(run: RunState, i: number): number {
  return run.drops[named('drops', i)] ?? 0;
}

/** Whether something of dose i was weighed into the glass. */
export function massTyped(run: RunState, i: number): boolean {
  return (answer(run, fields.weighed(i)) ?? 0) > 0;
}

/** The dropper of dose i, 'scale' for none; '' while none is chosen. */
export function dropperOf(run: RunState, i: number): string {
  const dose = asked(run).doses[i - 1];
  return (dose && answer(run, dose.dropper)) ?? '';
}

/** Dose i, with that many drops; null until vial and dropper are chosen. */
function dosingOf(run: RunState, i: number, drops = dropsOf(run, i)): Dosing | null {
  const vial = vialOf(run, i);
  const dropper = dropperOf(run, i);
  if (!vial || dropper === '') return null;
  if (dropper === ON_SCALE) return { vial, drop: null, dropper, drops: null, mass: weighed(run, i) };
  const drop = dropOf(dropper, liquidOfVial(vial));
  const counting = { id: `dose.${i}`, words: `drop by drop: scatter of ${dropsText(drops)} of ${tagOf(vial)}` };
  const mass = massOfDrops({ drops, mgPerDrop: drop.mgPerDrop, perDropSpread: drop.spread, ...counting });
  return { vial, drop, dropper, drops, mass };
}

function weighed(run: RunState, i: number): Measured {
  const grossG = answer(run, fields.weighed(i));
  const readabilityG = answer(run, asked(run).readability);
  if (grossG === null || readabilityG === null) return exact(0);
  return weighedNet({ grossG, tareG: 0, readabilityG }, { id: `weighed.${i}`, words: 'the dose on the scale' });
}

/** The glass after dose `upTo`, whose last count may be set otherwise; null until all of it is known. */
export function glassOf(run: RunState, upTo: number, lastDrops?: number): Glass | null {
  const base = baseOf(run);
  const dosings = Array.from({ length: upTo }, (_, k) =>
    dosingOf(run, k + 1, k + 1 === upTo && lastDrops !== undefined ? lastDrops : dropsOf(run, k + 1)),
  );
  if (!base || dosings.some((one) => one === null)) return null;
  const poured = dosings as Dosing[];
  return { base, dosings: poured, dose: doseOf(poured.map(pourOf), base.drink) };
}

/** A dosing as it goes into the sum: mass, contents, density, alcohol. */
export function pourOf({ vial, mass }: Dosing): Pour {
  return {
    mass,
    contents: contentsNow(vial),
    density: gramPerMl(vial.densityGPerMl),
    ethanol: alcoholOfVial(vial) ?? volumeFraction(0), // what is not known is said to be so: alcoholIsUnknown
  };
}

/** Names of the solvents in a glass of which no one has said how much alcohol they hold: then that of the glass is not known. */
export function alcoholIsUnknown({ dosings }: Glass): string[] {
  return [...new Set(dosings.flatMap(({ vial }) => alcoholIsUnknownIn(vial)))];
}

/** The most alcohol that a glass may hold, % ABV. */
export function mostAlcohol({ base, dosings }: Glass): number {
  const pours = dosings.map((one) => ({ ...pourOf(one), ethanol: mostAlcoholOfVial(one.vial) }));
  return doseOf(pours, base.drink).abv.value;
}

/** mg/kg and mg/L of what a vial holds, over all doses so far. */
export function reachedBy(vial: Vial, dose: Dose): { mgPerKg: Measured; mgPerL: Measured } {
  const own = dose.materials.filter(({ material }) => vial.contents.some((part) => part.material === material));
  return { mgPerKg: plus(...own.map((one) => one.mgPerKg)), mgPerL: plus(...own.map((one) => one.mgPerL)) };
}

/** What is wanted of dose i: whole drops to count to, what they come to (mg/kg), and how far that is off a level that was asked for. */
export interface Target {
  readonly drops: number;
  readonly mgPerKg: number;
  /** Share of what was asked for; null where drops were. */
  readonly error: number | null;
}

/** The drops of dose i to count to: those asked for, or those for the level asked for; null without either, or by mass. @throws Refusal when it cannot be reached */
export function targetOf(run: RunState, i: number): Target | null {
  const drops = dropsAsked(run, i);
  if (drops === null) return planOf(run, i);
  const glass = dosingOf(run, i)?.drop ? glassOf(run, i, drops) : null;
  return glass && { drops, mgPerKg: reachedBy(glass.dosings.at(-1)!.vial, glass.dose).mgPerKg.value, error: null };
}

function dropsAsked(run: RunState, i: number): number | null {
  const dose = asked(run).doses[i - 1];
  const wanted = dose && answer(run, dose.aimIn) === 'drops' ? answer(run, dose.aim) : null;
  return wanted ?? answer(run, fields.then(i));
}

/** Whole drops of dose i for the level that is wanted; null without one or by mass. @throws Refusal when it cannot be reached */
function planOf(run: RunState, i: number): Target | null {
  const dose = asked(run).doses[i - 1];
  const ppm = dose ? answer(run, dose.aim) : null;
  const now = glassOf(run, i, 0);
  const dosing = dosingOf(run, i);
  if (ppm === null || !now || !dosing?.drop) return null;
  return dropsForPpm({
    ppm,
    strength: massFraction(dosing.vial.contents.reduce((sum, part) => sum + part.strength.value, 0)),
    mgPerDrop: dosing.drop.mgPerDrop.value,
    drink: gram(now.dose.mass.value),
    present: reachedBy(dosing.vial, now.dose).mgPerKg.value,
  });
}

/** How many vials the run doses from. */
export const countOf = vialsIn;
