import type { Layering } from '../../records/kind/layering';
import { find, list } from '../../records/shelf';
import type { Field } from '../engine/fields';
import { words } from '../engine/fields';
import type { RunState } from '../engine/fold';
import type { Happening } from '../engine/log';
import { inFan, shortCodes } from './strips';

export type ReadingKept = Layering['readings'][number];

/** When strips are usually read, minutes after the last dip (common practice, no source). */
export const MOMENTS = [0, 5, 15, 60, 240, 1440] as const;

/** 'fresh', '15 min', '4 h'. */
export function momentText(minute: number): string {
  if (minute === 0) return 'fresh';
  return minute <= 60 ? `${minute} min` : `${minute / 60} h`;
}

/** The numbers of a reading's fields. */
export function wordsField(n: number): Field<string> {
  return words({
    name: `reading.${n}.words`,
    title: 'In your words',
    optional: true,
    help: 'Words with commas between them; speak them with the keyboard’s microphone if you like.',
    max: 500,
  });
}

export function noteField(n: number): Field<string> {
  return words({ name: `reading.${n}.note`, title: 'Note', optional: true, max: 1000 });
}

/** The readings that were begun, by number. */
export function begun(run: RunState): number[] {
  const numbers: number[] = [];
  for (let n = 1; run.marks[`reading.${n}`] !== undefined; n++) numbers.push(n);
  return numbers;
}

/** One reading as it would be kept; `empty` while nothing is written in it. */
export function readingOf(run: RunState, n: number): ReadingKept & { empty: boolean } {
  const typed = (part: string): string => (run.typed[`reading.${n}.${part}`] ?? '').trim();
  const score = (part: string): number | null => (typed(part) === '' ? null : Number(typed(part)));
  const minute = typed('minute');
  const reading = {
    at: run.marks[`reading.${n}`] ?? '',
    minute: minute === '' ? null : Number(minute),
    vials: typed('vials').split(' ').filter(Boolean),
    words: typed('words'),
    intensity: score('intensity'),
    liking: score('liking'),
    note: typed('note'),
  };
  const empty = !reading.words && !reading.note && reading.intensity === null && reading.liking === null;
  return { ...reading, empty };
}

/** The readings with something in them, in the order in which they were begun. */
export function readingsOf(run: RunState): ReadingKept[] {
  return begun(run).flatMap((n) => {
    const { empty, ...reading } = readingOf(run, n);
    return empty ? [] : [reading];
  });
}

/** The readings that still wait for their moment, first to last. Times in ms since 1970. */
export function dueReadings(run: RunState): { minute: number; at: number }[] {
  const fan = inFan(run);
  if (fan.length === 0) return [];
  const start = Math.max(...fan.map(({ dippedAt }) => dippedAt));
  const since = readingsOf(run).filter(({ at }) => Date.parse(at) >= start);
  const last = Math.max(-1, ...since.map(({ minute }) => minute ?? -1));
  return MOMENTS.filter((minute) => minute > last).map((minute) => ({ minute, at: start + minute * 60_000 }));
}

/** What is due at `now`: the latest moment that has come (earlier ones are missed), and the next one to come. */
export function dueAt(run: RunState, now: number): { due: number | null; next: { minute: number; at: number } | null } {
  const waiting = dueReadings(run);
  const come = waiting.filter(({ at }) => at <= now).at(-1);
  return { due: come?.minute ?? null, next: waiting.find(({ at }) => at > now) ?? null };
}

/**
 * What has to happen to begin a reading at `now`, of the whole fan or of some of its vials; an empty one that was begun
 * before is taken up again. Some of the fan are read "now": the moments of the day belong to the whole.
 */
export function beginReading(
  run: RunState,
  now: number,
  some?: readonly string[],
): { n: number; happenings: Happening[] } {
  const numbers = begun(run);
  const last = numbers.at(-1);
  const n = last !== undefined && readingOf(run, last).empty ? last : numbers.length + 1;
  const due = some ? null : dueAt(run, now).due;
  const vials = inFan(run).map(({ vial }) => vial.id);
  return {
    n,
    happenings: [
      { type: 'mark', key: `reading.${n}` },
      { type: 'typed', key: `reading.${n}.minute`, text: due === null ? '' : String(due) },
      { type: 'typed', key: `reading.${n}.all`, text: vials.join(' ') },
      { type: 'typed', key: `reading.${n}.vials`, text: (some ?? vials).join(' ') },
    ],
  };
}

/** 'CARD + PGF, at 15 min' of a reading. */
export function headOf(run: RunState, n: number): string {
  const { minute, vials } = readingOf(run, n);
  const codes = shortCodes(vials.flatMap((id) => find('vial', id) ?? []).map((vial) => ({ vial })));
  return minute === null ? codes : `${codes}, ${minute === 0 ? 'fresh' : `at ${momentText(minute)}`}`;
}

/** When strips were smelled, in this run and in earlier layerings, ms since 1970. */
export function smelledAt(run: RunState): number[] {
  const before = list('layering').flatMap(({ readings }) => readings);
  return [...readingsOf(run), ...before].map(({ at }) => Date.parse(at));
}
