import { seeded } from '../../core/seeded';

/** A value of JSON, and what is found in a backup. */
type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Item = { [key: string]: Json };
export interface Content {
  readonly records: Item[];
  readonly events: Item[];
}

/** A backup in which little is wrong, and what was done to it. */
export interface Mutant {
  readonly content: Content;
  readonly deeds: readonly string[];
  /** Ids of the records that were changed. */
  readonly changed: readonly string[];
}

type Chance = (below: number) => number;
type Step = string | number;

const ODD_NUMBERS = [-1, 0, -0.0001, 1e-300, 0.5, 1.5, 7, 98, 1e6, 1e12, 1e300, -1e300, 2 ** 53];
const ODD_DAYS = ['10/2026', '2026-02-30', '2026-13-01', '0001-01-01', '12026-01-01', 'yesterday', '2026-05-04'];
const ODD_MOMENTS = ['2026-02-30T10:00:00.000Z', '2026-05-04T25:00:00Z', '99999', '2026-05-04T10:00', 'now'];
const ODD_TEXTS = [
  '',
  ' ',
  '0',
  '-1',
  '=1+1',
  'toString',
  'valueOf',
  '\u202egnp.exe',
  '<img src=x>',
  '💧'.repeat(2000),
  '%',
  '\u0000',
  '{}',
  '[1]',
];
const OF_OTHER_TYPES: Json[] = [null, true, 'text', 7, [], {}, [null], [[]]];

/** Mutants of a backup, each from a part of it: what is changed, what that hangs together with, and one of each kind. */
export function mutantsOf(whole: Content, seed: number): () => Mutant {
  const random = seeded(seed);
  const chance: Chance = (below) => Math.floor(random() * below);
  const places = placesOf(whole.records);
  return () => mutant(whole, places, chance);
}

interface Place {
  readonly record: string;
  readonly path: readonly Step[];
}

/** Every place at which a record has a value, in lists of those that have the same kind and path: each list is as likely as the others. */
function placesOf(records: readonly Item[]): Place[][] {
  const found = new Map<string, Place[]>();
  const look = (record: Item, value: Json, path: readonly Step[]) => {
    const key = `${String(record['kind'])} ${path.map((step) => (typeof step === 'number' ? '#' : step)).join('.')}`;
    if (path.length > 0 && path[0] !== 'kind')
      found.set(key, [...(found.get(key) ?? []), { record: String(record['id']), path }]);
    if (typeof value === 'object' && value !== null)
      for (const [name, inner] of Object.entries(value))
        look(record, inner, [...path, Array.isArray(value) ? Number(name) : name]);
  };
  for (const record of records) look(record, record, []);
  return [...found.values()];
}

function mutant(whole: Content, places: readonly Place[][], chance: Chance): Mutant {
  const deeds: string[] = [];
  const chosen = Array.from({ length: 1 + (chance(3) === 0 ? chance(3) : 0) }, () => {
    const list = places[chance(places.length)]!;
    return list[chance(list.length)]!;
  });
  const content = partOf(
    whole,
    chosen.map(({ record }) => record),
    chance,
  );
  const items = chosen.map(({ record }) => content.records.find(({ id }) => id === record)!); // before an id is changed
  for (const [i, { path }] of chosen.entries()) {
    const item = items[i]!;
    deeds.push(`${String(item['kind'])} ${path.join('.')} ${change(item, path, content, chance)}`);
  }
  if (content.events.length > 0 && chance(4) === 0) deeds.push(changeEvent(content, chance));
  if (chance(8) === 0) {
    const gone = content.records[chance(content.records.length)]!;
    deeds.push(`${String(gone['kind'])} is gone`);
    content.records.splice(content.records.indexOf(gone), 1);
  }
  return { content, deeds, changed: chosen.map(({ record }) => record) };
}

