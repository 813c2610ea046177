import { CONCENTRATE } from '../../core/drink/batchPlan';
import { exact, expanded, minus, plus, scaled, type Measured } from '../../core/number/measured';
import { shareIn } from '../../core/drink/mixture';
import type { Batch } from '../../records/kind/batch';
import { find, newRecord } from '../../records/shelf';
import type { SolventCopy } from '../../records/kind/solvent';
import type { Vial } from '../../records/kind/vial';
import { measuredText } from '../../ui/format';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { refusalOfId } from '../../workshop/drinkable/grade';
import { solventsOnHand, type SolventOnHand } from '../../workshop/onHand';
import { dayOfRun } from '../engine/runDay';
import { useByOf, useByOfDilution } from '../../workshop/useBy';
import { useOf } from '../../workshop/uses';
import { fields } from './plan/fields';
import type { Goods } from './plan/goods';
import type { Making } from './progress';
import type { Pour } from './vessel/pour';
import { carrierOf } from './plan/drinkAsked';
import { begunIn } from './plan/begun';
import { BEGUN_AGAIN, inConcentrate, lossesOf, NOT_KEPT } from './takings';

/** The concentrate that did not go into the drink, g; null where there is none beyond the uncertainty of the scale. */
function leftOver({ concentrate, syrup, before }: Making): Measured | null {
  const poured = syrup.pours.flatMap(({ goods, mass }) => (goods.id === CONCENTRATE && mass ? [mass] : []));
  if (!concentrate || poured.length === 0) return null;
  const left = minus(concentrate.mass, plus(before, ...poured));
  return left.value > expanded(left) ? left : null;
}

/** What is asked of it in the last step. */
export function leftFields(run: RunState, making: Making): Field[] {
  if (!leftOver(making)) return [];
  return answer(run, fields.left) === 'keep' ? [fields.left, fields.leftCode()] : [fields.left];
}

/** How much it is. */
export function leftWords(making: Making): string[] {
  const left = leftOver(making);
  return left ? [`‹${measuredText(left, 'g')}› of the concentrate are left.`] : [];
}

/** As a vial, with the strengths that were weighed; null where nothing is left or it is not kept. */
export function leftOverVial(run: RunState, making: Making, batchId: string): Vial | null {
  const left = leftOver(making);
  if (!left || answer(run, fields.left) !== 'keep') return null;
  const { plan, concentrate, vessel } = making;
  const contents = plan.recipe.lines.flatMap(({ material, name }) =>
    concentrate!.contents
      .filter((one) => one.material === material)
      .map(({ strength }) => ({ material, name, strength })),
  );
  const share = left.value / concentrate!.mass.value;
  const uses = inConcentrate(vessel.pours).map(([id, mass]) => useOf(id, scaled(mass, share), { how: 'weighed' }));
  const whole = plus(exact(0), ...contents.map(({ strength }) => strength)).value;
  const solvent = solventIn(run, making);
  const densityGPerMl = densityOf(vessel.pours, solvent);
  return newRecord('vial', {
    from: [batchId, ...uses.map(({ id }) => id)],
    contents,
    uses,
    massG: left,
    densityGPerMl,
    ...besideIn(making),
    code: answer(run, fields.leftCode())!,
    sort: 'concentrate',
    name: `${plan.recipe.name}, concentrate`.slice(0, 60),
    label: { value: Number((whole * 100).toPrecision(3)), basis: '% w/w' },
    solvent: solvent && copyOf(solvent),
    sizeMl: Math.ceil(left.value / densityGPerMl),
    grade: uses.some(({ id }) => refusalOfId(id)) ? 'smell only' : 'fit for drinks',
    madeOn: dayOfRun(run),
    supplier: '',
    lot: '',
    useBy: useByOfDilution({
      madeOn: dayOfRun(run),
      families: contents.map(({ material }) => find('material', material)?.family ?? ''),
      liquid: solvent?.liquid ?? null,
      source: soonest(uses),
    }).day,
  });
}

/** What of the bottles got neither into the drink nor into that vial, g. */
export function lostIn(run: RunState, making: Making): NonNullable<Batch['lost']> {
  const left = answer(run, fields.left) === 'keep' ? null : leftOver(making);
  const whole = making.concentrate!.mass.value;
  const losses = lossesOf(making.vessel.pours, [
    { share: making.before.value / whole, why: BEGUN_AGAIN },
    { share: (left?.value ?? 0) / whole, why: NOT_KEPT },
  ]);
  const ofDrink = lossesOf(making.syrup.pours, []);
  const all = [...begunIn(run).flatMap(({ taken }) => taken), ...losses, ...ofDrink];
  return all.map(({ id, massG, why }) => ({ id, massG: massG.value, why }));
}

/** Gum and weighting agent: they are counted wherever the vial goes. */
function besideIn({ plan, concentrate }: Making): Pick<Vial, 'beside'> {
  const beside = plan.concentrate.flatMap(({ goods: { id, name, cas, beside: how } }) =>
    how === 'carrier' && cas ? [{ id, name, cas, share: shareIn(concentrate!, id).value }] : [],
  );
  return beside.length > 0 ? { beside } : {};
}

/** What the formula is in: the carrier, or the water of an emulsion. */
function solventIn(run: RunState, { plan }: Making): SolventOnHand | null {
  return plan.emulsion ? (solventsOnHand().find(({ id }) => id === 'water') ?? null) : carrierOf(run);
}

/** It was answered that the bottle is food grade, else there is no batch. */
function copyOf({ id, name, density, flashC, abv, dryOff }: SolventOnHand): SolventCopy {
  const known = { ...(flashC === undefined ? {} : { flashC }), ...(abv === undefined ? {} : { abv }) };
  return { id, name, density, food: true, dryOff, ...known };
}

/** g/mL, volumes added (our choice); what has no density on the Shelf counts as what it is in. */
function densityOf(pours: readonly Pour[], solvent: SolventOnHand | null): number {
  const around = solvent?.density.gPerMl ?? 1; // g/mL, water
  const known = ({ id, source }: Goods) =>
    source?.vial?.densityGPerMl ?? (source?.bottle?.density ?? find('material', id)?.density)?.gPerMl ?? around;
  const ml = pours.reduce((sum, { goods, mass, stock }) => sum + mass!.value / (stock ? around : known(goods)), 0);
  return pours.reduce((sum, { mass }) => sum + mass!.value, 0) / ml;
}

function soonest(uses: Vial['uses']) {
  const days = uses.flatMap(({ id }) => {
    const source = find('bottle', id) ?? find('vial', id) ?? find('supply', id);
    return (source && useByOf(source)) ?? [];
  });
  return days.sort((one, two) => one.day.localeCompare(two.day))[0] ?? null;
}
