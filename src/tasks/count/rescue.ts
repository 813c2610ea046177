import { WORTH } from '../../core/plan/tradeOff';
import type { Plan, PlanInstance, PlanResult } from '../../core/plan/instance';
import { rescuePlan } from '../../core/plan/rescue';
import { dropsText } from '../../workshop/dropWords';
import type { Option } from '../../ui/controls/field';
import type { RunState } from '../engine/fold';
import { instanceOf } from './planInstance';
import { percent } from './plans';
import { countedDrops, targetsText, type Round, type Target } from './rounds';
import { stockOf } from './stock';

/** A way on after a slip: how it is said, what it costs (fraction of the target, worst line), and what is counted from then on. */
interface Way {
  readonly name: 'accept' | 'complete' | 'scaleUp';
  readonly error: number | null;
  readonly targets: readonly Target[];
  readonly words: string;
  readonly more: string;
}

/** What can be done about a line that has not its drops, best first; the first one is marked. */
export function waysOn(run: RunState, round: Round): Option[] {
  const ways = rescues(run, round);
  const best = bestOf(ways);
  const count = countedDrops(run, round.id);
  const missing = round.drops - count;
  const on = {
    value: 'on',
    label: `Count on to ${round.drops}`,
    hint: `${missing} more of this vial, then as planned · best`,
  };
  const others = [best, ...ways.filter((way) => way !== best)].map((way, i) => ({
    value: `${way.name}|${targetsText(way.targets)}`,
    label: way.words,
    hint: i === 0 && missing < 0 && ways.length > 1 ? `${way.more} · best` : way.more,
  }));
  return [...(missing > 0 ? [on] : []), ...others];
}

/** The way of the smallest error; another plan in the middle of a walk must cut it by a quarter to be worth it, as in the trade-off. */
function bestOf(ways: readonly Way[]): Way {
  return ways.reduce((best, way) => ((way.error ?? Infinity) <= WORTH * (best.error ?? Infinity) ? way : best));
}

/** Leave it; change the lines still to come; or make more of all, also of lines that were done. */
function rescues(run: RunState, round: Round): Way[] {
  const plain: Way = {
    name: 'accept',
    error: null,
    targets: round.rest,
    words: 'Leave it as it is',
    more: 'the rest as planned; the record holds what is really in the vial',
  };
  const instance = withoutEmpty(run, instanceOf(run), round);
  if (instance.components.length < 2) return [plain];
  const counted = countedIn(run, instance);
  const planned: Record<string, number> = { ...counted, [round.id]: round.drops };
  for (const { id, drops } of round.rest) planned[id] = drops;
  const within = limited(instance, planned, counted);
  const open = rescuePlan(within, { counted, finished: finishedLines(instance, round), planned });
  const all = rescuePlan(within, { counted, finished: [], planned });
  if (!open.ok || !all.ok) return [plain];
  const accept = {
    ...plain,
    error: open.accept.objective,
    more: `the rest as planned, ${offText(open.accept.objective)}`,
  };
  const complete = changed(open.complete, { name: 'complete', counted, than: accept });
  const more = changed(nearer(open.scaleUp, all.scaleUp), { name: 'scaleUp', counted, than: complete ?? accept });
  return [accept, ...(complete ? [complete] : []), ...(more && !isOnlyOn(more, round) ? [more] : [])];
}

/** The first plan, unless going back to lines that were done cuts its error by a quarter. */
function nearer(onward: PlanResult, back: PlanResult): PlanResult {
  if (!onward.ok) return back;
  return back.ok && back.objective <= WORTH * onward.objective ? back : onward;
}

/** Whether a way is only to count on and go on as planned, which is offered anyway. */
function isOnlyOn({ targets }: Way, { id, drops, rest }: Round): boolean {
  const planned = [{ id, drops }, ...rest];
  return (
    targets.length === planned.length &&
    planned.every((one) => targets.some((target) => target.id === one.id && target.drops === one.drops))
  );
}

/** The same ask with no more drops than going on as planned takes, and room for what is in the vial already. */
function limited(instance: PlanInstance, planned: Plan, counted: Plan): PlanInstance {
  const most = Object.keys(planned).reduce((sum, id) => sum + Math.max(planned[id] ?? 0, counted[id] ?? 0), 0);
  return { ...instance, limits: { ...instance.limits, maxDrops: most } };
}

function countedIn(run: RunState, { components }: PlanInstance): Record<string, number> {
  const ids = components.flatMap(({ stocks }) => stocks.map(({ id }) => id));
  return Object.fromEntries(ids.map((id) => [id, countedDrops(run, id)]));
}

/** The ask without lines that were left at no drop at all: nothing mends them, and the others are to be right among themselves. */
function withoutEmpty(run: RunState, instance: PlanInstance, round: Round): PlanInstance {
  const finished = finishedLines(instance, round);
  const empty = (component: PlanInstance['components'][number]) =>
    finished.includes(component.id) && component.stocks.every(({ id }) => countedDrops(run, id) === 0);
  return { ...instance, components: instance.components.filter((component) => !empty(component)) };
}

/** Lines of which no vial is still to be taken. */
function finishedLines({ components }: PlanInstance, { walked, rest }: Round): string[] {
  const taken = (stocks: PlanInstance['components'][number]['stocks']) =>
    stocks.some(({ id }) => walked.includes(id)) && !stocks.some(({ id }) => rest.some((target) => target.id === id));
  return components.filter(({ stocks }) => taken(stocks)).map(({ id }) => id);
}

/** A new plan as a way on; null when there is none, or when it comes no nearer than the simpler way. */
function changed(
  result: PlanResult,
  { name, counted, than }: { name: 'complete' | 'scaleUp'; counted: Plan; than: Way },
): Way | null {
  if (!result.ok || result.objective > (than.error ?? Infinity) * (1 - 1e-9)) return null;
  const targets = Object.entries(result.plan)
    .map(([id, drops]) => ({ id, drops }))
    .filter(({ id, drops }) => drops > (counted[id] ?? 0))
    .sort((a, b) => a.drops - (counted[a.id] ?? 0) - (b.drops - (counted[b.id] ?? 0)));
  const had = Object.values(counted).reduce((sum, drops) => sum + drops, 0);
  const again = targets.flatMap(({ id }) => ((counted[id] ?? 0) > 0 ? (stockOf(id)?.tag ?? []) : []));
  return {
    name,
    error: result.objective,
    targets,
    words: name === 'complete' ? 'Change the remaining materials' : 'Count more than planned',
    more: `${dropsText(result.drops - had)} to go, ${offText(result.objective)}${again.length > 0 ? `; ${again.join(', ')} once more` : ''}`,
  };
}

function offText(error: number): string {
  return `at most ${percent(error)} off`;
}
