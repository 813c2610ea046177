import type { Bottle, Material, MaterialFacts } from '../../records/kind/material';
import { find, list } from '../../records/shelf';
import type { Solvent } from '../../tables/solvents';
import { asSolvent } from '../../workshop/asSolvent';
import { neverFit } from '../../workshop/drinkable/neverFit';
import { today } from '../../workshop/today';
import { materialDensity } from '../../workshop/materialDensity';
import { TYPICAL_DENSITY } from '../../workshop/onHand';
import { standardUncertainty } from '../../core/number/measured';
import { shortCode } from '../../core/label/shortCode';
import { answer, ask } from '../engine/answers';
import { notAmong } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, type Answers } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import { bottleFields as fields } from './bottleFields';
import { densityByHolding, preparationIn } from './ingredientFields';

/** What the next bottle begins with; never its grade, which is on its own label. */
export const remembers = [fields.supplier, fields.box, fields.unit, fields.amount('mL')].map(({ name }) => name);

/** What is known of what is in the bottle: a material on the Shelf, or what the catalogue has of it; null of one typed by hand. */
export function knownOf(run: RunState): Material | MaterialFacts | null {
  return find('material', answer(run, fields.material)) ?? answer(run, fields.facts);
}

/** Why what is in the bottle is never fit for drinks, whatever its label says; null where nothing speaks against it. */
export function neverFitIn(run: RunState): string | null {
  const known = knownOf(run);
  const names = [answer(run, fields.name), known?.name, ...(known?.also ?? [])].filter((name) => name != null);
  return neverFit(names, known?.cas ?? answer(run, fields.cas));
}

/** Solvents that what is in the bottle is; none while nothing is named. */
export function solventsIn(run: RunState): readonly Solvent[] {
  const known = knownOf(run);
  return asSolvent(known?.name ?? answer(run, fields.name) ?? '', known?.cas ?? answer(run, fields.cas) ?? undefined);
}

/** How it is at 20 °C; null while nothing is named. */
export function formOf(run: RunState): Material['form'] | null {
  return answer(run, fields.name) === null ? null : (knownOf(run)?.form ?? answer(run, askForm(run)));
}

/** How it is at 20 °C, asked of what is not sure: what melts at 25 °C or above is taken for a solid until it is said. */
export function askForm(run: RunState): typeof fields.form {
  const melts = knownOf(run)?.melts?.value ?? 0;
  return ask(fields.form, { preset: melts >= 25 ? 'solid' : 'liquid' });
}

/** The questions as they are asked now: the supplier, box and amount of last time, and today. */
export const asked = oncePerRun((run: RunState) => {
  const old = isOld(run);
  const last = old ? [] : lastTimes(run);
  const unit = asBefore(run, fields.unit, [], usualUnit(run));
  const amount = fields.amount(answer(run, unit) ?? 'g');
  return {
    code: codeNow(run),
    unit,
    amount: asBefore(run, amount, [amountBefore(last, answer(run, unit))]),
    supplier: asBefore(run, fields.supplier, last),
    grade: ask(fields.grade, { refuse: (grade) => (grade === 'fit for drinks' ? neverFitIn(run) : null) }),
    box: asBefore(run, fields.box, last),
    received: asBefore(run, fields.received, [], old ? '' : today()),
  };
});

/** A run of the first version that is past the name: what it left empty is empty, and its amount is in g. */
export function isOld(run: RunState): boolean {
  return 'new-material' in run.done && answer(run, fields.onCard) === null;
}

/** What the label of such a thing gives its amount in: a solid in g, else as last time, else in mL. */
function usualUnit(run: RunState): 'mL' | 'g' {
  if (isOld(run) || formOf(run) === 'solid') return 'g';
  return lastTimes(run).some((one) => one[fields.unit.name] === 'mL') || !lastTimes(run).some(amountIn) ? 'mL' : 'g';
}

function amountIn(answers: Answers): boolean {
  return answers[fields.amount('g').name] !== undefined;
}

/** The code of a new material: one that is free is there, and one that is taken will not do. */
function codeNow(run: RunState) {
  const taken = list('material').map((material) => material.code);
  return ask(fields.code, { preset: shortCode(answer(run, fields.name) ?? '', taken), refuse: notAmong(taken) });
}

/** The answers of the last bottle of this material, then of the last one of any. */
function lastTimes(run: RunState): Answers[] {
  const all = list('bottle');
  const same = all.find(({ material }) => material === answer(run, fields.material));
  return [same, all[0]].flatMap((one) => (one ? [answersOf(one)] : []));
}

/** What a bottle tells of how it was asked; one of the first version by what it holds. */
function answersOf({ done, supplier, box = '', amountG }: Bottle): Answers {
  const held = { [fields.supplier.name]: supplier, [fields.box.name]: box };
  if (done?.asked) return { ...held, ...done.asked };
  return amountG === undefined
    ? held
    : { ...held, [fields.unit.name]: 'g', [fields.amount('g').name]: String(amountG) };
}

/** The amount of the last bottle that has one in that unit. */
function amountBefore(last: readonly Answers[], unit: string | null): Answers {
  return last.find((one) => amountIn(one) && one[fields.unit.name] === unit) ?? {};
}

function at20(known: NonNullable<Material['density']>): { gPerMl: number; halfWidth: number } {
  const density = materialDensity(known, '');
  return { gPerMl: density.value, halfWidth: standardUncertainty(density) * Math.sqrt(3) };
}

/** Half of what acid, pulp and minerals may add to or take from a density by sugar and alcohol, g/mL. Our choice. */
const BY_HOLDING = 0.02;

/** Density that an amount in mL is weighed by, g/mL, with half the width of what it may be: of this lot, else as known, else typical. */
export function densityFor(run: RunState): { gPerMl: number; halfWidth: number; typical: boolean } {
  const lot = answer(run, fields.density);
  const known = knownOf(run)?.density;
  if (lot !== null) return { gPerMl: lot, halfWidth: 0, typical: false };
  if (known) return { ...at20(known), typical: false };
  const byHolding = preparationIn(run, knownOf(run)) ? densityByHolding(run) : null;
  if (byHolding !== null) return { gPerMl: byHolding, halfWidth: BY_HOLDING, typical: false };
  return { gPerMl: TYPICAL_DENSITY.value, halfWidth: TYPICAL_DENSITY.halfWidth, typical: true };
}

/** Grams in the bottle, and the standard uncertainty that the density brings to an amount in mL (g); null where no amount is given. */
export function gramsOf(run: RunState): { g: number; u: number } | null {
  const { amount, unit } = asked(run);
  const given = answer(run, amount);
  if (given === null) return null;
  if (answer(run, unit) !== 'mL') return { g: given, u: 0 };
  const { gPerMl, halfWidth } = densityFor(run);
  return { g: Number((given * gPerMl).toPrecision(12)), u: (given * halfWidth) / Math.sqrt(3) };
}
