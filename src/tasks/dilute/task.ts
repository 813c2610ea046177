import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Use } from '../../records/kind/quantity';
import type { Done } from '../../records/kind/record';
import type { Vial } from '../../records/kind/vial';
import { find, newId, newRecord } from '../../records/shelf';
import { answer, types } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { newBottle } from '../shared/newBottle';
import type { Task } from '../engine/task';
import { droppedBy, useOf } from '../../workshop/uses';
import { fields, repeats, type DiluteStep } from './fields';
import { labelOf, madeOf, type Made } from './made';
import { inMl, orderOf, type Order } from './making';
import { copyOf, gradeOf, ownSolvent, solventBottleOf, sourceOf } from './source';
import { isSet } from './set';
import { steps } from './steps';
import { Refusal } from '../../core/text/refusal';
import { today } from '../../workshop/today';
import { freeVialCode } from '../../workshop/vialCode';

const OFF = 0.02; // our choice: a weighing within 2 % is as planned

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
  return newRecord('vial', {
    from: [source.id, ...(bottle ? [bottle.id] : [])],
    code: answer(run, fields.code)!,
    sort: 'dilution',
    name: source.name,
    contents: source.contents.map((part, i) => ({
      material: part.material,
      name: part.name,
      strength: made.contents[i]!,
    })),
    label: labelOf(run, order, made),
    solvent: copyOf(solvent),
    massG: made.mass,
    densityGPerMl: made.gPerMl,
    sizeMl: order.sizeMl,
    grade: gradeOf(source, solvent),
    madeOn: answer(run, fields.madeOn)!,
    useBy: answer(run, fields.useBy)!,
    supplier: source.supplier,
    lot: source.lot,
    uses: usesOf(run, order, made),
  });
}

/** The material as counted or weighed, and the solvent as weighed or poured; without a bottle it goes by its own id. */
function usesOf(run: RunState, order: Order, { material, solvent }: Made): Use[] {
  const { source, byDrops } = order;
  const { code, name, supplier, lot } = source;
  const strength = find('vial', source.id) ? {} : { strength: 'neat' };
  const counted = {
    how: 'counted',
    drops: run.drops['source'] ?? 0,
    ...droppedBy(answer(run, fields.dropper) ?? ''),
  } as const;
  const poured = { how: 'poured', ml: Number(inMl(order, solvent.value).toPrecision(12)) } as const;
  const bottle = solventBottleOf(run);
  return [
    useOf(source.id, material, { code, name, supplier, lot, ...strength, ...(byDrops ? counted : { how: 'weighed' }) }),
    useOf(bottle?.id ?? order.solvent.id, solvent, {
      name: order.solvent.name,
      ...(answer(run, fields.measure) === 'scale' ? { how: 'weighed' } : poured),
    }),
  ];
}

/** The drops or the mass that were asked for, where others went in, and what was done about it. */
function happenedIn(run: RunState): Pick<Done, 'plan' | 'slips'> {
  const order = isSet(run) ? null : orderOf(run);
  if (!order) return {};
  const { id, tag: what } = order.source;
  const rescued = answer(run, fields.overshoot) === 'rescue';
  const way = rescued ? 'Rescued with more solvent' : 'Left as it is';
  if (order.byDrops) {
    const [planned, counted] = [order.plan.drops!.drops, run.drops['source'] ?? 0];
    const plan = { lines: [{ id, code: what, drops: planned }], error: Math.abs(order.plan.drops!.error) };
    return counted === planned ? { plan } : { plan, slips: [{ id, what, planned, counted, unit: 'drops', way }] };
  }
  const [planned, counted] = [order.plan.amounts.source, answer(run, fields.materialG) ?? 0];
  const isOff = Math.abs(counted - planned) > Math.max(OFF * planned, order.readabilityG);
  return isOff ? { slips: [{ id, what, planned, counted, unit: 'g', way }] } : {};
}

/** The drops or grams of a vial made before, and its solvent; a record of the first version has the drops in its run. */
function amountsOf({ uses, massG }: Vial, counted: Readonly<Record<string, number>>): Record<string, string> {
  const [source] = uses;
  if (!source) return {};
  const drops = source.drops ?? counted['source'] ?? 0;
  return {
    [fields.exactSource.name]: String(drops > 0 ? drops : source.massG),
    [fields.exactSolvent.name]: String(massG.value - source.massG),
  };
}

/** Dilute a neat material, or a vial, to a strength that a nose can judge. */
export const dilute: Task<DiluteStep['key']> = {
  id: 'dilute',
  recorded: true,
  title: (run) => ['Dilute', isSet(run) ? 'a set' : sourceOf(run)?.name].filter(Boolean).join(' · '),
  steps,
  keep,
  done: happenedIn,
  repeats,
  repeat({ answers, counted, kept }) {
    const code = answers[fields.code.name];
    const vial = kept.find((record) => isOf('vial', record));
    return {
      ...(code ? types(fields.code, vial ? freeVialCode(code, vial.label, today()) : code) : {}),
      ...(vial ? amountsOf(vial, counted) : {}),
    };
  },
};
