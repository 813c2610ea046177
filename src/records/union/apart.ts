import type { Stored } from '../kind/record';
import { partsOf } from './dots';
import { isObject } from './json';
import { valuesOf } from './state';
import { stateOf } from './strict';

/** One of the values that devices gave a field without knowing of each other. */
export interface Side {
  readonly value: unknown;
  /** The device that gave it; null of one of the time before devices had names. */
  readonly device: string | null;
  /** When, in the order of cause and effect, ms since 1970. */
  readonly at: number;
}

/** A field that has two values or more; the first is the one that is shown. */
export interface Apart {
  readonly key: string;
  readonly sides: readonly Side[];
}

/** Kinds of which the last value counts: a person is asked about none. */
const LAST_COUNTS = new Set(['settings', 'run', 'device', 'photo', 'picture']);
/** Fields of which the last value counts. */
const LAST_OF = new Set(['v', 'made', 'from', 'done', 'demo', 'unlabelled', 'buy']);

/** The fields of a record of which a person has to choose a value. */
export function apartOf(record: Stored): Apart[] {
  const { apart } = record as { apart?: unknown };
  if (!isObject(apart) || LAST_COUNTS.has(record.kind)) return [];
  const { fields } = stateOf(record);
  return Object.keys(apart).flatMap((key) => {
    if (LAST_OF.has(key)) return [];
    const values = valuesOf(fields.get(key) ?? new Map());
    const sides = values.map(({ dots, value }) => {
      const parts = partsOf(dots[0]!);
      return { value, device: parts?.device ?? null, at: parts?.n ?? Date.parse(dots[0]!) };
    });
    return sides.length > 1 ? [{ key, sides }] : [];
  });
}

/** Whether a person has to choose between two values of something in a record. */
export function isApart(record: Stored): boolean {
  return apartOf(record).length > 0;
}

/** A record with the values that were chosen, by key; stored, it is so on every device, and those that were not chosen are gone. */
export function settled<R extends Stored>(
  record: R,
  chosen: readonly { readonly key: string; readonly value: unknown }[],
): R {
  const { apart } = record as { apart?: unknown };
  const rest = Object.entries(isObject(apart) ? apart : {}).filter(([key]) => chosen.every((one) => one.key !== key));
  const values = Object.fromEntries(chosen.map(({ key, value }) => [key, value]));
  const next = { ...record, ...values, apart: Object.fromEntries(rest) };
  return Object.fromEntries(Object.entries(next).filter(([, value]) => value !== undefined)) as R;
}
