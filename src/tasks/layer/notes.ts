import type { Layering } from '../../records/kind/layering';
import { find, list } from '../../records/shelf';
import { formatGiven } from '../../ui/format';
import { answer } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Happening } from '../engine/log';
import { dryingAt, readyAt } from './clock';
import { fields } from './fields';
import { inFan, shortCodes } from './strips';

/** A note as the layering keeps it. */
export type Note = Layering['readings'][number];

/** When strips are usually smelled, minutes after the last dip (common practice, no source). */
export const MOMENTS = [0, 5, 15, 60, 240, 1440] as const;

/** 'fresh', '15 min', '4 h'. */
export function momentText(minute: number): string {
  if (minute === 0) return 'fresh';
  return minute <= 60 ? `${minute} min` : `${minute / 60} h`;
}

/** The notes that were begun, by number. */
export function begun(run: RunState): number[] {
  const numbers: number[] = [];
  for (let n = 1; run.marks[`reading.${n}`] !== undefined; n++) numbers.push(n);
  return numbers;
}

/** One note as it would be kept; `empty` while nothing is written in it. */
export function noteOf(run: RunState, n: number): Note & { empty: boolean } {
  const wet = answer(run, fields.wet(n)) ?? [];
  const vials = answer(run, fields.vials(n)) ?? [];
  const stillWet = vials.filter((vial) => wet.includes(vial));
  const note: Note = {
    at: run.marks[`reading.${n}`] ?? '',
    minute: answer(run, fields.minute(n)),
    vials: [...vials],
    words: answer(run, fields.words(n)) ?? '',
    intensity: answer(run, fields.strength(n)),
    liking: answer(run, fields.liking(n)),
    note: answer(run, fields.note(n)) ?? '',
    ...(stillWet.length > 0 ? { wet: stillWet } : {}),
  };
  return { ...note, empty: !note.words && !note.note && note.intensity === null && note.liking === null };
}

/** The number of the note that is being written, or null. */
export function openNote(run: RunState): number | null {
  const last = begun(run).at(-1);
  return last !== undefined && answer(run, fields.state(last)) === 'open' ? last : null;
}

/** The notes with something in them, in the order in which they were begun, with their numbers. */
export function notesWritten(run: RunState): { n: number; note: Note }[] {
  return begun(run).flatMap((n) => {
    const { empty, ...note } = noteOf(run, n);
    return empty ? [] : [{ n, note }];
  });
}

/** The same, as the layering keeps them. */
export function notesOf(run: RunState): Note[] {
  return notesWritten(run).map(({ note }) => note);
}

/** Whether what a note is about was smelled: with a strip still wet it was the solvent, too. */
export function isDry({ wet }: Pick<Note, 'wet'>): boolean {
  return !wet || wet.length === 0;
}

/** The moments that still wait for their note, first to last; the first is when all strips are dry. Times in ms since 1970. */
export function dueNotes(run: RunState): { minute: number; at: number }[] {
  const fan = inFan(run);
  if (fan.length === 0) return [];
  const start = Math.max(...fan.map(({ dippedAt }) => dippedAt));
  const ready = Math.max(start, ...fan.map(readyAt));
  const since = notesOf(run).filter((note) => Date.parse(note.at) >= start && isDry(note));
  const last = Math.max(-1, ...since.map(({ minute }) => minute ?? -1));
  const times = MOMENTS.map((minute) => ({ minute, at: minute === 0 ? ready : start + minute * 60_000 }));
  return times.filter(({ minute, at }) => minute > last && (minute === 0 || at > ready));
}

/** What is due at `now`: the latest moment that has come (earlier ones are missed), and the next one to come. */
export function dueAt(run: RunState, now: number): { due: number | null; next: { minute: number; at: number } | null } {
  const waiting = dueNotes(run);
  const come = waiting.filter(({ at }) => at <= now).at(-1);
  return { due: come?.minute ?? null, next: waiting.find(({ at }) => at > now) ?? null };
}

/**
 * What has to happen to begin a note at `now` (ms since 1970) on the whole fan or on some of its vials, by id; an empty one that was
 * begun before is taken up again. Which strips are wet is recorded with it. Notes on some of the fan, and those on wet strips, are
 * of no moment: the moments of the day belong to the whole fan, dry.
 */
export function beginNote(
  run: RunState,
  now: number,
  some?: readonly string[],
): { n: number; happenings: Happening[] } {
  const numbers = begun(run);
  const last = numbers.at(-1);
  const n = last !== undefined && noteOf(run, last).empty ? last : numbers.length + 1;
  const fan = inFan(run);
  const all = fan.map(({ vial }) => vial.id);
  const vials = some ?? all;
  const wet = fan.filter((strip) => vials.includes(strip.vial.id) && !dryingAt(strip, now).ready);
  const due = some || wet.length > 0 ? null : dueAt(run, now).due;
  return {
    n,
    happenings: [
      { type: 'mark', key: `reading.${n}` },
      typed(fields.minute(n), due === null ? '' : String(due)),
      typed(fields.all(n), all.join(' ')),
      typed(fields.vials(n), vials.join(' ')),
      typed(fields.wet(n), wet.map(({ vial }) => vial.id).join(' ')),
      typed(fields.state(n), 'open'),
    ],
  };
}

/** What has to happen so that the open note, if there is one, is done. */
export function closing(run: RunState): Happening[] {
  const open = openNote(run);
  return open === null ? [] : [typed(fields.state(open), 'saved')];
}

/** Something typed into a field. */
export function typed({ name }: Field, text: string): Happening {
  return { type: 'typed', key: name, text };
}

/** 'CARD + PGF, at 15 min' of a note. */
export function headOf({ minute, vials, wet }: Pick<Note, 'minute' | 'vials' | 'wet'>): string {
  const codes = shortCodes(vials.flatMap((id) => find('vial', id) ?? []).map((vial) => ({ vial })));
  const moment = minute === null ? '' : minute === 0 ? ', fresh' : `, at ${momentText(minute)}`;
  return `${codes}${moment}${isDry({ wet }) ? '' : ', wet'}`;
}

/** What a note says, in one line. */
export function noteWords({ words, intensity, liking, note }: Note): string {
  const strength = intensity === null ? '' : `strength ${formatGiven(intensity)}`;
  const liked = liking === null ? '' : `liked ${formatGiven(liking)}`;
  return [words, strength, liked, note].filter(Boolean).join(', ');
}

/** When strips were smelled, in this run and in earlier layerings, ms since 1970. */
export function smelledAt(run: RunState): number[] {
  const before = list('layering').flatMap(({ readings }) => readings);
  return [...notesOf(run), ...before].map(({ at }) => Date.parse(at));
}
