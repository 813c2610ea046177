import { refusalOfId } from '../../workshop/grade';
import { shelf } from '../../records/shelf';
import type { RunState } from '../engine/fold';
import type { Step } from '../engine/task';

const GONE = 'Something that was weighed is no longer on the Shelf: smell only, it never goes into a drink.';

/** Ids of all materials and solvents of which something was weighed in this run. */
function weighedIds(run: RunState): Set<string> {
  const masses = Object.entries(run.typed).filter(([key, text]) => key.startsWith('mass.') && text.trim() !== '');
  return new Set(masses.flatMap(([key]) => key.split('.').slice(1)));
}

/** Whether something of a material or solvent was weighed: then its bottle is in the vessel, and no other can be chosen for it. */
export function isWeighedIn(run: RunState, id: string): boolean {
  return weighedIds(run).has(id);
}

/** Why what is in the vessel may not be drunk, though it could when it was weighed: in one sentence; null when it may. */
export function spoiltBy(run: RunState): string | null {
  const answers = { ...run.presets, ...run.typed };
  const weighed = [...weighedIds(run)];
  const bottles = weighed.flatMap((id) => answers[`lot.${id}`] || []).filter((id) => id !== 'none');
  const gone = bottles.some((id) => !shelf.records.value.has(id));
  return [...bottles, ...weighed].map(refusalOfId).find((why) => why !== null) ?? (gone ? GONE : null);
}

/** A vessel with something in it that may not be drunk. A clean one begins a run of its own; this one stays as it is. */
export function spoiltStep(run: RunState, why: string): Step {
  const kept = Object.entries(run.typed).filter(([key]) => !/^(mass|over|lot|left)\.|^(exactly|again)$|food/.test(key));
  return {
    key: 'spoilt',
    say: '‹Do not go on with it›: put what is in the vessel away.',
    more: [why, 'It was fit for drinks when it was weighed, and is not now.'],
    problem: why,
    offers: [{ words: 'Begin again with other bottles', start: { task: 'batch', typed: Object.fromEntries(kept) } }],
  };
}

/** The steps that are shown while one of them refuses to go on; where the run stands beyond them, that one alone. */
export function upTo(run: RunState, shown: readonly Step[], refusing: Step): readonly Step[] {
  return run.at === '' || shown.some(({ key }) => key === run.at) ? shown : [refusing];
}
