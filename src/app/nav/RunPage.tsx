import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { isOf, type AnyRecord } from '../../records/kind/kinds';
import { runWithEvents, whenLoaded } from '../../records/shelf';
import { resumeWalk } from '../../tasks/engine/run';
import type { Walk } from '../../tasks/engine/task';
import { TaskScreen } from '../../tasks/screen/TaskScreen';
import { HowPage } from '../../ui/controls/HowPage';
import { useFault } from '../../ui/fault/useFault';
import { taskOrNotice } from './loaded';
import { discardRun } from './discardRun';
import { goneOnWith } from './goneOnWith';
import { back, go, leaveThing, leaveThingFor, route } from './route';
import { begun, startTask } from './startTask';

/** Opens a run where it was left, with its earlier steps behind it for the way back; null where something else is shown in its place. */
async function open(id: string): Promise<Walk | null> {
  const walk = begun.get(id) ?? (await stored(id));
  if (!walk || route.peek().length > 2) return walk;
  const keys = walk.steps.value.slice(0, walk.index.value + 1).map(({ key }) => key);
  keys.forEach((key, i) => go(['run', id, key], i === 0 ? 'replace' : 'push'));
  return walk;
}

async function stored(id: string): Promise<Walk | null> {
  await whenLoaded; // steps read the shelf
  const there = await runWithEvents(id);
  const task = await taskOrNotice(there?.run.task);
  if (!there || !task) return null;
  const { open, discarded, kept } = there.run;
  if (open === 1) {
    const now = await goneOnWith(there);
    if (now.run.id === id) return resumeWalk(task, now.run, now.events);
    go(['run', now.run.id], 'replace');
    return null;
  }
  go(discarded ? ['record', id] : kept[0] ? ['record', kept[0]] : [], 'replace');
  return null;
}

/** The page of a run: #/run/<id>/<step>, or #/run/<id> to go on where it was left. */
export function RunPage({ id }: { id: string }) {
  const walk = useSignal<Walk | null>(null);
  const fault = useFault();
  useEffect(() => {
    walk.value = null;
    open(id).then((opened) => {
      if (opened) walk.value = opened;
      else if (route.peek()[1] === id) go([], 'replace');
    }, fault);
  }, [id]);
  return walk.value && walk.value.id === id ? <Walking walk={walk.value} /> : <main class="page" aria-busy="true" />;
}

/**
 * Keeps the run and the route at one step. The phone's back changes the route: the run follows. A step moved within the run: the route
 * follows, and a quick finger may be a step further by then; that is no going back. A step that is gone is passed over.
 */
function useRoute(walk: Walk, wanted: string | undefined, shown: string): void {
  const followed = useRef<string | null>(null); // the step that the route was brought to last
  const isStep = (key: string) => walk.steps.peek().some((step) => step.key === key);
  useEffect(() => {
    if (!wanted || wanted === shown || wanted === followed.current) return;
    if (isStep(wanted)) void walk.goTo(wanted);
    else if (followed.current !== null) back();
  }, [wanted]);
  useEffect(() => {
    const isComing = followed.current === null && wanted !== undefined && isStep(wanted);
    followed.current = shown;
    if (wanted !== shown && !isComing) go(['run', walk.id, shown], wanted && isStep(wanted) ? 'push' : 'replace');
  }, [shown]);
}

function Walking({ walk }: { walk: Walk }) {
  const [, , wanted, page, result] = route.value;
  const shown = walk.step.value.key;
  useRoute(walk, wanted, shown);
  const asked = page === 'how' ? walk.step.value.results?.[Number(result)] : undefined;
  if (asked) return <HowPage result={asked} onClose={back} />;
  return (
    <TaskScreen
      walk={walk}
      onBack={back}
      onPause={() => leaveThingFor([])}
      onDiscard={() =>
        void walk
          .settled()
          .then(() => discardRun(walk.id, walk.title.peek()))
          .then(leaveThing)
      }
      onHow={(i) => go(['run', walk.id, shown, 'how', String(i)])}
      onFinished={(records, then) => {
        begun.delete(walk.id);
        if (then) return void startTask(then, 'instead');
        leaveThingFor(endedIn(records));
      }}
      onStart={(start, instead) =>
        void (instead
          ? walk
              .settled()
              .then(() => discardRun(walk.id, walk.title.peek()))
              .then(() => startTask(start, 'instead'))
          : startTask(start))
      }
    />
  );
}

/** Where a run leads that has ended: to what was made; of several vials to their labels. */
function endedIn(records: readonly AnyRecord[]): string[] {
  const vials = records.filter((record) => isOf('vial', record));
  if (vials.length > 1) return ['labels', vials.map(({ id }) => id).join(',')];
  return records[0] ? ['record', records[0].id] : [];
}
