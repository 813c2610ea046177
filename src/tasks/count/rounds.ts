import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { fields } from './fields';

/** So many drops of a stock, in all. */
export interface Target {
  readonly id: string;
  readonly drops: number;
}

/** One turn at the tap pad: this stock, up to that many drops in all. */
export interface Round extends Target {
  /** Key of its step; a stock that is taken a second time has a second round. */
  readonly key: `count.${string}`;
  /** Stocks that were taken before it or in it, each once. */
  readonly walked: readonly string[];
  /** What comes after it, unless a slip changes that. */
  readonly rest: readonly Target[];
  /** True when the count is not the target and no one has decided what follows; then this is asked. */
  readonly slipped: boolean;
}

/** Targets as the text that a run keeps: 'id=12 id=3'. */
export function targetsText(targets: readonly Target[]): string {
  return targets.map(({ id, drops }) => `${id}=${drops}`).join(' ');
}

/** The targets in such a text; what cannot be read is left out. */
export function targetsIn(text: string): Target[] {
  return text.split(' ').flatMap((word) => {
    const match = /^([^=]+)=(\d+)$/.exec(word);
    return match ? [{ id: match[1]!, drops: Number(match[2]) }] : [];
  });
}

/** Name of the counter of a stock's drops. */
export function counterOf(id: string): string {
  return `drops.${id}`;
}

/** Drops of a stock counted so far. */
export function countedDrops(run: RunState, id: string): number {
  return run.drops[counterOf(id)] ?? 0;
}

/** All that drops were counted of, whether it is still in the plan or not: they fell into the vial. */
export function countedIds(run: RunState): string[] {
  const start = counterOf('');
  return Object.entries(run.drops).flatMap(([key, n]) =>
    n > 0 && key.startsWith(start) ? key.slice(start.length) : [],
  );
}

/** Key of the step that asks about a slip in a round. Its answer is 'way|targets', the targets being all that is counted from then on, or 'on' to count on. */
export function slipOf(round: Pick<Round, 'key'>): `slip.${string}` {
  return `slip.${round.key}`;
}

/**
 * The rounds of a run. They begin with the targets given; after a slip they go on with what was decided there. A slip
 * stands as soon as a drop too few or too many could be left behind, so that the step after the pad is known in time.
 */
export function roundsOf(run: RunState, first: readonly Target[]): Round[] {
  const rounds: Round[] = [];
  const turns = new Map<string, number>();
  let queue = [...first];
  for (let next = queue.shift(); next; next = queue.shift()) {
    const { id, drops } = next;
    const turn = (turns.get(id) ?? 0) + 1;
    turns.set(id, turn);
    const key: Round['key'] = turn === 1 ? `count.${id}` : `count.${id}.${turn}`;
    const decision = decided(run, key);
    const isHere = run.at === key || (run.at === '' && rounds.length === 0); // a run that begins with counting has not moved yet
    const walked = [...new Set([...rounds.map((round) => round.id), id])];
    rounds.push({
      id,
      drops,
      key,
      walked,
      rest: [...queue],
      slipped: decision !== undefined || slips(run, next, { key, isHere }),
    });
    if (decision !== undefined) queue = decision;
  }
  // A stock that is taken again later is judged by its last round, unless something was decided at an earlier one.
  return rounds.map((round) =>
    turns.get(round.id)! > 1 && !isLast(rounds, round) && decided(run, round.key) === undefined
      ? { ...round, slipped: false }
      : round,
  );
}

/** Name of the way on after a slip; '' while none is chosen. */
export function wayAfter(run: RunState, round: Pick<Round, 'key'>): string {
  return (answer(run, fields.slip(round.key)) ?? '').split('|')[0]!;
}

/** What is counted after a slip, as decided; undefined while nothing is. */
function decided(run: RunState, key: string): Target[] | undefined {
  const [, targets] = (answer(run, fields.slip(key)) ?? '').split('|');
  return targets === undefined ? undefined : targetsIn(targets);
}

function slips(
  run: RunState,
  { id, drops }: Target,
  { key, isHere }: Pick<Round, 'key'> & { isHere: boolean },
): boolean {
  const count = countedDrops(run, id);
  return count !== drops && (count > 0 || isHere || run.at === slipOf({ key }));
}

function isLast(rounds: readonly Round[], round: Round): boolean {
  return rounds.findLast(({ id }) => id === round.id) === round;
}
