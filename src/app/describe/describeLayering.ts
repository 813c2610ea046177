import type { RecordOf } from '../../records/kind/kinds';
import { tagOfId } from '../../workshop/labelled';
import { facts, type Description } from './description';
import { formatGiven, formatMoment } from '../../ui/format';

type Layering = RecordOf<'layering'>;

/** A layering in words: its strips, every reading, the verdict, and the way on. */
export function describeLayering(r: Layering): Description {
  const { decision, liking, words } = r.verdict;
  const again = Object.fromEntries((r.verdict.vials ?? stayed(r)).map((id) => [`pick.${id}`, 'yes']));
  return {
    title: r.name,
    line: [decision || 'no verdict', liking === null ? '' : `liked ${liking} of 9`].filter(Boolean).join(', '),
    facts: facts(
      ['Verdict', decision],
      ['Liking', liking === null ? undefined : `${liking} of 9`],
      ['In words', words],
      ['Strips', r.strips.map(stripText).join(', ')],
      ['Dipped', dippedText(r)],
      ['Room', r.roomC === undefined ? undefined : `${formatGiven(r.roomC)} °C`],
      ...r.readings.map((reading) => [readingHead(reading), readingText(reading)] as const),
    ),
    next: [{ words: 'Layer these again', start: { task: 'layer', typed: again } }],
  };
}

function stayed(r: Layering): string[] {
  return r.strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial);
}

function stripText({ vial, code, dips, takenOutAt }: Layering['strips'][number]): string {
  const tag = tagOfId(vial) ?? code;
  const more = [dips === 1 ? '' : `${dips} dips`, takenOutAt === null ? '' : `taken out ${clock(takenOutAt)}`];
  const told = more.filter(Boolean).join(', ');
  return told ? `${tag} (${told})` : tag;
}

function dippedText(r: Layering): string {
  const times = r.strips.flatMap(({ dippedAt }) => dippedAt ?? []).sort();
  if (times.length === 0) return '';
  const [first, last] = [clock(times[0]!), clock(times.at(-1)!)];
  const begun = formatMoment(times[0]!);
  return first === last ? begun : `${begun} to ${last}`;
}

function readingHead({ minute, at, vials }: Layering['readings'][number]): string {
  const moment =
    minute === null ? '' : minute === 0 ? ', fresh' : minute <= 60 ? `, ${minute} min` : `, ${minute / 60} h`;
  return `${clock(at)}${moment}: ${vials.map((id) => tagOfId(id) ?? 'a vial that is gone').join(' + ')}`;
}

function readingText({ words, intensity, liking, note }: Layering['readings'][number]): string {
  const scores = [
    intensity === null ? '' : `strength ${intensity} of 10`,
    liking === null ? '' : `liked ${liking} of 9`,
  ];
  return [words, ...scores, note].filter(Boolean).join(', ');
}

function clock(at: string): string {
  return new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
}
