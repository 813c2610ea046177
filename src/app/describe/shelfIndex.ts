import { computed } from '@preact/signals';
import { search, searchIndex, type Searchable } from '../../core/text/search';
import { isLabelled, isOf, kindOf, type AnyRecord } from '../../records/kind/kinds';
import { find, shelf } from '../../records/shelf';
import { idle } from '../../records/store/idle';
import { headOf } from './describe';
import { prepare } from './prepare';
import { gradeWord } from '../../workshop/drinkable/grade';
import { labelTagOf } from '../../workshop/thing/labelled';

/** Our choice of weights: own code first, then names, lots and numbers, then everything else that is written. */
const WEIGHT = { code: 8, name: 5, number: 4, other: 3, word: 1 };
const ARCHIVED = 0.4; // of the weight of a thing in use

/** The days that a record tells of, as they are stored: 2026-05-04. On the screen they stand as the phone writes days. */
export function daysOf(record: AnyRecord): string {
  return Object.values(record)
    .filter((value) => typeof value === 'string' && /^\d{4}-\d\d-\d\d(T|$)/.test(value))
    .map((value: string) => value.slice(0, 10))
    .join(' ');
}

const made = new WeakMap<AnyRecord, { material: AnyRecord | undefined; graded: string; entry: Searchable }>();

function searchableOf(record: AnyRecord): Searchable {
  const material = isOf('bottle', record) ? find('material', record.material) : undefined;
  const known = made.get(record);
  const graded = gradeWord(record) ?? '';
  if (known && known.material === material && known.graded === graded) return known.entry;
  const { title, line, code = '' } = headOf(record);
  const texts: [string, number][] = [
    [title, WEIGHT.name],
    [isLabelled(record) ? labelTagOf(record) : code, WEIGHT.code],
    [line, WEIGHT.word],
    [graded, WEIGHT.word],
    [daysOf(record), WEIGHT.word],
    ...ofKind(record),
    ...(material ? ofKind(material) : []),
  ];
  const factor = record.archived ? ARCHIVED : 1;
  const entry = { id: record.id, texts: texts.map(([text, weight]) => [text, weight * factor] as const) };
  made.set(record, { material, graded, entry });
  return entry;
}

/** What its kind is found by, beyond what all are. */
function ofKind(record: AnyRecord): [string, number][] {
  const texts = kindOf(record).search?.(record) ?? [];
  return texts.map(([text, as]) => [text, WEIGHT[as]]);
}

function found(): AnyRecord[] {
  return [...shelf.records.value.values()].filter((record) => kindOf(record).search !== null);
}

const index = computed(() => searchIndex(found().map(searchableOf)));

/** Makes everything findable while nothing else is to be done, until `isGone`. */
export async function prepareShelf(isGone: () => boolean): Promise<void> {
  await prepare(found(), searchableOf, isGone);
  await idle(1000);
  if (!isGone()) void index.value;
}

/** What the Shelf has for a query, best first. */
export function searchShelf(query: string, limit: number): AnyRecord[] {
  return search(index.value, query, limit).map(({ id }) => shelf.records.value.get(id)!);
}
