import { isOf, kindOf, type AnyRecord } from '../../records/kind/kinds';
import { ancestors } from '../../records/lineage';
import type { Run } from '../../records/kind/run';
import { find, list, shelf } from '../../records/shelf';
import { isStocked, leftOf, type Stocked } from '../../records/stock';
import type { Vial } from '../../records/kind/vial';
import { formatDay, formatGiven, formatPlain, measuredText } from '../../ui/format';
import type { RunState } from '../engine/fold';
import type { Task } from '../engine/task';
import { today } from '../../workshop/today';
import { useByOf } from '../../workshop/useBy';

/** A task begun again: its answers with today's lots, and what is different from then, a sentence each. */
export interface Repeat {
  readonly task: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly differences: readonly string[];
}

/** The same task with the same answers, today's lots in place of those that are used up, put away or past their day. */
export function repeatOf(task: Task, run: Run, state: RunState): Repeat {
  const kept = run.kept.flatMap((id) => shelf.records.value.get(id) ?? []);
  const swaps = new Map<string, string>();
  const differences: string[] = [];
  const todays = (id: string): string => {
    if (swaps.has(id)) return swaps.get(id)!;
    const { now, words } = todaysOf(id);
    if (words) differences.push(words);
    swaps.set(id, now);
    return now;
  };
  const answers = { ...state.presets, ...state.typed };
  const repeated = Object.entries(answers)
    .filter(([key]) => task.repeats?.some((name) => (name.endsWith('.') ? key.startsWith(name) : key === name)))
    .map(([key, text]) => [key.split('.').map(todays).join('.'), todays(madeThen(key, text, kept))] as const);
  return {
    task: run.task,
    typed: { ...Object.fromEntries(repeated), ...task.repeat?.({ answers, kept, todays }) },
    differences: [...differences, ...drops(state, kept)],
  };
}

/** "A new one" of then is on the Shelf by now: the record of that kind which the run ended in. */
function madeThen(key: string, text: string, kept: readonly AnyRecord[]): string {
  return text === 'new' ? (kept.find(({ kind }) => kind === key)?.id ?? text) : text;
}

/** The id to use today for one of then, with a sentence where that is another one. A text that is no id comes back as it is. */
function todaysOf(id: string): { now: string; words: string } {
  const then = shelf.records.value.get(id);
  const same = { now: id, words: '' };
  if (!then) return same;
  if (isOf('formula', then)) return newestVersion(then.root, then.id, then.version);
  if (!isStocked(then)) return same;
  const why = unfit(then);
  if (why === null) return same;
  const other = candidates(then).find((one) => unfit(one) === null);
  if (!other) return { now: id, words: `${nameOf(then)} ${why}, and there is no other on the Shelf.` };
  return { now: other.id, words: `${nameOf(then)} ${why}: ${nameOf(other)} is taken instead${change(then, other)}.` };
}

function newestVersion(root: string, id: string, version: number): { now: string; words: string } {
  const [newest] = list('formula')
    .filter((one) => one.root === root)
    .sort((a, b) => b.version - a.version);
  if (!newest || newest.id === id) return { now: id, words: '' };
  return { now: newest.id, words: `${newest.name}: version ${version} then, version ${newest.version} now.` };
}

/** Why a bottle or vial is not taken today; null when it can be. */
function unfit(record: Stocked): string | null {
  if (record.archived) return 'is put away';
  const useBy = useByOf(record);
  if (useBy && useBy.day < today()) return `is past its day (${formatDay(useBy.day)})`;
  return leftOf(record)?.value === 0 ? 'is used up' : null;
}

/** Others of the same: bottles of the material or solvent, vials of the same materials, newest first. */
function candidates(then: Stocked): Stocked[] {
  if (isOf('supply', then))
    return list('supply').filter(({ id, solvent }) => id !== then.id && solvent === then.solvent);
  if (isOf('bottle', then))
    return list('bottle').filter(({ id, material }) => id !== then.id && material === then.material);
  const contents = (vial: Vial) =>
    vial.contents
      .map(({ material }) => material)
      .sort()
      .join();
  return list('vial')
    .filter((vial) => vial.id !== then.id && contents(vial) === contents(then))
    .sort((a, b) => distance(a, then) - distance(b, then));
}

/** How far the strength of a vial is from another's, as a ratio. */
function distance(vial: Vial, then: Vial): number {
  const strength = (one: Vial) => one.contents.reduce((sum, part) => sum + part.strength.value, 0);
  return Math.abs(Math.log(strength(vial) / strength(then)));
}

function nameOf(record: Stocked): string {
  if (isOf('vial', record)) return `${record.code} made ${formatDay(record.madeOn)}`;
  const own = isOf('bottle', record);
  const name = own ? (find('material', record.material)?.code ?? 'the bottle') : record.name;
  const came = formatDay((own && record.received) || record.made);
  return `${name} ${record.lot ? `lot ${record.lot}` : `of ${came}`}`;
}

/** What the other one differs in. */
function change(then: Stocked, now: Stocked): string {
  const said: string[] = [];
  if (isOf('vial', then) && isOf('vial', now)) {
    const text = (vial: Vial) => `${formatGiven(vial.label.value)} ${vial.label.basis}`;
    if (text(then) !== text(now)) said.push(`${text(then)} then, ${text(now)} now`);
  }
  if (isOf('bottle', then) && isOf('bottle', now)) {
    if (then.supplier !== now.supplier) said.push(`from ${now.supplier || 'another supplier'}`);
    if (then.density?.gPerMl !== now.density?.gPerMl && now.density)
      said.push(`density ${formatGiven(now.density.gPerMl)} g/mL`);
    if (then.purity !== now.purity && now.purity) said.push(`purity ${formatPlain(now.purity * 100)} %`);
  }
  if (then.grade !== now.grade && now.grade) said.push(now.grade);
  return said.length > 0 ? ` (${said.join(', ')})` : '';
}

/** Drops that were weighed again since. */
function drops(state: RunState, kept: readonly AnyRecord[]): string[] {
  const dropper = find('dropper', state.typed['dropper'] ?? state.presets['dropper']);
  const used = kept.flatMap((record) => ancestors(record.id)).map(({ record }) => record);
  return used.flatMap((record) => {
    if (!dropper || !isOf('calibration', record) || record.dropper !== dropper.id) return [];
    const [newest] = list('calibration').filter(
      (one) => one.dropper === record.dropper && one.liquid.id === record.liquid.id,
    );
    if (!newest || newest.id === record.id) return [];
    const text = (one: typeof newest) => measuredText(one.mgPerDrop, 'mg');
    return `A drop of ${record.liquid.name} from ${dropper.name} weighed ${text(record)} then, ${text(newest)} now.`;
  });
}

/** Whether a record can be made again: it is, or came out of, a run that can be repeated; `task` is that of a run. */
export function canBeMadeAgain(record: AnyRecord, task?: Task | null): boolean {
  if (isOf('run', record)) return task?.repeats !== undefined;
  return kindOf(record).repeat && record.from.length > 0;
}
