import { isOf, kindOf, type AnyRecord } from '../../records/kind/kinds';
import { ancestors } from '../../records/lineage';
import type { Use } from '../../records/kind/quantity';
import type { Run } from '../../records/kind/run';
import { find, list, shelf } from '../../records/shelf';
import { measuredText } from '../../ui/format';
import type { RunState } from '../engine/fold';
import type { Task } from '../engine/task';
import { wasFit } from '../../workshop/drinkable/grade';
import { todaysLot, type Difference } from './todaysLot';

/** A task begun again, exactly as then: its answers with today's lots, and what is different from then. */
export interface Repeat {
  readonly task: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly differences: readonly Difference[];
  /** A later version of its formula, with the answers to begin with that one in its place; null where there is none. */
  readonly newer: (Difference & { readonly typed: Readonly<Record<string, string>> }) | null;
}

/** The same task with the same answers, drops and version of the formula; other lots only for those that are used up, put away, unfit or past their day. */
export function repeatOf(task: Task, run: Run, state: RunState): Repeat {
  const kept = run.kept.flatMap((id) => shelf.records.value.get(id) ?? []);
  const uses = kept.flatMap((record) => ('uses' in record ? record.uses : []));
  const forDrinks = kept.some(wasFit);
  const found = new Map<string, ReturnType<typeof todaysLot>>();
  const todays = (id: string): string => {
    const massG = uses.reduce((sum, use) => sum + (use.id === id ? use.massG : 0), 0);
    if (!found.has(id)) found.set(id, todaysLot(id, { massG, forDrinks }));
    return found.get(id)!.now;
  };
  const then = { answers: { ...state.presets, ...state.typed }, counted: state.drops, kept, todays };
  const repeated = Object.entries(then.answers)
    .filter(([key]) => task.repeats?.some((name) => (name.endsWith('.') ? key.startsWith(name) : key === name)))
    .map(([key, text]) => [key.split('.').map(todays).join('.'), todays(madeThen(key, text, kept))] as const);
  const answers: Record<string, string> = Object.fromEntries(repeated);
  const typed = { ...answers, ...task.repeat?.({ ...then, exactly: true }) };
  const newer = newerVersion(typed);
  const lots = [...found.values()].flatMap(({ difference }) => difference ?? []);
  return {
    task: run.task,
    typed,
    differences: [...lots, ...gone(uses, kept), ...drops(state, kept)],
    newer: newer && {
      ...newer.difference,
      typed: { ...answers, ...task.repeat?.({ ...then, exactly: false }), ...newer.typed },
    },
  };
}

/** "A new one" of then is on the Shelf by now: the record of that kind which the run ended in. */
function madeThen(key: string, text: string, kept: readonly AnyRecord[]): string {
  return text === 'new' ? (kept.find(({ kind }) => kind === key)?.id ?? text) : text;
}

/** The newest version of the formula that is repeated, where that is a later one. */
function newerVersion(typed: Readonly<Record<string, string>>) {
  for (const [key, text] of Object.entries(typed)) {
    const then = find('formula', text);
    const versions = then ? list('formula').filter(({ root }) => root === then.root) : [];
    const newest = versions.sort((a, b) => b.version - a.version)[0];
    if (!then || !newest || newest.version <= then.version) continue;
    const difference = {
      words: `${newest.name} has a later version`,
      then: `version ${then.version}`,
      now: `version ${newest.version}`,
    };
    return { difference, typed: { [key]: newest.id } };
  }
  return null;
}

/** What went in then and is on the Shelf no more, not even archived. */
function gone(uses: readonly Use[], kept: readonly AnyRecord[]): Difference[] {
  const solvents = kept.flatMap((record) => (isOf('vial', record) && record.solvent ? record.solvent.id : []));
  return uses.flatMap(({ id, code, name, strength, how }) => {
    if (how === undefined || shelf.records.value.has(id) || solvents.includes(id)) return [];
    const then = [code ?? name ?? 'something', strength].filter(Boolean).join(' ');
    return [{ words: `${then} is no longer on the Shelf`, then, now: 'no other is known' }];
  });
}

/** Drops that were weighed again since. */
function drops(state: RunState, kept: readonly AnyRecord[]): Difference[] {
  const dropper = find('dropper', state.typed['dropper'] ?? state.presets['dropper']);
  const used = kept.flatMap((record) => ancestors(record.id)).map(({ record }) => record);
  return used.flatMap((record) => {
    if (!dropper || !isOf('calibration', record) || record.dropper !== dropper.id) return [];
    const [newest] = list('calibration').filter(
      ({ dropper: on, liquid }) =>
        on === record.dropper && liquid.id === record.liquid.id && liquid.strength === record.liquid.strength,
    );
    if (!newest || newest.id === record.id) return [];
    const text = (one: typeof newest) => measuredText(one.mgPerDrop, 'mg');
    const words = `A drop of ${record.liquid.name} from ${dropper.name} was weighed again`;
    return [{ words, then: text(record), now: text(newest) }];
  });
}

/** Whether a record can be made again: it is, or came out of, a run that can be repeated; `task` is that of a run. */
export function canBeMadeAgain(record: AnyRecord, task?: Task | null): boolean {
  if (isOf('run', record)) return task?.repeats !== undefined;
  return kindOf(record).repeat && record.from.length > 0;
}
