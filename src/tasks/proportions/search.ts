import { standing, type Standing } from '../../core/blend/nextBlend';
import type { Bounds } from '../../core/blend/region';
import type { Judged } from '../../core/blend/scheffe';
import type { Proportions } from '../../records/kind/proportions';
import { find } from '../../records/shelf';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { candidatesOf, sharesOf, type Drops } from './blends';
import { oncePerRun } from '../engine/oncePerRun';
import { fields, type Laid, type LaidVial } from './fields';

/** A blend that was judged. */
export interface JudgedBlend extends Judged {
  readonly drops: Drops;
  readonly at: string;
  readonly code?: number | undefined;
}

/** A search for proportions as it stands: what is blended within which bounds, and every blend judged, in that order. */
export interface Search {
  readonly vials: readonly Pick<LaidVial, 'id' | 'tag' | 'mg'>[];
  readonly bounds: Bounds;
  readonly total: number;
  readonly judged: readonly JudgedBlend[];
}

/** The blends laid down when the card was left; null before. */
export function laidIn(run: RunState): Laid | null {
  return answer(run, fields.laid);
}

/** The drops that a blend is to get, by its place from 0; null while it is not proposed yet. */
export function askedDrops(run: RunState, n: number): Drops | null {
  return laidIn(run)?.blends[n]?.drops ?? answer(run, fields.proposed(n));
}

/** The drops that a blend got: as typed, else as counted on the pad, else as asked for. */
export function givenDrops(run: RunState, n: number): Drops | null {
  const asked = askedDrops(run, n);
  return asked && asked.map((count, k) => answer(run, fields.had(n, k, '')) ?? run.drops[`${n}.${k}`] ?? count);
}

/** How many blends have a liking, from the first one on. */
export function judgedCount(run: RunState): number {
  let n = 0;
  while (answer(run, fields.liking(n)) !== null) n++;
  return n;
}

/** The earlier search that a run continues; undefined where it begins by itself. */
export function earlierOf(run: RunState): Proportions | undefined {
  return find('proportions', answer(run, fields.earlier));
}

/** The search of a run: what an earlier one had judged of the same vials comes first. Null before the card was left. */
export const searchOf = oncePerRun((run: RunState): Search | null => {
  const laid = laidIn(run);
  if (!laid) return null;
  const judged = Array.from({ length: judgedCount(run) }, (_, n): JudgedBlend[] => {
    const drops = givenDrops(run, n);
    if (!drops || drops.every((count) => count === 0)) return [];
    const at = run.done[`judge.${n}`] ?? '';
    return [
      {
        drops,
        shares: sharesOf(drops, laid.vials),
        liking: answer(run, fields.liking(n))!,
        at,
        code: laid.blends[n]?.code,
      },
    ];
  });
  const earlier = earlierOf(run);
  return { ...laid, judged: [...(earlier ? judgedIn(earlier) : []), ...judged.flat()] };
});

const kept = new WeakMap<Proportions, Search>();

/** The search that a record keeps: the same one each time, so that what is found in it is worked out once. */
export function searchKept(record: Proportions): Search {
  const known = kept.get(record);
  if (known) return known;
  const vials = record.vials.map(({ id, code, mgPerDrop }) => ({ id, tag: code, mg: mgPerDrop }));
  const search = { vials, bounds: record.bounds, total: record.total, judged: judgedIn(record) };
  kept.set(record, search);
  return search;
}

function judgedIn({ blends }: Proportions): JudgedBlend[] {
  return blends.map(({ drops, shares, liking, at, code }) => ({ drops, shares, liking, at, code }));
}

/** Where a search has come to: the best blends of whole drops, and the one to judge next. */
export interface Found extends Standing {
  readonly bestDrops: Drops;
  readonly runnerUpDrops: Drops | null;
  readonly nextDrops: Drops;
}

const found = new WeakMap<Search, Found>();

/** Where a search has come to, worked out once. @throws Refusal without likings */
export function foundIn(search: Search): Found {
  const known = found.get(search);
  if (known) return known;
  const vials = search.vials.map((vial) => ({ ...vial, u: 0, dropper: '' }));
  const candidates = candidatesOf({ ...search, vials, bounds: [...search.bounds] });
  const shares = candidates.map((drops) => sharesOf(drops, vials));
  const now = standing(search.judged, shares);
  const dropsOf = (of: readonly number[]) => candidates[shares.findIndex((one) => one === of)]!;
  const result = {
    ...now,
    bestDrops: dropsOf(now.best.shares),
    runnerUpDrops: now.runnerUp && dropsOf(now.runnerUp.shares),
    nextDrops: dropsOf(now.next),
  };
  found.set(search, result);
  return result;
}
