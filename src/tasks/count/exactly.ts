import { isOf } from '../../records/kind/kinds';
import { find } from '../../records/shelf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Then } from '../engine/task';
import { fields } from './fields';
import { counterOf, targetsText, type Target } from './rounds';

/** The formula of the trial that is made again. */
export function formulaOfThen(run: RunState) {
  return find('vial', answer(run, fields.exactly))?.from.flatMap((id) => find('formula', id) ?? [])[0];
}

/** What a run is given so that the very drops of then are counted, from the vials of today. */
export function exactlyAs({ answers, counted, kept, exactly, todays }: Then): Record<string, string> {
  const trial = kept.find((record) => isOf('vial', record));
  if (!exactly || !trial || !isOf('vial', trial)) return {};
  const drops = new Map<string, number>(); // two vials of then may be one today
  for (const use of trial.uses) {
    const now = todays(use.id);
    drops.set(now, (drops.get(now) ?? 0) + (use.drops ?? counted[counterOf(use.id)] ?? 0));
  }
  const targets = [...drops].map(([id, n]): Target => ({ id, drops: n })).filter((one) => one.drops > 0);
  const formula = trial.from.flatMap((id) => find('formula', id) ?? [])[0];
  return {
    exactly: trial.id,
    plan: targetsText(targets),
    ...(answers['formula'] === 'materials' && formula ? { formula: formula.id } : {}),
    ...(answers['formula'] === 'hand' ? byHand(targets) : {}),
  };
}

/** The same drops as they are typed: a slip is then mended among these vials. */
function byHand(targets: readonly Target[]): Record<string, string> {
  return Object.fromEntries(
    targets.flatMap(({ id, drops }) => [
      [`pick.${id}`, 'yes'],
      [`plan.${id}`, String(drops)],
    ]),
  );
}
