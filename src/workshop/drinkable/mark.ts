import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { isGraded, type Graded } from './gradeCause';
import { decidedBy, isSmellOnly, wasFit } from './grade';

/** What can be marked smell only afterwards; a drink that was tasted is not marked, but what is in it. */
export type Markable = Exclude<Graded, { kind: 'tasting' }>;

/** Whether a thing can still be marked smell only. */
export function canBeMarked(record: AnyRecord): record is Markable {
  return isGraded(record) && !isOf('tasting', record) && !record.smellOnly;
}

/** Why a thing is marked, ready to be tapped. */
export const REASONS = ['wrong bottle', 'denatured or isopropyl alcohol', 'something else got in'] as const;

/** A thing marked smell only for a reason, from a moment on (ms since 1970). It stays so. */
export function marked(record: Markable, why: string, now: number): Markable {
  return { ...record, smellOnly: { at: new Date(now).toISOString(), why } };
}

/** What says "fit for drinks" and is not, since a thing is smell only: that thing and all that was made of it, nearest first. */
export function toRelabel(record: AnyRecord): AnyRecord[] {
  if (!isSmellOnly(record)) return [];
  const own = isOf('tasting', record) ? [] : [record]; // a drink has no label
  return [...own, ...decidedBy(record.id)].filter((one) => wasFit(one) && isSmellOnly(one));
}
