import type { RecordOf } from '../../records/kind/kinds';
import { tagOfId } from '../../workshop/thing/labelled';
import { facts, type Description } from './description';
import { stripToDrink } from './stripToDrink';
import { formatGiven, formatMoment, formatTime } from '../../ui/format';

type Layering = RecordOf<'layering'>;

/** A layering in words: its strips, every note, the verdict, and the way on. */
export function describeLayering(r: Layering): Description {
  const { decision, liking, words } = r.verdict;
  return {
    title: r.name,
    line: [verdictText(decision) || 'no verdict', liking === null ? '' : `liked ${liking} of 9`]
      .filter(Boolean)
      .join(', '),
    facts: [
      ...facts(
        ['Verdict', verdictText(decision)],
        ['Liking', liking === null ? undefined : `${liking} of 9`],
        ['Note', words],
        ['Strips', r.strips.map(stripText).join(', ')],
        ['Dipped', dippedText(r)],
        ['Room', r.roomC === undefined ? undefined : `${formatGiven(r.roomC)} °C`],
        ...r.readings.map((note) => [noteHead(note), noteText(note)] as const),
      ),
      ...stripToDrink(r.strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial)),
    ],
  };
}

/** A decision as it is read; stored, rejected is 'drop'. */
export function verdictText(decision: string): string {
  return decision === 'drop' ? 'rejected' : decision;
}

function stripText({ vial, code, dips, takenOutAt }: Layering['strips'][number]): string {
  const tag = tagOfId(vial) ?? code;
  const more = [dips === 1 ? '' : `${dips} dips`, takenOutAt === null ? '' : `taken out ${formatTime(takenOutAt)}`];
  const told = more.filter(Boolean).join(', ');
  return told ? `${tag} (${told})` : tag;
}

/** When the strips were dipped: '…, 9:10 AM to 9:12 AM'; '' where it is not known. */
export function dippedText(r: Layering): string {
  const times = r.strips.flatMap(({ dippedAt }) => dippedAt ?? []).sort();
  if (times.length === 0) return '';
  const [first, last] = [formatTime(times[0]!), formatTime(times.at(-1)!)];
  const begun = formatMoment(times[0]!);
  return first === last ? begun : `${begun} to ${last}`;
}

function noteHead({ minute, at, vials }: Layering['readings'][number]): string {
  const moment =
    minute === null ? '' : minute === 0 ? ', fresh' : minute <= 60 ? `, ${minute} min` : `, ${minute / 60} h`;
  return `${formatTime(at)}${moment}: ${vials.map((id) => tagOfId(id) ?? 'a vial that is gone').join(' + ')}`;
}

function noteText({ words, intensity, liking, note, wet }: Layering['readings'][number]): string {
  const scores = [
    intensity === null ? '' : `strength ${intensity} of 10`,
    liking === null ? '' : `liked ${liking} of 9`,
  ];
  const state = wet && wet.length > 0 ? 'while wet' : '';
  return [words, ...scores, note, state].filter(Boolean).join(', ');
}
