import type { Bounds } from '../../core/blend/region';
import { find, list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { attempt, type Refused } from '../../workshop/attempt';
import { tagOf } from '../../workshop/thing/labelled';
import { answer, ask } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { asBefore, asIfLeft, lastTime } from '../engine/lastTime';
import { oncePerRun } from '../engine/oncePerRun';
import { boundsOf, firstDrops, type Drops, type Limits } from './blends';
import { fields, MOST_VIALS, type Laid } from './fields';
import { laidVial, vialOptions } from './onHand';

/** What the next search begins with. */
export const remembers = ['asked', 'idea', 'on', 'total', 'ends', 'blind', 'session'];

/** Drops of a blend that give the first ones without rounding where drops weigh alike, by the number of vials. */
const TOTAL: Readonly<Record<string, Readonly<Record<number, string>>>> = {
  strip: { 2: '8', 3: '6', 4: '8' },
  vial: { 2: '12', 3: '12', 4: '16' },
};

/** The vials chosen, in order, as far as they are on the Shelf. */
export function vialsOf(run: RunState): Vial[] {
  return Array.from({ length: MOST_VIALS }, (_, i) => find('vial', answer(run, fields.vial(i)) ?? '')).flatMap(
    (vial) => vial ?? [],
  );
}

/** The questions as they are asked now: the vials that are there and room for one more; the rest as last time, else as is usual. */
export const asked = oncePerRun((run: RunState) => {
  const last = [lastTime(list('proportions'))];
  const vials = vialsOf(run);
  const on = asBefore(run, fields.on, last, 'strip');
  const same = last.filter((answers) => answers[on.name] === answer(run, on) && vials.length === 3);
  const rows = Math.min(MOST_VIALS, Math.max(2, vials.length + 1));
  return {
    vials: Array.from({ length: rows }, (_, i) => vialField(run, i)),
    what: asBefore(run, fields.asked, last, 'liking'),
    idea: asBefore(run, fields.idea, last),
    on,
    total: asBefore(run, fields.total, same, TOTAL[answer(run, on) ?? 'strip']![Math.max(2, vials.length)]!),
    ends: asBefore(run, fields.ends, last, 'in'),
    blind: asBefore(run, fields.blind, last, 'no'),
    session: asBefore(run, fields.session, last, '6'),
    most: vials.map((vial) => fields.most(vial.id, tagOf(vial))),
    least: vials.map((vial) => fields.least(vial.id, tagOf(vial))),
  };
});

function vialField(run: RunState, i: number): Field<string> {
  const own = answer(run, fields.vial(i)) ?? '';
  const others = vialsOf(run).flatMap(({ id }) => (id === own ? [] : id));
  const options = vialOptions(others);
  const field = fields.vial(i, i >= 2);
  const none = { value: '', label: 'None', hint: 'without another vial', always: true };
  return ask(field, { options: i >= 2 ? [none, ...options] : options });
}

/** The run as it would be with its card left as it is. */
export const settled = oncePerRun((run: RunState): RunState => {
  const { vials, most, least, ...rest } = asked(run);
  return asIfLeft(run, [...vials, ...most, ...least, ...Object.values(rest)]);
});

/** What the blends are laid down from, as the card stands; null while fewer than two vials are chosen. */
export const layout = oncePerRun((run: RunState): Omit<Laid, 'blends'> | null => {
  const now = settled(run);
  const vials = vialsOf(now);
  const total = answer(now, fields.total);
  if (vials.length < 2 || total === null) return null;
  return { vials: vials.map(laidVial), bounds: [...boundsAsked(now, vials)], total };
});

/** What was said of a vial's share, %. */
export function limitsOf(run: RunState, vial: string): Limits {
  return { least: answer(run, fields.least(vial)), most: answer(run, fields.most(vial)) };
}

function boundsAsked(now: RunState, vials: readonly Vial[]): Bounds {
  const limits = vials.map(({ id }) => limitsOf(now, id));
  return boundsOf(limits, answer(now, fields.ends) === 'in');
}

/** The first blends as the card stands, or why there are none; null while fewer than two vials are chosen. */
export const preview = oncePerRun((run: RunState): readonly Drops[] | Refused | null => {
  const laid = layout(run);
  return laid && attempt(() => firstDrops(laid));
});
