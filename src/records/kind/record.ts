import * as z from 'zod/mini';

/** What every stored record carries. `made` is UTC, ISO 8601; `from` are the ids it was made from; `uses` what it took, in grams. */
export const envelope = {
  id: z.string().check(z.minLength(1)),
  kind: z.string(),
  v: z.number(),
  made: z.string(),
  from: z.array(z.string()),
  archived: z.optional(z.string()),
  /** Belongs to the demo workshop; goes when the demo goes. */
  demo: z.optional(z.literal(true)),
  /** When it was last stored; of two copies of a record the later one is the newer. */
  written: z.optional(z.string()),
  /** The last few `written` before ({@link stampsKept}): a copy whose own is among them is an ancestor, and no conflict. */
  earlier: z.optional(z.array(z.string())),
};

/** How many `earlier` a record carries. Our choice: of a copy that is more versions behind, time alone says that it is an ancestor. */
export const stampsKept = 8;

/** A record as it lies in the store, before anybody has looked into it. */
export interface Stored {
  readonly id: string;
  readonly kind: string;
  readonly v: number;
}

/** A kind of record: its shape today, and how to bring each older shape one version on. */
export interface Kind<S extends z.ZodMiniType = z.ZodMiniType> {
  readonly kind: string;
  /** Lazy, but for what the Bench needs first: building all shapes would hold the first screen up. */
  readonly schema: S;
  /** upgrades[0] turns version 1 into version 2, and so on. */
  readonly upgrades: readonly ((old: any) => object)[];
}

export type Read<T> = { ok: true; value: T } | { ok: false; raw: unknown; why: string };

/** The version that this program writes for a kind. */
export function versionOf(kind: Kind): number {
  return kind.upgrades.length + 1;
}

/**
 * The only way in for stored data, from the database and from a backup alike.
 * Nothing is dropped: what cannot be read is handed back untouched, with the reason.
 */
export function readRecord<S extends z.ZodMiniType>(kind: Kind<S>, raw: unknown): Read<z.output<S>> {
  const v = typeof raw === 'object' && raw !== null && 'v' in raw ? raw.v : undefined;
  const today = versionOf(kind);
  if (typeof v !== 'number' || !Number.isInteger(v) || v < 1) return { ok: false, raw, why: 'it carries no version' };
  if (v > today) return { ok: false, raw, why: 'it was made by a newer version of Minim' };
  try {
    const now = kind.upgrades.slice(v - 1).reduce<object>((old, upgrade) => upgrade(old), raw as object);
    const checked = kind.schema.safeParse({ ...now, v: today });
    if (checked.success) return { ok: true, value: checked.data };
    return { ok: false, raw, why: z.prettifyError(checked.error) };
  } catch (error) {
    return { ok: false, raw, why: String(error) };
  }
}
