import { isOf } from '../../records/kind/kinds';
import type { Vial } from '../../records/kind/vial';
import type { Grade } from '../../records/kind/quantity';
import { list, shelf } from '../../records/shelf';
import { isStocked, type Stocked } from '../../records/stock';
import { formatDay, formatGiven, formatPlain } from '../../ui/format';
import { isGraded } from '../../workshop/drinkable/gradeCause';
import { labelSays } from '../../workshop/drinkable/grade';
import { strengthText } from '../../workshop/thing/strengthText';
import { whyNotByItself } from '../../workshop/takenByItself';
import { labelTagOf } from '../../workshop/thing/labelled';
import { mixOf } from '../../workshop/thing/mixOf';

/** One thing that is different from then: what and why, what it was, and what it is now. */
export interface Difference {
  readonly words: string;
  readonly then: string;
  readonly now: string;
}

/** What is needed of a lot: grams, as were taken then, and whether they go into something that may be drunk. */
export interface Need {
  readonly massG: number;
  readonly forDrinks: boolean;
}

/**
 * The id to use today for one of then, and what differs where that is another one: the same lot while it lasts and is fit, else
 * another of the same. A text that is no id comes back as it is.
 */
export function todaysLot(id: string, need: Need): { now: string; difference: Difference | null } {
  const then = shelf.records.value.get(id);
  if (then && isOf('dropper', then) && then.archived) {
    const words = `${then.name} is archived`;
    return { now: 'typical', difference: { words, then: then.name, now: 'a typical drop, not weighed' } };
  }
  const why = then && isStocked(then) ? unfit(then, need) : null;
  if (!then || !isStocked(then) || why === null) return { now: id, difference: null };
  const words = `${nameOf(then)} is ${why}`;
  const other = candidates(then).find((one) => unfit(one, need) === null);
  if (!other) return { now: id, difference: { words, then: nameOf(then), now: 'no other is on the Shelf' } };
  return { now: other.id, difference: { words, then: nameOf(then), now: `${nameOf(other)}${change(then, other)}` } };
}

/** Why a bottle, vial or pack is not taken today; null when it can be. */
function unfit(record: Stocked, { massG, forDrinks }: Need): string | null {
  const refusal = forDrinks && labelled(record) === 'smell only' ? 'smell only' : null;
  return whyNotByItself(record, { refusal, grams: massG });
}

/** Its grade now; null for a pack that has none, and for a bottle of solvent whose label no one has read. */
function labelled(record: Stocked): Grade | null {
  return isGraded(record) ? labelSays(record) : null;
}

/** Others of the same: bottles of the material or solvent, vials of the same materials, newest first. */
function candidates(then: Stocked): Stocked[] {
  if (isOf('supply', then))
    return list('supply').filter(({ id, solvent }) => id !== then.id && solvent === then.solvent);
  if (isOf('bottle', then))
    return list('bottle').filter(({ id, material }) => id !== then.id && material === then.material);
  return list('vial')
    .filter((vial) => vial.id !== then.id && mixOf(vial) === mixOf(then))
    .sort((a, b) => distance(a, then) - distance(b, then));
}

/** How far the strength of a vial is from another's, as a ratio. */
function distance(vial: Vial, then: Vial): number {
  const strength = (one: Vial) => one.contents.reduce((sum, part) => sum + part.strength.value, 0);
  return Math.abs(Math.log(strength(vial) / strength(then)));
}

function nameOf(record: Stocked): string {
  if (isOf('vial', record)) return `${labelTagOf(record)} made ${formatDay(record.madeOn)}`;
  const own = isOf('bottle', record);
  const name = own ? labelTagOf(record) : record.name;
  const came = formatDay((own && record.received) || record.made);
  return `${name} ${record.lot ? `lot ${record.lot}` : `of ${came}`}`;
}

/** What the other one differs in. */
function change(then: Stocked, now: Stocked): string {
  const said: string[] = [];
  if (isOf('vial', then) && isOf('vial', now)) {
    const [was, is] = [strengthText(then), strengthText(now)];
    if (was !== is) said.push(`${was} then, ${is} now`);
  }
  if (isOf('bottle', then) && isOf('bottle', now)) {
    if (then.supplier !== now.supplier) said.push(`from ${now.supplier || 'another supplier'}`);
    if (then.density?.gPerMl !== now.density?.gPerMl && now.density)
      said.push(`density ${formatGiven(now.density.gPerMl)} g/mL`);
    if (then.purity !== now.purity && now.purity) said.push(`purity ${formatPlain(now.purity * 100)} %`);
  }
  const grade = labelled(now);
  if (grade && grade !== labelled(then)) said.push(grade);
  return said.length > 0 ? ` (${said.join(', ')})` : '';
}
