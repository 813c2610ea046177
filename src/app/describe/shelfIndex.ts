import { computed } from '@preact/signals';
import { search, searchIndex, type Searchable } from '../../core/text/search';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { find, shelf } from '../../records/shelf';
import { shortIdOf } from '../../records/shortId';
import { describe } from './describe';

/** What a kind of record is called in a list of hits. */
export const kindWords: Readonly<Record<string, string>> = {
  ...{ material: 'Material', bottle: 'Bottle', vial: 'Vial', solvent: 'Solvent', supply: 'Supply', dropper: 'Dropper' },
  ...{ calibration: 'Calibration', formula: 'Formula', layering: 'Layering', base: 'Drink base', tasting: 'Drink' },
  ...{ batch: 'Batch', test: 'Blind test', run: 'Run' },
};

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

const made = new WeakMap<AnyRecord, { material: AnyRecord | undefined; entry: Searchable }>();

function searchableOf(record: AnyRecord): Searchable {
  const material = isOf('bottle', record) ? find('material', record.material) : undefined;
  const known = made.get(record);
  if (known && known.material === material) return known.entry;
  const { title, line, code = '' } = describe(record);
  const texts: [string, number][] = [
    [title, WEIGHT.name],
    [code, WEIGHT.code],
    [line, WEIGHT.word],
    [daysOf(record), WEIGHT.word],
    ...ofKind(record),
    ...(material ? ofKind(material) : []),
  ];
  const factor = record.archived ? ARCHIVED : 1;
  const entry = { id: record.id, texts: texts.map(([text, weight]) => [text, weight * factor] as const) };
  made.set(record, { material, entry });
  return entry;
}

function ofKind(record: AnyRecord): [string, number][] {
  const { number, other, word } = WEIGHT;
  if (isOf('material', record))
    return [
      [`${record.cas ?? ''} ${record.fema ?? ''}`, number],
      ...(record.also ?? []).map((name): [string, number] => [name, other]),
      [[record.family ?? '', ...(record.smells ?? [])].join(' '), word],
    ];
  if (isOf('bottle', record) || isOf('supply', record))
    return [
      [record.lot, number],
      [`${record.supplier} ${record.box ?? ''} ${shortIdOf(record.id)}`, other],
    ];
  if (isOf('vial', record))
    return [
      [`${record.lot} ${shortIdOf(record.id)}`, number],
      [record.contents.map(({ name }) => name).join(' '), other],
      [`${record.supplier} ${record.box ?? ''} ${record.solvent?.name ?? ''} ${record.grade}`, word],
    ];
  if (isOf('layering', record))
    return [
      [record.readings.map(({ words, note }) => `${words} ${note}`).join(' '), word],
      [record.verdict.words, word],
    ];
  if (isOf('formula', record))
    return [
      [record.lines.map(({ name }) => name).join(' '), other],
      [record.notes, word],
    ];
  if (isOf('tasting', record))
    return [
      [record.reached.map(({ name }) => name).join(' '), other],
      [record.verdict, word],
    ];
  return [];
}

const index = computed(() =>
  searchIndex(
    [...shelf.records.value.values()].filter(({ kind }) => kind !== 'run' && kind !== 'settings').map(searchableOf),
  ),
);

/** What the Shelf has for a query, best first. */
export function searchShelf(query: string, limit: number): AnyRecord[] {
  return search(index.value, query, limit).map(({ id }) => shelf.records.value.get(id)!);
}
