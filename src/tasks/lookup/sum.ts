import { doseOf, drinkOfVolume, dropsForPpm, type Drink } from '../../core/drink/dose';
import { drinkFor, pourFor, strengthFor } from '../../core/drink/doseSolved';
import { massOfDrops } from '../../core/drop/drop';
import { exact, measured, over, propagate, scaled, type Measured } from '../../core/number/measured';
import { densityOf, showStrength, toMassFraction } from '../../core/liquid/strength';
import { gram, massFraction, MG_PER_G } from '../../core/number/units';
import { formatGiven, measuredText } from '../../ui/format';
import type { How, Result } from '../../ui/controls/result';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { dropOf, type DropOnHand } from '../../workshop/dropMass';
import { dropsText } from '../../workshop/dropWords';
import { asked, fields, liquidOf, type Amount } from './fields';

/** Density of the material where it is not known, g/mL: most aroma materials are 0.85 to 1.15. Our choice, from memory. */
const SOLUTE = measured(1, 0.15 / Math.sqrt(3), {
  id: 'material:density',
  words: 'density of the material: not known',
});

/** The amount that is worked out. Drops are whole: what these come to in mg/kg, and how far that is off (share). */
export interface Sum {
  readonly find: Amount;
  readonly result: Result;
  /** The level as mg/L, where the level is what is found. */
  readonly perLitre?: Result;
  readonly drops?: ReturnType<typeof dropsForPpm>;
}

/** What is known: null what is not. Strength in g/g, the drink in g. */
interface Known {
  readonly strength: Measured | null;
  readonly drink: Drink | null;
  readonly drops: number | null;
  readonly drop: DropOnHand;
  readonly ppm: number | null;
}

/** What one drop weighs: as typed, else from the dropper. */
export function dropFor(run: RunState, strength: number): DropOnHand {
  const { id, liquid } = liquidOf(run);
  const known = dropOf(answer(run, asked(run).dropper) ?? 'typical', { id, liquid, strength });
  const typed = answer(run, fields.mgPerDrop);
  return typed === null ? known : { ...known, mgPerDrop: exact(typed), calibrated: true, source: 'typed, as if exact' };
}

/** The amount that is sought, from the others; null while one of them is missing. @throws Refusal when it cannot be */
export function sumOf(run: RunState): Sum | null {
  const strength = strengthOf(run);
  const known: Known = {
    strength,
    drink: drinkOf(run),
    drops: answer(run, fields.drops),
    drop: dropFor(run, strength?.value ?? 0.01),
    ppm: answer(run, fields.ppm),
  };
  return solvers[answer(run, fields.find) ?? 'ppm'](run, known);
}

const solvers: Readonly<Record<Amount, (run: RunState, known: Known) => Sum | null>> = {
  ppm: levelSum,
  drops: dropsSum,
  strength: strengthSum,
  mgPerDrop: dropSum,
  drink: drinkSum,
};

function levelSum(run: RunState, known: Known): Sum | null {
  const { strength, drink, drops } = known;
  if (!strength || !drink || drops === null) return null;
  const contents = [{ material: 'it', strength }];
  const dose = doseOf([{ mass: pourOf(known, drops), contents, density: densityOf(liquidDensity(run)) }], drink);
  const words = ['Drops times their mass times the strength by mass, over the mass of the drink with the drops in it.'];
  const perLitre = 'Over its volume instead: mg/kg times the density of the drink.';
  return {
    find: 'ppm',
    result: { label: 'In the drink', amount: dose.mgPerKg, unit: 'mg/kg', how: howOf(run, known, 'ppm', words) },
    perLitre: {
      label: 'by volume',
      amount: dose.mgPerL,
      unit: 'mg/L',
      how: howOf(run, known, 'ppm', [...words, perLitre]),
    },
  };
}

function dropsSum(run: RunState, known: Known): Sum | null {
  const { strength, drink, drop, ppm } = known;
  if (!strength || !drink || ppm === null) return null;
  const drops = dropsForPpm({
    ppm,
    strength: massFraction(strength.value),
    mgPerDrop: drop.mgPerDrop.value,
    drink: gram(drink.mass.value),
  });
  const words = ['The mass that is needed over that of one drop, to the whole drop that comes nearest.'];
  const exactly = over(pourFor(ppm, { strength, drink: drink.mass }), scaled(drop.mgPerDrop, 1 / MG_PER_G));
  return {
    find: 'drops',
    drops,
    result: { label: 'Drops, before rounding', amount: exactly, unit: 'drops', how: howOf(run, known, 'drops', words) },
  };
}

