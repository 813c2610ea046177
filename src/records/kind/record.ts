import * as z from 'zod/mini';
import type { Measured } from '../../core/number/measured';
import { amount, figure, moment, momentOrNone } from './ranges';

/** How a record was made, as its run told when it ended. */
const doneSchema = z.object({
  /** First and last moment of the run, UTC, ISO 8601. */
  from: momentOrNone,
  to: momentOrNone,
  /** The drops that were chosen, and how far the worst line of that plan was off, as a fraction of its target. */
  plan: z.optional(
    z.object({
      lines: z.array(z.object({ id: z.string(), code: z.string(), drops: amount })),
      error: z.optional(figure),
    }),
  ),
  /** What was answered, by the names of the questions: the next run of its kind begins with it. */
  asked: z.optional(z.record(z.string(), z.string())),
  /** Counts and weighings that were not as planned, in the order in which they happened, and what was done about each. */
  slips: z.optional(
    z.array(
      z.object({
        id: z.string(),
        what: z.string(),
        planned: figure,
        counted: figure,
        unit: z.enum(['drops', 'g']),
        way: z.string(),
      }),
    ),
  ),
});
export type Done = z.output<typeof doneSchema>;

/** What every stored record carries. `made` is UTC, ISO 8601; `from` are the ids it came from: what is in it and what led to it, and its run; `uses` what it took, in grams. */
export function envelope<K extends string>(kind: K) {
  return {
    id: z.string().check(z.minLength(1)),
    kind: z.literal(kind),
    v: z.number(),
    made: moment,
    from: z.array(z.string()),
    archived: z.optional(moment),
    /** Belongs to the demo workshop; goes when the demo goes. */
    demo: z.optional(z.literal(true)),
    done: z.optional(doneSchema),
    /** The write that made it ('<device>:<counter>', records/union); of a record of the time before counters its stamp. */
    by: z.optional(z.union([z.string(), z.array(z.string())])),
    /** The last counter of each device that is in it, where there is more than `by`. */
    seen: z.optional(z.record(z.string(), z.number())),
    /** The writes of those fields that are not as they were made. */
    edits: z.optional(z.record(z.string(), z.union([z.string(), z.array(z.string())]))),
    /** The values of fields that two devices wrote without knowing of each other, each with its writes; the first is shown. */
    apart: z.optional(z.record(z.string(), z.array(z.array(z.unknown())))),
    /** Of records of the time before counters: when it was last stored, and the times before that. */
    written: z.optional(z.string()),
    earlier: z.optional(z.array(z.string())),
  };
}

/** The kind of what is stored in the place of a record that was erased: its id and no more. Wherever it comes, the record goes. */
export const GONE = 'gone';

/** That a record was erased. */
export function goneOf(id: string): Stored {
  return { id, kind: GONE, v: 1 };
}

/** A record as it lies in the store, before anybody has looked into it. */
export interface Stored {
  readonly id: string;
  readonly kind: string;
  readonly v: number;
}

/** How records of a kind are stored: their shape today, and how to bring each older shape one version on. */
export interface Shape<R = unknown> {
  readonly kind: string;
  /** Lazy, but for what the Bench needs first: building all shapes would hold the first screen up. */
  readonly schema: z.ZodMiniType<R>;
  /** upgrades[0] turns version 1 into version 2, and so on. */
  readonly upgrades: readonly ((old: any) => object)[];
}

/**
 * All that Minim knows of a kind of record. What is written as a method takes the kind's own records.
 * A kind that says yes to `label` or `edit`, or brings a page of its own, has an entry in the tables of the floors above
 * (`workshop/thing/labelled.ts` and `app/describe/labelOf.ts`, `app/edit/editable.ts`, `app/describe/describe.ts`): without it nothing compiles.
 */