/** A part of a backup that hangs together: some records, all that they name and that name them, and one of each kind; with the steps of its runs. */
function partOf(whole: Content, ids: readonly string[], chance: Chance): Content {
  const wanted = new Set(ids);
  const texts = new Map(whole.records.map((record) => [String(record['id']), JSON.stringify(record)]));
  for (const [id, text] of texts)
    if (ids.some((one) => text.includes(one) || texts.get(one)?.includes(id))) wanted.add(id);
  if (wanted.size > MOST) for (const id of [...wanted].slice(MOST)) if (!ids.includes(id)) wanted.delete(id);
  for (const kind of new Set(whole.records.map((record) => record['kind']))) {
    const of = whole.records.filter((record) => record['kind'] === kind);
    wanted.add(String(of[chance(of.length)]!['id']));
  }
  const records = whole.records.filter(({ id }) => wanted.has(String(id)));
  const events = whole.events.filter(({ run }) => wanted.has(String(run)));
  return structuredClone({ records, events });
}

const MOST = 6; // records beside one of each kind: a page of each is drawn for each mutant

/** Changes a value of a record; returns what was done. */
function change(item: Item, path: readonly Step[], content: Content, chance: Chance): string {
  const holder = path
    .slice(0, -1)
    .reduce<Json>((at, step) => (at as Item | null)?.[step as string] ?? null, item) as Item | null;
  const key = path.at(-1) as string;
  if (typeof holder !== 'object' || holder === null || !(key in holder)) return 'is gone already';
  const before = holder[key]!;
  if (chance(12) === 0) {
    if (Array.isArray(holder)) (holder as unknown as Json[]).splice(Number(key), 1);
    else delete holder[key];
    return 'left out';
  }
  const after = otherThan(before, content, chance);
  holder[key] = after;
  return `→ ${JSON.stringify(after).slice(0, 60)}`;
}

function otherThan(before: Json, content: Content, chance: Chance): Json {
  const pick = <T>(from: readonly T[]): T => from[chance(from.length)]!;
  if (chance(5) === 0) return structuredClone(pick(OF_OTHER_TYPES));
  if (typeof before === 'number') return chance(3) === 0 ? before * pick([-1, 0.001, 1000, 1e9]) : pick(ODD_NUMBERS);
  if (typeof before === 'string') return otherText(before, content, chance);
  if (typeof before === 'boolean') return !before;
  if (Array.isArray(before)) return otherList(before, chance);
  if (before !== null) return structuredClone(pick([{}, { ...before, more: 1 }, Object.values(before)[0] ?? null]));
  return pick<Json>([7, 'text', -1, {}]);
}

function otherText(before: string, content: Content, chance: Chance): Json {
  const pick = <T>(from: readonly T[]): T => from[chance(from.length)]!;
  const isDay = /^\d{4}-\d{2}-\d{2}/.test(before);
  if (isDay && chance(4) > 0) return pick([...ODD_DAYS, ...ODD_MOMENTS]);
  if (/^[0-9a-f]{8}-/.test(before) && chance(4) > 0) return pick(content.records)['id']!;
  return pick(ODD_TEXTS);
}

function otherList(before: readonly Json[], chance: Chance): Json {
  const ways: (() => Json[])[] = [
    () => [],
    () => [...before, ...before],
    () => before.slice(1),
    () => [...before].reverse(),
    () => [...before, null],
    () => Array.from({ length: 60 }, (_, i) => before[i % Math.max(1, before.length)] ?? null),
  ];
  return structuredClone(ways[chance(ways.length)]!());
}

/** Changes a step of a run; returns what was done. */
function changeEvent(content: Content, chance: Chance): string {
  const event = content.events[chance(content.events.length)]!;
  const keys = Object.keys(event).filter((key) => key !== 'run');
  const key = keys[chance(keys.length)]!;
  return `step ${String(event['type'])}.${key} ${change(event, [key], content, chance)}`;
}

/** As the file of a backup. */
export function fileOf({ records, events }: Content): string {
  const holds = { records: records.length, events: events.length };
  return JSON.stringify({
    format: 'minim-backup',
    version: 1,
    made: '2026-05-04T10:00:00.000Z',
    holds,
    records,
    events,
  });
}
