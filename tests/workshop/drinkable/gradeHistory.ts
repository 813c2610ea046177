import { changed } from '../../../src/app/edit/editable';
import { planMerge } from '../../../src/records/backup/merge';
import { isOf, type AnyRecord } from '../../../src/records/kind/kinds';
import type { Stored } from '../../../src/records/kind/record';
import { newRecord, shelf, takeIn } from '../../../src/records/shelf';
import { count } from '../../../src/tasks/count/task';
import { dilute } from '../../../src/tasks/dilute/task';
import { dose } from '../../../src/tasks/dose/task';
import type { RunState } from '../../../src/tasks/engine/fold';
import type { Task } from '../../../src/tasks/engine/task';
import { repeatOf } from '../../../src/tasks/shared/repeat';
import { attempt, Refused } from '../../../src/workshop/attempt';
import { canBeMarked, marked } from '../../../src/workshop/drinkable/mark';
import { material } from '../../tasks/count/countShelf';
import { bottle, dosing, drink, kept, ownSolvent, pack, runOf } from './gradeShelf';

/** A tool of a history, and four numbers that choose what it is used on. */
export type Op = readonly [tool: keyof typeof tools, a: number, b: number, c: number];

/** A device with its Shelf, and what is known of its things apart from the program. */
export interface World {
  /** What really went into a thing. */
  readonly parts: Map<string, readonly string[]>;
  /** What is bad by itself, as this device can know; and as the other one can. */
  bad: Set<string>;
  badThere: Set<string>;
  /** Bottles whose label was not called food grade, on any device: a person may read it again. */
  readonly unfit: Set<string>;
  /** Runs that ended, to be made again. */
  readonly ended: { task: Task; run: RunState; made: readonly AnyRecord[] }[];
  /** The other device: what it has of the Shelf, once one was handed over. */
  other: ReadonlyMap<string, AnyRecord> | null;
  clock: number;
  /** Things kept for a drink although something in them was bad. */
  readonly slipped: string[];
}

/** A world with nothing in it but two materials. */
export function newWorld(): World {
  shelf.records.value = new Map();
  takeIn([material('card'), material('rhu')]);
  return {
    parts: new Map(),
    bad: new Set(),
    badThere: new Set(),
    unfit: new Set(),
    ended: [],
    other: null,
    clock: Date.UTC(2026, 0, 1),
    slipped: [],
  };
}

/** Whether something in a thing may never be drunk: bad itself, gone, or made of such. */
export function isBad(world: World, id: string, open: ReadonlySet<string> = new Set()): boolean {
  if (open.has(id)) return false;
  const inside = new Set([...open, id]);
  const parts = world.parts.get(id) ?? [];
  return (
    world.bad.has(id) ||
    world.unfit.has(id) ||
    parts.some((part) => !shelf.records.value.has(part) || isBad(world, part, inside))
  );
}

/** Notes a new thing. */
function note(world: World, id: string, parts: readonly string[], isOwn: boolean): void {
  world.parts.set(id, parts);
  if (isOwn) world.bad.add(id);
}

/** Stores as `keep` does, with the stamps by which two devices know what is newer. */
function store(world: World, records: readonly AnyRecord[]): void {
  takeIn(
    records.map((record) => {
      const before = shelf.records.value.get(record.id);
      const earlier = [...(before?.earlier ?? []), ...(before?.written ? [before.written] : [])];
      const written = new Date((world.clock += 1000)).toISOString();
      return {
        ...record,
        made: before?.made ?? written,
        written,
        ...(earlier.length > 0 ? { earlier } : {}),
      } as AnyRecord;
    }),
  );
}

function pick<R>(all: readonly R[], n: number): R | undefined {
  return all[n % Math.max(1, all.length)];
}

const all = () => [...shelf.records.value.values()].filter((one) => !one.id.startsWith('copy'));
const kindsOf = (...kinds: string[]) => all().filter(({ kind }) => kinds.includes(kind));

