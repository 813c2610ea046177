import { isOf } from '../../records/kind/kinds';
import type { RunState } from '../engine/fold';
import type { Then } from '../engine/task';
import { named } from './fields';

/** Whether a drink dosed before is dosed again with its drops: nothing is asked and nothing is planned. */
export function isExact(run: RunState): boolean {
  return Boolean(run.typed['exactly']);
}

/** The drops of dose i of a drink that is dosed again; null where there are none. */
export function dropsOfThen(run: RunState, i: number): number | null {
  const drops = Number(run.typed[named('again.drops', i)] ?? 0);
  return isExact(run) && drops > 0 ? drops : null;
}

/** What a run is given so that the very drops of then fall into the same amount of the same drink; of several glasses the levels are the same. */
export function exactlyAs({ kept, exactly }: Then): Record<string, string> {
  const tastings = kept.flatMap((record) => (isOf('tasting', record) ? record : []));
  const [one] = tastings;
  if (!exactly || !one || tastings.length > 1 || one.glass) return {};
  const base = kept.find(({ kind }) => kind === 'base');
  const drops = one.doses.flatMap((dose, i) =>
    dose.drops === null ? [] : [[named('again.drops', i + 1), String(dose.drops)] as const],
  );
  return { exactly: one.id, ...(base ? { base: base.id } : {}), ...Object.fromEntries(drops) };
}