export interface Kind<R extends Stored> extends Shape<R> {
  readonly kind: R['kind'];
  /** What one is called in lists, and many as a heading; both begin a line. */
  readonly words: { readonly one: string; readonly many: string };
  /** Which of its records the Shelf shows, newest first as they come; null: it has no place there. Places follow the order of `kinds`. */
  readonly shelf: null | { shown(records: readonly R[]): readonly R[] }['shown'];
  /** What is in a record and what led to it, beyond its `from`; null: the kind stands outside all lineage. */
  readonly descent: null | { of(record: R): Descent }['of'];
  /** By which texts the Shelf finds a record, beyond its title, line, code and days; null: it is not searched for. */
  readonly search: null | { texts(record: R): readonly SearchText[] }['texts'];
  /** Whether it can carry a label. */
  readonly label: boolean;
  /** Whether a person may change what was typed of it. */
  readonly edit: boolean;
  /** Whether the run that a record came out of can be walked again from it. */
  readonly repeat: boolean;
  /** Its page as plain data, or 'own': drawn from an entry of `app/describe/describe.ts`. */
  readonly page: 'own' | PlainPage<R>;
}

/** Something that is in a record: its id and the grams of it; null where no one wrote them down. */
export interface Part {
  readonly id: string;
  readonly grams: Measured | null;
}

/** The two kinds of arrow that end in a record. A trace, a recall, a grade and a cost follow the first only. */
export interface Descent {
  /** What is in it; null of a kind that nothing is ever in: a formula, a layering, a measurement, an instrument. */
  readonly isIn: readonly Part[] | null;
  /** Ids of what led to it without being in it. */
  readonly ledTo: readonly string[];
}

/** For a kind that nothing is in: what led to it, if anything. */
export const onlyLedTo = (...ids: readonly string[]): Descent => ({ isIn: null, ledTo: ids });

/** For a kind that is made of other things: those of which no one wrote grams down. */
export const madeOf = (...ids: readonly string[]): Descent => ({
  isIn: ids.map((id) => ({ id, grams: null })),
  ledTo: [],
});

/** A text that a record is found by, and what it is to it: a number or name written on the thing, something else of it, a mere word. */
export type SearchText = readonly [text: string, as: 'number' | 'other' | 'word'];

/** Words, a day (YYYY-MM-DD) or an amount with its unit; undefined and '' are left out. */
export type Value =
  string | undefined | { readonly day: string | undefined } | { readonly amount: number; readonly unit: string };

/** A page that needs no code: the app draws it from this. */
export interface PlainPage<R> {
  title(record: R): string;
  /** What stands under its title in lists, joined by commas. */
  line(record: R): readonly Value[];
  facts(record: R): readonly (readonly [label: string, value: Value])[];
}

/** For a kind of which the Shelf shows every record. */
export const everyOne = <R>(records: readonly R[]): readonly R[] => records;

export type Read<T> = { ok: true; value: T } | { ok: false; raw: unknown; why: string };

/** The version that this program writes for a kind. */
export function versionOf(kind: Shape): number {
  return kind.upgrades.length + 1;
}

/**
 * The only way in for stored data, from the database and from a backup alike.
 * Nothing is dropped: what cannot be read is handed back untouched, with the reason.
 */
export function readRecord<R>(kind: Shape<R>, raw: unknown): Read<R> {
  const v = typeof raw === 'object' && raw !== null && 'v' in raw ? raw.v : undefined;
  const today = versionOf(kind);
  if (typeof v !== 'number' || !Number.isInteger(v) || v < 1) return { ok: false, raw, why: 'it carries no version' };
  if (v > today) return { ok: false, raw, why: 'it was made by a newer version of Minim' };
  try {
    const now = kind.upgrades.slice(v - 1).reduce<object>((old, upgrade) => upgrade(old), raw as object);
    const checked = kind.schema.safeParse({ ...now, v: today });
    if (checked.success) return { ok: true, value: checked.data };
    return { ok: false, raw, why: whyNot(checked.error.issues, now) };
  } catch (error) {
    return { ok: false, raw, why: String(error) };
  }
}

const TOLD = 3; // of what does not fit; our choice

/** What of a record does not fit its kind, where it is and what stands there: 'received: “10/2026” does not fit'. */
function whyNot(issues: readonly z.core.$ZodIssue[], record: object): string {
  const told = issues.slice(0, TOLD).map(({ path }) => {
    const value = path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | undefined)?.[key], record);
    const place = path.join('.') || 'the whole of it';
    return value === undefined ? `${place} is missing` : `${place}: “${textOf(value)}” does not fit`;
  });
  const more = issues.length > TOLD ? [`and ${issues.length - TOLD} more`] : [];
  return [...told, ...more].join('; ');
}

function textOf(value: unknown): string {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