function ends(world: World, task: Task, run: RunState, parts: readonly string[], own: boolean): void {
  const made = attempt(() => kept(task, run));
  if (made instanceof Refused) return;
  const [first] = made;
  if (!first) return;
  const named = made.map((record) => ({ ...record, from: [...record.from] })) as AnyRecord[];
  store(world, named);
  note(world, first.id, parts, own);
  world.ended.push({ task, run, made: named });
  const forDrinks = task.id === 'dose' || (task.id === 'count' && ['drink', 'taste'].includes(run.typed['purpose']!));
  if (forDrinks && isBad(world, first.id)) world.slipped.push(`${task.id} of ${parts.join(', ')}`);
}

const TABLE = ['ethanol-96', 'propylene-glycol', 'isopropanol-99', 'ethanol-denatured'];

const tools = {
  bottle(world: World, a: number, b: number) {
    const id = `b${world.clock}`;
    const grade = b % 4 === 0 ? 'smell only' : 'fit for drinks';
    store(world, [bottle(a % 2 ? 'card' : 'rhu', { id, grade })]);
    note(world, id, [], false);
    if (grade === 'smell only') world.unfit.add(id);
  },
  pack(world: World, a: number, b: number) {
    const id = `p${world.clock}`;
    const grade = (['fit for drinks', 'smell only', undefined] as const)[b % 3];
    store(world, [
      pack({
        id,
        solvent: TABLE[a % 2]!,
        name: TABLE[a % 2]!,
        ...(grade ? { grade } : {}),
        ...(grade ? {} : { grade: undefined }),
      }),
    ]);
    note(world, id, [], false);
    if (grade === 'smell only') world.unfit.add(id);
  },
  solvent(world: World, a: number) {
    const id = `s${world.clock}`;
    const name = ['grain spirit', 'rice spirit', 'rubbing alcohol'][a % 3]!;
    store(world, [ownSolvent({ id, name, food: a % 4 !== 0 })]);
    note(world, id, [], a % 4 === 0 || a % 3 === 2);
  },
  dilute(world: World, a: number, b: number, c: number) {
    const source = pick(kindsOf('bottle', 'vial'), a);
    const packs = kindsOf('supply', 'solvent').map(({ id }) => id);
    const solvent = pick([...TABLE, ...packs, ...packs], b)!;
    if (!source) return;
    const strength = isOf('vial', source) ? String(source.contents[0]!.strength.value * 50) : '1';
    const said = c % 3 === 0 ? 'no' : 'yes';
    const typed = {
      bottle: source.id,
      strength,
      basis: '% w/w',
      size: '10',
      solvent,
      way: 'mass',
      measure: 'scale',
      food: said,
      [`food.${solvent}`]: said,
    };
    const asked =
      !shelf.records.value.has(solvent) ||
      (isOf('supply', shelf.records.value.get(solvent)!) &&
        !(shelf.records.value.get(solvent) as { grade?: string }).grade);
    const barred =
      TABLE.indexOf(solvent) >= 2 || (said === 'no' && asked) || (said === 'no' && solvent.startsWith('s'));
    const run = runOf({ ...typed, 'material.g': '0.1', 'solvent.g': '9', readability: '0.001' });
    ends(world, dilute, run, [source.id, ...(shelf.records.value.has(solvent) ? [solvent] : [])], barred);
  },
  count(world: World, a: number, b: number, c: number) {
    const [one, two] = [pick(kindsOf('vial'), a), pick(kindsOf('vial'), b)];
    if (!one || !two) return;
    const ids = [...new Set([one.id, two.id])];
    const drops = Object.fromEntries(ids.map((id) => [`drops.${id}`, 5]));
    const byHand = Object.fromEntries(
      ids.flatMap((id) => [
        [`pick.${id}`, 'yes'],
        [`plan.${id}`, '5'],
      ]),
    );
    const line = newRecord('formula', {
      id: 'f',
      name: 'F',
      root: 'f',
      version: 1,
      notes: '',
      lines: [{ material: 'card', name: 'card', share: 1 }],
    });
    takeIn([line]);
    const planned = {
      formula: 'f',
      plan: ids.map((id) => `${id}=5`).join(' '),
      purpose: ['smell', 'taste', 'drink'][c % 3]!,
      ppm: '10',
      drinkMl: '100',
    };
    const typed = c % 2 ? { formula: 'hand', ...byHand } : planned;
    ends(world, count, runOf({ ...typed, dropper: 'typical', name: 'T', size: '10' }, drops, 'name'), ids, false);
  },
  dose(world: World, a: number, b: number, c: number) {
    const [one, two] = [pick(kindsOf('vial'), a), pick(kindsOf('vial'), b)];
    if (!one || !two) return;
    const second = c % 2 ? { 'more.1': 'yes', 'vial.2': two.id } : {};
    const parts = c % 2 ? [one.id, two.id] : [one.id];
    ends(
      world,
      dose,
      dosing({ vial: one.id, ...second }, { drops: 3, ...(c % 2 ? { 'drops.2': 2 } : {}) }),
      parts,
      false,
    );
  },
  drink(world: World, a: number) {
    const from = pick(kindsOf('vial'), a);
    if (!from) return;
    const id = `d${world.clock}`;
    store(world, [drink(id, from.id)]);
    note(world, id, [from.id], false);
  },
  again(world: World, a: number) {
    const then = pick(world.ended, a);
    if (!then) return;
    const { task, run, made } = then;
    const ran = newRecord('run', {
      id: 'r',
      task: task.id,
      kept: made.map(({ id }) => id),
      title: '',
      endedAt: '2026-01-02T00:00:00Z',
    });
    const { typed } = repeatOf(task, ran, run);
    const ids = [
      typed['vial'],
      typed['vial.2'],
      ...(typed['plan'] ?? '').split(' ').map((one) => one.split('=')[0]!),
    ].filter(Boolean) as string[];
    if (task.id === 'dilute' || ids.length === 0) return; // what a dilution is made of is chosen anew
    const drops = task.id === 'dose' ? run.drops : Object.fromEntries(ids.map((id) => [`drops.${id}`, 5]));
    ends(world, task, { ...run, typed: { ...run.typed, ...typed }, drops }, ids, false);
  },
  mark(world: World, a: number) {
    const thing = pick(all().filter(canBeMarked), a);
    if (!thing || !canBeMarked(thing)) return;
    store(world, [marked(thing, 'wrong bottle', world.clock)]);
    world.bad.add(thing.id);
  },
  edit(world: World, a: number, b: number) {
    const thing = pick(kindsOf('bottle', 'supply', 'vial'), a);
    const now = thing && changed(thing, { box: String(b), grade: 'fit for drinks' });
    if (!thing || !now) return;
    const frees = 'grade' in now && thing.kind !== 'vial' && (now as { grade?: string }).grade === 'fit for drinks';
    store(world, [now]);
    if (frees) world.unfit.delete(thing.id); // a mark stays
  },
  archive(world: World, a: number) {
    const thing = pick(kindsOf('bottle', 'supply', 'vial', 'solvent'), a);
    if (thing) store(world, [{ ...thing, archived: '2026-11-30T00:00:00Z' }]);
  },
  erase(world: World, a: number) {
    const thing = pick(kindsOf('bottle', 'vial', 'solvent'), a);
    if (thing && world.other === null)
      shelf.records.value = new Map([...shelf.records.value].filter(([id]) => id !== thing.id));
  },
  /** Hands the Shelf over to the other device, or goes on there. */
  carry(world: World) {
    const here = shelf.records.value;
    if (world.other) shelf.records.value = world.other;
    [world.bad, world.badThere] = world.other ? [world.badThere, world.bad] : [world.bad, new Set(world.bad)];
    world.other = here;
  },
  restore(world: World) {
    if (!world.other) return;
    const here = { records: shelf.records.value as ReadonlyMap<string, Stored>, events: [] };
    const file = { made: '2026-11-30T00:00:00Z', records: [...world.other.values()], events: [], missing: 0 };
    const { changes } = planMerge(file, here);
    takeIn(changes.flatMap((one) => ('record' in one ? [one.record] : [])));
    world.bad = new Set([...world.bad, ...world.badThere]);
  },
};

export const toolNames = Object.keys(tools) as (keyof typeof tools)[];

/** Uses a tool in a world. */
export function use(world: World, [tool, a, b, c]: Op): void {
  tools[tool](world, a, b, c);
  world.clock += 1000;
}
