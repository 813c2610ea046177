import type { Measured } from '../../core/number/measured';
import type { AnyRecord } from '../../records/kind/kinds';
import { newId, newRecord } from '../../records/shelf';
import { forFile, formatMeasured } from '../../ui/format';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { newBottle } from '../shared/newBottle';
import type { Task } from '../engine/task';
import { freeVialCode } from '../../workshop/vialCode';
import { fields, repeats, type DiluteStep } from './fields';
import { madeOf, type Made } from './made';
import { orderOf, strengthOf, type Order } from './making';
import { copyOf, gradeOf, ownSolvent, solventBottleOf, sourceOf } from './source';
import { isSet } from './set';
import { steps } from './steps';
import { Refusal } from '../../core/text/refusal';

/** The vial as really made, with the bottle, material or solvent that came with it. */
function keep(run: RunState): AnyRecord[] {
  if (isSet(run)) return []; // each vial of a set is a run and a record of its own
  const order = orderOf(run);
  if (!order) throw new Refusal('Something is still missing: go back through the steps.');
  const fresh = answer(run, fields.source) === 'new' ? newBottle(run) : null;
  const solvent = answer(run, fields.solvent) === 'new' ? ownSolvent(run) : null;
  const source = fresh
    ? {
        ...order.source,
        id: fresh.bottle.id,
        contents: order.source.contents.map((part) => ({ ...part, material: fresh.material.id })),
      }
    : order.source;
  const id = newId();
  const stored = { ...order, source, solvent: solvent ? { ...order.solvent, id: solvent.id } : order.solvent };
  const vial = { ...vialOf(run, stored, madeOf(run, order, `vial:${id}`)), id };
  return [
    vial,
    ...(fresh ? [fresh.bottle] : []),
    ...(fresh?.fresh ? [fresh.material] : []),
    ...(solvent ? [solvent] : []),
  ];
}

function vialOf(run: RunState, order: Order, made: Made): AnyRecord {
  const { source, solvent } = order;
  const bottle = solventBottleOf(run);
  const solventUse = bottle ? [{ id: bottle.id, massG: made.mass.value - made.material.value }] : [];
  const uses = [{ id: source.id, massG: made.material.value }, ...solventUse];
  return newRecord('vial', {
    from: uses.map((use) => use.id),
    code: answer(run, fields.code)!,
    name: source.name,
    contents: source.contents.map((part, i) => ({
      material: part.material,
      name: part.name,
      strength: made.contents[i]!,
    })),
    label: { value: labelValue(strengthOf(run)!, made.shown), basis: order.basis },
    solvent: copyOf(solvent),
    massG: made.mass,
    densityGPerMl: made.gPerMl,
    sizeMl: order.sizeMl,
    grade: gradeOf(source, solvent),
    madeOn: answer(run, fields.madeOn)!,
    useBy: answer(run, fields.useBy)!,
    supplier: source.supplier,
    lot: source.lot,
    uses,
  });
}

/** What the label says: the strength that was asked for when it was met within 2 %, else the true one, as far as its ± lets it be known. */
function labelValue(asked: number, made: Measured): number {
  return Math.abs(made.value / asked - 1) <= 0.02 ? asked : Number(forFile(() => formatMeasured(made)).value);
}

/** Dilute a neat material, or a vial, to a strength that a nose can judge. */
export const dilute: Task<DiluteStep['key']> = {
  id: 'dilute',
  recorded: true,
  title: (run) => ['Dilute', isSet(run) ? 'a set' : sourceOf(run)?.name].filter(Boolean).join(' · '),
  steps,
  keep,
  repeats,
  repeat({ answers }) {
    const code = answers[fields.code.name];
    return code ? types(fields.code, freeVialCode(code)) : {};
  },
};
