import { computed } from '@preact/signals';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import type { Grade } from '../../records/kind/quantity';
import { writtenOn } from '../../records/devices';
import { originalOf } from '../../records/lineage';
import { shelf } from '../../records/shelf';
import { decidingIds, isGraded, labelCause, ownCause, takenIds, type Graded, type Own } from './gradeCause';
import { tagOf } from '../thing/labelled';

/** Whether a thing may go into a drink now, or be drunk; and, where it may not, why, in one sentence. */
export interface GradeNow {
  readonly grade: Grade;
  readonly why: string | null;
}

const FIT: GradeNow = { grade: 'fit for drinks', why: null };
const NEVER = 'smell only, it never goes into a drink';

/** Why it is smell only: by itself, or by another thing (its id) that decides over it. */
interface Found {
  readonly own: Own | null;
  readonly by: string | null;
}

/**
 * The grade of a thing now, from everything that is in it, down every chain: the bottles, vials and solvents, its other copies, its
 * own mark, and what of it is no longer on the Shelf (unknown is smell only). What a record says of its own grade is history: it
 * may make it stricter and never permits anything. It is worked out anew when the Shelf changes, for all things at once.
 */
export function gradeNow(record: Graded): GradeNow {
  const found = foundOf(record);
  if (!found) return FIT;
  const because = clause(record, found);
  return { grade: 'smell only', why: `${because.charAt(0).toUpperCase()}${because.slice(1)}: ${NEVER}.` };
}

/** Why a thing may not go into a drink, in one sentence; null when it may. */
export function refusalOf(record: Graded): string | null {
  return gradeNow(record).why;
}

/** Why the thing with that id may not go into a drink; null when it may, when its label has to be asked about, or when it is none that could. */
export function refusalOfId(id: string): string | null {
  const record = shelf.records.value.get(id);
  return record && isGraded(record) && labelSays(record) === 'smell only' ? refusalOf(record) : null;
}

/** Whether a thing may not go into a drink, or be drunk. */
export function isSmellOnly(record: AnyRecord): boolean {
  return isGraded(record) && foundOf(record) !== null;
}

/** The word for lists and chips: nothing for what is neither poured nor drunk, for a bottle of solvent whose label no one has read, and for drinks that are fit. */
export function gradeWord(record: AnyRecord): Grade | undefined {
  if (!isGraded(record) || labelSays(record) === null) return undefined;
  if (isSmellOnly(record)) return 'smell only';
  return isOf('batch', record) || isOf('tasting', record) ? undefined : 'fit for drinks';
}

/** What the label of a bottle of solvent says of it now; null where no one has read it, so that a task has to ask. Of all else its grade. */
export function labelSays(record: Graded): Grade | null {
  const found = foundOf(record);
  return found?.own === 'unread' ? null : found ? 'smell only' : 'fit for drinks';
}

/** Whether a thing was to be fit for drinks when it was made: its label said so then. It permits nothing. */
export function wasFit(record: AnyRecord): boolean {
  if (isOf('batch', record) || isOf('tasting', record)) return true;
  return (isOf('vial', record) || isOf('bottle', record)) && record.grade === 'fit for drinks';
}

/** All things over whose grade a thing decides, nearest first. */
export function decidedBy(id: string): AnyRecord[] {
  const { holders } = known.value;
  const all = new Set([id]); // what is added while it is gone through is gone through, too
  for (const one of all) for (const holder of holders.get(one) ?? []) all.add(holder);
  return [...all].slice(1).map((one) => shelf.records.value.get(one)!);
}