function strengthSum(run: RunState, known: Known): Sum | null {
  const { drink, drops, ppm } = known;
  const basis = answer(run, fields.basis);
  if (!drink || drops === null || ppm === null || basis === null) return null;
  const strength = strengthFor(ppm, { pour: pourOf(known, drops), drink: drink.mass });
  const shown = showStrength(strength, basis, { soluteDensity: SOLUTE, solventDensity: liquidDensity(run) });
  const words = ['The level times the mass of drink and drops, over the mass of the drops.'];
  return {
    find: 'strength',
    result: { label: 'Strength', amount: shown, unit: basis, how: howOf(run, known, 'strength', words) },
  };
}

function dropSum(run: RunState, known: Known): Sum | null {
  const { strength, drink, drops, ppm } = known;
  if (!strength || !drink || ppm === null || !drops) return null;
  const pour = pourFor(ppm, { strength, drink: drink.mass });
  const words = ['The mass that is needed, over the number of drops.'];
  const how = howOf(run, known, 'mgPerDrop', words);
  return { find: 'mgPerDrop', result: { label: 'One drop', amount: scaled(pour, MG_PER_G / drops), unit: 'mg', how } };
}

function drinkSum(run: RunState, known: Known): Sum | null {
  const { strength, drops, ppm } = known;
  const density = answer(run, fields.density);
  if (!strength || drops === null || ppm === null || density === null) return null;
  const grams = drinkFor(ppm, { pour: pourOf(known, drops), strength });
  const unit = answer(run, fields.by) ?? 'mL';
  const words = ['The mass of the drops, times how much stronger they are than the target.'];
  const amount = unit === 'g' ? grams : scaled(grams, 1 / density);
  return { find: 'drink', result: { label: 'Drink', amount, unit, how: howOf(run, known, 'drink', words) } };
}

/** The drops together, g. */
function pourOf({ drop }: Known, drops: number): Measured {
  const counting = { id: 'drops', words: `drop by drop: scatter of ${dropsText(drops)}` };
  return massOfDrops({ drops, mgPerDrop: drop.mgPerDrop, perDropSpread: drop.spread, ...counting });
}

/** How it was worked out: everything that went in but what was sought. */
function howOf(run: RunState, { drop, drink, drops, ppm }: Known, find: Amount, words: readonly string[]): How {
  const strength = answer(run, asked(run).strength);
  const inputs: readonly (How['inputs'][number] & { readonly of: Amount })[] = [
    {
      of: 'strength',
      words: 'Strength',
      text: `${formatGiven(strength ?? 0)} ${answer(run, fields.basis)} in ${liquidOf(run).name}`,
      source: 'typed, taken as exact',
    },
    { of: 'mgPerDrop', words: 'One drop', text: measuredText(drop.mgPerDrop, 'mg'), source: drop.source },
    { of: 'drops', words: 'Drops', text: String(drops ?? 0), source: 'typed' },
    { of: 'drink', words: 'Drink', text: drink ? measuredText(drink.mass, 'g') : '–', source: 'typed, taken as exact' },
    { of: 'ppm', words: 'In the drink', text: `${formatGiven(ppm ?? 0)} mg/kg`, source: 'typed' },
  ];
  return { words, inputs: inputs.filter(({ of }) => of !== find).map(({ of: _, ...input }) => input) };
}

function liquidDensity(run: RunState): Measured {
  const { value, halfWidth } = liquidOf(run).density;
  return measured(value, halfWidth / Math.sqrt(3), { id: 'liquid:density', words: 'density of the solvent' });
}

/** The strength by mass, g/g, with what the unknown density of the material may do to it; dw/w is −dc/c to first order. */
function strengthOf(run: RunState): Measured | null {
  const [value, basis] = [answer(run, asked(run).strength), answer(run, fields.basis)];
  if (value === null || basis === null) return null;
  const liquid = { soluteDensity: SOLUTE, solventDensity: liquidDensity(run) };
  const w = toMassFraction({ value, basis }, liquid);
  const shown = showStrength(exact(w), basis, liquid);
  return propagate(w, [[shown, -w / shown.value]]);
}

function drinkOf(run: RunState): Drink | null {
  const [size, gPerMl] = [answer(run, asked(run).drink), answer(run, fields.density)];
  if (size === null || gPerMl === null) return null;
  const density = exact(gPerMl);
  return answer(run, fields.by) === 'g' ? { mass: exact(size), density } : drinkOfVolume(exact(size), density);
}
