import type { AnyRecord, RecordOf } from '../../records/kind/kinds';
import type { Vial } from '../../records/kind/vial';
import type { Use } from '../../records/kind/quantity';
import { newRecord } from '../../records/shelf';
import { learnedDrop } from '../../workshop/dropMass';
import { droppedBy, useOf } from '../../workshop/uses';
import { freeVialCode } from '../../workshop/thing/vialCode';
import { answer, isBegun } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { dayOfRun } from '../engine/runDay';
import { dilutionUseBy } from './dilutionUseBy';
import { fields } from './fields';
import { dropsWeighed, labelOf, type Made } from './made';
import { inMl, type Order } from './making';
import { copyOf, gradeOf, solventBottleOf } from './source';
import { weighedWhole } from './whole';

/** The vial as it was made, beside others of its rack. Code, day and use-by go by themselves; the first version asked for them. */
export function vialOf(run: RunState, order: Order, made: Made, beside: readonly Vial[] = []): RecordOf<'vial'> {
  const { source, solvent } = order;
  const bottle = solventBottleOf(run);
  const { label, code, madeOn } = writtenOn(run, order, made, beside);
  return newRecord('vial', {
    from: [source.id, ...(bottle ? [bottle.id] : [])],
    code: code.own ?? code.free,
    sort: 'dilution',
    name: source.name,
    contents: source.contents.map((part, i) => ({
      material: part.material,
      name: part.name,
      strength: made.contents[i]!,
    })),
    label,
    solvent: copyOf(solvent),
    massG: made.mass,
    densityGPerMl: made.gPerMl,
    sizeMl: order.sizeMl,
    grade: gradeOf(source, solvent),
    madeOn,
    useBy: answer(run, fields.useBy) ?? dilutionUseBy(run, order, madeOn).day,
    supplier: source.supplier,
    lot: source.lot,
    uses: usesOf(run, order, made),
    ...weighedWhole(run, order, made.mass),
  });
}

/** What is written on a vial: strength, day, and its code: the one that was typed, else one by which it cannot be taken for another vial. */
export function writtenOn(run: RunState, order: Order, made: Made, beside: readonly Vial[] = []) {
  const label = labelOf(run, order, made);
  const madeOn = answer(run, fields.madeOn) ?? dayOfRun(run, 'pour.', 'drops', 'material');
  const own = isBegun(run, fields.code) ? answer(run, fields.code) : null;
  return { label, madeOn, code: { own, free: freeVialCode(order.source.code, label, madeOn, beside) } };
}

/** The material as counted or weighed, and the solvent as weighed or poured; without a bottle it goes by its own id. */
function usesOf(run: RunState, order: Order, { material, solvent }: Made): Use[] {
  const { source, byDrops } = order;
  const { code, name, supplier, lot } = source;
  const strength = source.drop.strength === 1 ? { strength: 'neat' } : {};
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

/** What the weighed drops teach of this dropper and liquid; nothing where they were not weighed, or the dropper has no name. */
export function learned(run: RunState, order: Order): AnyRecord[] {
  const massG = dropsWeighed(run);
  if (massG === null) return [];
  const { drop: liquid, name } = order.source;
  const calibration = learnedDrop({
    dropper: answer(run, fields.dropper),
    liquid,
    name: liquid.strength === 1 ? name : order.solvent.name,
    drops: run.drops['source'] ?? 0,
    massG,
    readabilityG: order.readabilityG,
  });
  return calibration ? [calibration] : [];
}
