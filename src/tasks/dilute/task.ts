import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Done } from '../../records/kind/record';
import type { Vial } from '../../records/kind/vial';
import { newId } from '../../records/shelf';
import { Refusal } from '../../core/text/refusal';
import { today } from '../../workshop/today';
import { strengthWords } from '../../workshop/thing/labelled';
import { freeVialCode } from '../../workshop/thing/vialCode';
import { answer, types } from '../engine/answers';
import { freshRun, type RunState } from '../engine/fold';
import { askedIn } from '../engine/lastTime';
import { newBottle } from '../shared/newBottle';
import type { Task } from '../engine/task';
import { settled } from './asked';
import { fields, remembers, repeats, type DiluteStep } from './fields';
import { happenedTo } from './happened';
import { madeOf } from './made';
import { basisOf, orderOf, strengthOf, type Order } from './making';
import { isRack, isReady, isSkipped, madeName, rackOf, vialsText, type Racked } from './rack';
import { ownSolvent, sourceOf } from './source';
import { steps } from './steps';
import { learned, vialOf } from './vialMade';

/** The vial as really made, with the bottle, material or solvent that came with it; of a rack all vials that were made. */
function keep(run: RunState): AnyRecord[] {
  if (isRack(run)) return keepRack(run);
  const now = settled(run);
  const order = orderOf(now);
  if (!order) throw new Refusal('Something is still missing: go back through the steps.');
  const fresh = answer(now, fields.source) === 'new' ? newBottle(now) : null;
  const solvent = answer(now, fields.solvent) === 'new' ? ownSolvent(now) : null;
  const source = fresh
    ? {
        ...order.source,
        id: fresh.bottle.id,
        contents: order.source.contents.map((part) => ({ ...part, material: fresh.material.id })),
      }
    : order.source;
  const id = newId();
  const stored = { ...order, source, solvent: solvent ? { ...order.solvent, id: solvent.id } : order.solvent };
  const vial = { ...vialOf(now, stored, madeOf(now, order, `vial:${id}`)), id };
  return [
    vial,
    ...(fresh ? [fresh.bottle] : []),
    ...(fresh?.fresh ? [fresh.material] : []),
    ...(solvent ? [solvent] : []),
    ...learned(now, stored),
  ];
}

/** Vials of a rack that were made, in order; what one was made from is the vial that it was made into. */
function keepRack(run: RunState): AnyRecord[] {
  const made = madeVials(run);
  if (made.length === 0) throw new Refusal('No vial of the rack was made.');
  const ids = new Map(made.map(({ name }) => [madeName(name), newId()]));
  const own = answer(settled(run), fields.solvent) === 'new' ? ownSolvent(settled(run)) : null;
  const vials: Vial[] = [];
  for (const { name, run: mine, order } of made) {
    const id = ids.get(madeName(name))!;
    const source = { ...order.source, id: ids.get(order.source.id) ?? order.source.id };
    const solvent = own ? { ...order.solvent, id: own.id } : order.solvent;
    const now = { ...order, source, solvent };
    vials.push({ ...vialOf(mine, now, madeOf(mine, order, `vial:${id}`), vials), id });
  }
  return [...vials, ...(own ? [own] : []), ...made.flatMap(({ run: mine, order }) => learned(mine, order))];
}

type MadeVial = Racked & { readonly order: Order };

function madeVials(run: RunState): MadeVial[] {
  return rackOf(run).filter((one): one is MadeVial => one.order !== null && !isSkipped(one) && isReady(one));
}

/** What was asked and planned for each vial, and what did not go by it. */
function doneOf(run: RunState, at: number): Partial<Done> {
  if (isRack(run)) {
    const one = madeVials(run)[at];
    return one ? { ...happenedTo(one.run, one.order), asked: askedIn(one.run, remembers) } : {};
  }
  const now = settled(run);
  const order = at === 0 ? orderOf(now) : null;
  return order ? { ...happenedTo(now, order), asked: askedIn(now, remembers) } : {};
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
  title: (run) =>
    ['Dilute', isRack(run) ? vialsText(rackOf(run).length) : sourceOf(settled(run))?.name].filter(Boolean).join(' · '),
  opening() {
    const now = settled(freshRun);
    const [source, value] = [sourceOf(now), strengthOf(now)];
    return source && value !== null ? `${source.tag} to ${strengthWords({ value, basis: basisOf(now) })}` : undefined;
  },
  steps,
  keep,
  doneOf,
  repeats,
  repeat({ answers, counted, kept, wanted }) {
    const vial = wanted && isOf('vial', wanted) ? wanted : kept.find((record) => isOf('vial', record));
    const code = vial?.code ?? answers[fields.code.name];
    return {
      ...(code ? types(fields.code, vial ? freeVialCode(code, vial.label, today()) : code) : {}),
      ...(vial ? amountsOf(vial, counted) : {}),
    };
  },
};
