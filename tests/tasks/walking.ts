import { nextKey, problemsOf, recordedOn, withPresets } from '../../src/tasks/engine/leaving';
import { placeOf } from '../../src/tasks/engine/place';
import { fold, type RunState } from '../../src/tasks/engine/fold';
import type { Step, Task } from '../../src/tasks/engine/task';
import type { RunEvent } from '../../src/records/kind/run';

/** A run whose fields were typed at one go, as if every step that they lead to had been left. */
export function asLeft(task: Task, run: RunState): RunState {
  for (let now = run; ;) {
    const done = Object.fromEntries(task.steps(now).map(({ key }) => [key, '2026-05-04T10:00:00.000Z']));
    const { presets } = withPresets(task, { ...now, done });
    if (presets === now.presets) return now;
    now = { ...now, presets };
  }
}

/** A run walked without a screen: the same events, the same rules for leaving a step. */
export interface Walker {
  state(): RunState;
  step(): Step;
  keys(): string[];
  type(key: string, text: string): void;
  tap(counter: string, times: number): void;
  undo(counter: string): void;
  /** Leaves the step as the main button does; throws with the sentence that keeps it from being left. */
  next(): void;
  back(key: string): void;
  keep(): ReturnType<Task['keep']>;
}

/** Begins a run of a task with some fields filled in. */
export function startWalking(task: Task, typed: Readonly<Record<string, string>> = {}): Walker {
  const events: RunEvent[] = [];
  const put = (event: Pick<RunEvent, 'type' | 'key'> & Partial<RunEvent>) =>
    void events.push({ run: 'r', seq: events.length, at: '2026-05-04T10:00:00.000Z', ...event });
  for (const [key, text] of Object.entries(typed)) put({ type: 'typed', key, text });
  let folded = { state: fold([]), events: 0 };
  const state = (): RunState => {
    if (folded.events < events.length)
      folded = { state: fold(events.slice(folded.events), folded.state), events: events.length };
    return folded.state;
  };
  const steps = () => task.steps(state());
  const stepOf = (all: readonly Step[]) => all[placeOf(all, state())]!;
  const step = () => stepOf(steps());
  return {
    state,
    step,
    keys: () => steps().map(({ key }) => key),
    type: (key, text) => put({ type: 'typed', key, text }),
    tap: (key, times) => Array.from({ length: times }, () => put({ type: 'drop', key })),
    undo: (key) => put({ type: 'undo', key }),
    next() {
      const now = step();
      const why = [...Object.values(problemsOf(now, state())), ...(now.problem ? [now.problem] : [])];
      if (why.length > 0) throw new Error(why[0]);
      const after = nextKey(task, now, state());
      if (after === undefined) throw new Error('this was the last step');
      recordedOn(now, state()).forEach(put);
      put({ type: 'go', key: after, text: now.key });
    },
    back: (key) => put({ type: 'go', key }),
    keep: () => task.keep(asLeft(task, state())),
  };
}