/** Of all that is on the Shelf: who decides over whom, and what is smell only, each by the nearest cause. */
const known = computed(() => {
  const holders = new Map<string, string[]>();
  const found = new Map<string, Found>();
  const all = [...shelf.records.value.values()].filter(isGraded);
  const link = (id: string, over: string) => void (holders.get(id) ?? holders.set(id, []).get(id)!).push(over);
  const owns = new Map<string, Own | null>();
  for (const record of all) {
    const taken = takenIds(record);
    owns.set(record.id, ownCause(record, taken));
    for (const id of decidingIds(record, taken)) link(id, record.id);
    const original = originalOf(record);
    if (!original) continue;
    link(original.id, record.id);
    link(record.id, original.id); // what is smell only in the one copy is so in the other
  }
  const spread = (causeOf: (record: Graded) => Own | null) => {
    const queue: string[] = [];
    const put = (id: string, cause: Found) => void (found.has(id) || (found.set(id, cause), queue.push(id)));
    for (const record of all) {
      const own = causeOf(record);
      if (own !== null) put(record.id, { own, by: null });
    }
    for (const id of queue)
      if (found.get(id)!.own !== 'unread') for (const over of holders.get(id) ?? []) put(over, { own: null, by: id });
  };
  spread(({ id }) => owns.get(id)!);
  spread(labelCause);
  return { holders, found };
});

/** Why it is smell only; null when it is fit. Of a thing that is not on the Shelf yet, from what is in it. */
function foundOf(record: Graded): Found | null {
  const { found } = known.value;
  const there = found.get(record.id);
  if (there || shelf.records.value.get(record.id) === record) return there ?? null;
  const taken = takenIds(record);
  const own = ownCause(record, taken);
  if (own) return { own, by: null };
  const by = [...decidingIds(record, taken)].find((id) => found.has(id) && found.get(id)!.own !== 'unread');
  const label = labelCause(record);
  return by !== undefined ? { own: null, by } : label && { own: label, by: null };
}

/** Why it is smell only, as part of a sentence. */
function clause(record: Graded, { own, by }: Found): string {
  const name = calledOf(record);
  if (own !== null) return ownClause(record, name, own);
  const part = shelf.records.value.get(by!) as Graded;
  const found = foundOf(part)!;
  const because = clause(part, found);
  if (originalOf(record)?.id === part.id || originalOf(part)?.id === record.id) return `of the other copy, ${because}`;
  if (isOf('bottle', part)) return `${name} comes from a bottle that ${bottleWords(part, found)}`;
  if (isOf('supply', part)) return `${name} was diluted from a bottle of ${part.name} that ${bottleWords(part, found)}`;
  if (isOf('solvent', part)) return `${name} was diluted with ${part.name}, and ${because}`;
  return `${name} was made with ${calledOf(part)}, and ${because}`;
}

function bottleWords(part: Graded, { own }: Found): string {
  return own === 'marked' ? `was marked smell only (${markOf(part)})` : 'is not fit for drinks';
}

function ownClause(record: Graded, name: string, own: Own): string {
  const solvent = isOf('vial', record) ? record.solvent?.name : undefined;
  switch (own) {
    case 'marked':
      return `${name} was marked smell only (${markOf(record)})`;
    case 'graded':
      return `${name} is not fit for drinks`;
    case 'never':
      return solvent ? `${name} was diluted with ${solvent}` : `${name} is never fit for drinks`;
    case 'not food':
      return solvent ? `${name} was diluted with ${solvent} that is not food grade` : `${name} is not food grade`;
    case 'missing':
      return `${name} was made with something that is no longer on the Shelf`;
    case 'unread':
      return `no one has said that this bottle of ${name} is food grade`;
    case 'unasked':
      return `${name} was made with a solvent that no one has called food grade`;
    case 'label':
      return `${name} is marked so on its label`;
  }
}

function markOf(record: Graded): string {
  const { why = '', by = undefined } = ('smellOnly' in record && record.smellOnly) || {};
  const device = writtenOn(by);
  const words = why || 'no reason was given';
  return device === null ? words : `${words}; marked on ${device}`;
}

function calledOf(record: Graded): string {
  if (isOf('tasting', record)) return record.base.name;
  return isOf('supply', record) || isOf('solvent', record) ? record.name : tagOf(record);
}
