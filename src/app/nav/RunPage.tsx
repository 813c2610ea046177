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
import { go, hashOf, route } from './route';
import { begun, startTask } from './startTask';

/** Opens a stored run where it was left, with its earlier steps behind it for the phone's back. */
async function open(id: string): Promise<Walk | null> {
  const fresh = begun.get(id);
  if (fresh) return fresh;
  await whenLoaded; // steps read the shelf
  const there = await runWithEvents(id);
  const task = await taskOrNotice(there?.run.task);
  if (!there || !task) return null;
  if (there.run.open !== 1) {
    go(there.run.kept[0] ? ['record', there.run.kept[0]] : [], 'replace');
    return null;
  }
  const walk = resumeWalk(task, there.run, there.events);
  if (route.peek().length < 3) {
    const [first, ...later] = walk.steps.value
      .slice(0, walk.index.value + 1)
      .map((step) => hashOf('run', id, step.key));
    history.replaceState(null, '', first);
    for (const hash of later) history.pushState(null, '', hash);
    route.value = ['run', id, walk.step.value.key];
  }
  return walk;
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

function Walking({ walk }: { walk: Walk }) {
  const [, , wanted, page, result] = route.value;
  const shown = walk.step.value.key;
  const followed = useRef(shown); // the step that the route was brought to last
  useEffect(() => {
    // The phone's back changes the route: the run follows. A step moved within the run: the route follows, and a quick finger may be
    // a step further by then; that is no going back.
    if (!wanted || wanted === shown || wanted === followed.current) return;
    if (walk.steps.peek().some((step) => step.key === wanted)) void walk.goTo(wanted);
  }, [wanted]);
  useEffect(() => {
    followed.current = shown;
    if (wanted !== shown) go(['run', walk.id, shown]);
  }, [shown]);
  const asked = page === 'how' ? walk.step.value.results?.[Number(result)] : undefined;
  if (asked) return <HowPage result={asked} onClose={() => history.back()} />;
  return (
    <TaskScreen
      walk={walk}
      onLeave={() => go([])}
      onHow={(i) => go(['run', walk.id, shown, 'how', String(i)])}
      onFinished={(records) => {
        begun.delete(walk.id);
        go(endedIn(records), 'replace');
      }}
      onStart={(start) => startTask(start)}
    />
  );
}

/** Where a run leads that has ended: to what was made; of several vials to their labels. */
function endedIn(records: readonly AnyRecord[]): string[] {
  const vials = records.filter((record) => isOf('vial', record));
  if (vials.length > 1) return ['labels', vials.map(({ id }) => id).join(',')];
  return records[0] ? ['record', records[0].id] : [];
}
