import { isOf, type AnyRecord, type RecordOf } from '../../records/kind/kinds';
import { partsOf } from '../../records/lineage';
import type { SolventCopy } from '../../records/kind/solvent';
import { find, shelf } from '../../records/shelf';
import { solvents } from '../../tables/solvents';
import { neverFit } from './neverFit';

/** Kinds that can be in a drink, or are one. */
const GRADED = ['bottle', 'supply', 'solvent', 'vial', 'batch', 'tasting'] as const;
export type Graded = RecordOf<(typeof GRADED)[number]>;

/** Whether a record has a grade at all; a pack of strips or glass has none. */
export function isGraded(record: AnyRecord): record is Graded {
  const isKind = (GRADED as readonly string[]).includes(record.kind);
  return isKind && !(isOf('supply', record) && record.sort !== 'solvent');
}

/**
 * Why something is smell only by itself: marked so; its bottle is no food grade; its name is never fit for drinks; its solvent is
 * no food grade; something in it is gone, or not known; no one has read the label of the bottle of solvent, or of one in it; what
 * a vial's own label says, where nothing else explains it.
 */
export type Own = 'marked' | 'graded' | 'never' | 'not food' | 'missing' | 'unread' | 'unasked' | 'label';

/** Ids of what decides over a thing beside itself and its copies: what it took, its solvent, and of a rest the batch that it is left over from. */
export function decidingIds(record: Graded, taken: readonly string[]): ReadonlySet<string> {
  const ids = new Set(taken);
  if (isOf('vial', record)) for (const id of record.from) if (find('batch', id)) ids.add(id);
  if (isOf('vial', record) && record.solvent) ids.add(record.solvent.id);
  if (isOf('batch', record)) for (const { id } of record.weighed) ids.add(id); // a carrier without a bottle goes by its own id
  return ids;
}

const TRACE = 1e-9; // g: below that it is rounding, and all of it was lost

/** Ids of what went into a thing, of what is gone too; not of what was lost with a vessel that was begun again. */
export function takenIds(record: Graded): string[] {
  const parts = partsOf(record).flatMap(({ id, grams }) => (grams === null || grams.value > TRACE ? id : []));
  const uses = 'uses' in record && !isOf('batch', record) ? record.uses.map(({ id }) => id) : [];
  const weighed = isOf('batch', record) ? record.weighed.flatMap(({ source }) => source ?? []) : [];
  return [...parts, ...uses, ...weighed];
}

/** Why a thing is smell only by itself, from what it took. */
export function ownCause(record: Graded, taken: readonly string[]): Own | null {
  if ('smellOnly' in record && record.smellOnly) return 'marked';
  if (isOf('solvent', record)) return isNamedFit(record.name, record.cas) ? (record.food ? null : 'not food') : 'never';
  if (isOf('bottle', record)) return causeOfBottle(record);
  if (isOf('supply', record)) return causeOfSupply(record);
  const solvent = isOf('vial', record) ? causeInSolvent(record) : null;
  return solvent ?? causeInParts(record, taken);
}

function causeOfBottle({ grade, material }: RecordOf<'bottle'>): Own | null {
  if (grade !== 'fit for drinks') return 'graded';
  const held = find('material', material);
  return held && !isNamedFit(held.name, held.cas) ? 'never' : null;
}

function causeOfSupply({ grade, name, solvent = '' }: RecordOf<'supply'>): Own | null {
  if (!mayBeFood(solvent, name)) return 'never';
  if (!isTabled(solvent) && !find('solvent', solvent)) return 'missing';
  return grade === undefined ? 'unread' : grade === 'fit for drinks' ? null : 'graded';
}

/** The id that a trial gives the mixture of its solvents. */
const MIXED = 'mixed';

/** What speaks against the solvent that a vial says it is in. Own solvents decide over it besides. */
function causeInSolvent({ solvent, uses }: RecordOf<'vial'>): Own | null {
  if (!solvent) return null;
  if (!mayBeFood(solvent.id, solvent.name)) return 'never';
  if (!solvent.food) return 'not food';
  const isMixed = solvent.id === MIXED && uses.some(({ id }) => find('vial', id));
  return isMixed || isTabled(solvent.id) || find('solvent', solvent.id) ? null : 'missing';
}

/** What speaks against a thing because of what it took: nothing known, something that is gone, a solvent that no one called food grade. */
function causeInParts(record: RecordOf<'vial' | 'batch' | 'tasting'>, all: readonly string[]): Own | null {
  const taken = all.filter((id) => id !== MIXED);
  if (isOf('vial', record) && !record.solvent && taken.length === 0) return 'missing';
  if (isOf('batch', record) && record.weighed.some(({ id, name }) => isTabled(id) && !mayBeFood(id, name)))
    return 'never';
  const causes = taken.map((id) => causeOfPart(record, id));
  return causes.find((cause) => cause !== null) ?? null;
}

function causeOfPart(record: RecordOf<'vial' | 'batch' | 'tasting'>, id: string): Own | null {
  const part = shelf.records.value.get(id);
  if (!part && !isTabled(id)) return 'missing';
  if (part && !(isOf('supply', part) && causeOfSupply(part) === 'unread')) return null;
  const solvent = part && isOf('supply', part) ? part.solvent : id;
  return isAnswered(record, solvent, id) ? null : 'unasked';
}

/** Whether it was answered, when a thing was made, that this solvent (in a batch: of this bottle) is food grade. */
function isAnswered(
  record: RecordOf<'vial' | 'batch' | 'tasting'>,
  solvent: string | undefined,
  bottle: string,
): boolean {
  if (isOf('vial', record)) return record.solvent?.id === solvent && record.solvent?.food === true;
  if (!isOf('batch', record) || record.asked['carrier'] !== solvent) return false;
  return ['', `.${solvent}`, `.${bottle}`].some((of) => record.asked[`carrier.food${of}`] === 'yes');
}

/** Whether all of these solvents were called food grade: what the mixture of them keeps. */
export function areFood(all: readonly SolventCopy[]): boolean {
  return all.every(({ food }) => food);
}

/** What the label of a vial said when it was made makes it stricter, where nothing else does. */
export function labelCause(record: Graded): Own | null {
  return isOf('vial', record) && record.grade !== 'fit for drinks' ? 'label' : null;
}

/** Whether a solvent of the table may be food grade, by its id and name; its bottle still has to say so. */
export function mayBeFood(id: string, name: string): boolean {
  const row = tabled.get(id);
  return (row?.foodGradePossible ?? true) && isNamedFit(name);
}

function isTabled(id: string): boolean {
  return tabled.has(id);
}

const tabled = new Map(solvents.map((row) => [row.id as string, row]));

/** Names that were looked at; a Shelf has few of them and asks often. */
const named = new Map<string, boolean>();

function isNamedFit(name: string, cas = ''): boolean {
  const key = `${cas} ${name}`;
  if (!named.has(key)) named.set(key, neverFit(name, cas) === null);
  return named.get(key)!;
}
