import type { Stored } from '../kind/record';
import { partsOf, type Dot } from './dots';
import { isObject, sameJson } from './json';
import { bare, closed } from './state';
import { joinedOf, stateOf } from './strict';

/**
 * A record as it is stored by one write: each field that is otherwise than before is that write's, and what the record was before is
 * in it. A field of which two values were known is settled where the record comes with another one, or without its `apart`. That a
 * thing was marked smell only is never taken out of it, nor a weighing.
 */
export function stamped<R extends Stored>(record: R, before: R | undefined, write: Dot): R {
  const next = bare(record);
  if (!before) return { ...next, ...marksBy(write, next), by: write };
  const state = stateOf(before);
  const { device, n: given } = partsOf(write)!;
  const n = Math.max(given, (state.seen.get(device) ?? 0) + 1); // its clock was set back, and the record was not on hand
  const dot = `${device}:${n}`;
  const [fields, seen] = [new Map(state.fields), new Map(state.seen)];
  const { apart } = record as { apart?: unknown };
  for (const key of new Set([...stateOf(next).fields.keys(), ...fields.keys()])) {
    const [now, then] = [next, before].map((one) => one[key as keyof R]);
    const wasApart = isObject((before as { apart?: unknown }).apart) && key in (before as { apart?: object }).apart!;
    const isSettled = wasApart && !(isObject(apart) && key in apart);
    if (isSettled || !sameJson(now, then)) fields.set(key, new Map([[dot, now]]));
  }
  seen.set(device, n);
  return closed({ ...state, fields, seen }, kept(next, before, dot)) as R;
}

interface Marked {
  smellOnly?: object | undefined;
  weighed?: readonly unknown[] | undefined;
  open?: 1;
}

/** The keys that are joined and not replaced, with what is new of them signed by the write. */
function kept(next: Stored & Marked, before: Stored & Marked, dot: Dot): object {
  const own = { ...joinedOf(next, next), ...marksBy(dot, next, before) };
  const { smellOnly, weighed, since, goesOn } = joinedOf({ ...before, ...own } as Stored, before);
  return {
    ...own,
    ...(smellOnly !== undefined && { smellOnly }),
    ...(weighed !== undefined && { weighed }),
    ...(since !== undefined && { since }),
    ...(goesOn !== undefined && { goesOn }),
    ...(next.kind === 'run' && next.open === 1 && { open: 1 }),
  };
}

/** A mark and weighings that were not there before, signed. */
function marksBy(dot: Dot, next: Marked & Stored, before?: Marked): Marked {
  const { smellOnly, weighed } = next;
  const isNew = isObject(smellOnly) && !before?.smellOnly;
  const isWeighing = next.kind !== 'batch' && Array.isArray(weighed);
  const known = (one: unknown) => before?.weighed?.some((other) => sameJson(one, other)) ?? false;
  return {
    ...(isNew && { smellOnly: { ...smellOnly, by: dot } }),
    ...(isWeighing && { weighed: weighed.map((one: unknown) => (known(one) ? one : { ...(one as object), by: dot })) }),
  };
}
