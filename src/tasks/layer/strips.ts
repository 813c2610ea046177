import type { DryOff } from '../../core/liquid/dryOff';
import { find, shelf } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { tagOf } from '../../workshop/thing/labelled';
import { answer, ask, namesBegun } from '../engine/answers';
import type { Field } from '../engine/fields';
import type { RunState } from '../engine/fold';
import { clockOf, ROOM } from './clock';
import { fields } from './fields';

/** The most strips of a session, and the usual advice for a fan (both common practice, no source). */
export const MOST_STRIPS = 12;
export const ADVISED_STRIPS = 5;

/** One strip of a run. Times in ms since 1970. */
export interface Strip {
  readonly vial: Vial;
  readonly dips: number;
  readonly dippedAt: number | null;
  readonly driedAt: number | null;
  readonly stillWet: boolean;
  readonly takenOutAt: number | null;
  readonly clock: DryOff;
}

/** A strip that has been dipped. */
export type Dipped = Strip & { readonly dippedAt: number };

/** The room of the run: what was said, else that of the settings. */
export function roomField(): Field<number | null> {
  const { roomC } = shelf.settings.value;
  return roomC === undefined ? fields.room : ask(fields.room, { preset: String(Math.max(ROOM.min, roomC)) });
}

/** All strips of a run, in the order picked: those taken out again too, without those unticked before their dip. */
export function stripsOf(run: RunState): Strip[] {
  const room = answer(run, roomField());
  const at = (key: string): number | null => (run.marks[key] ? Date.parse(run.marks[key]) : null);
  return namesBegun(run, 'pick.').flatMap((name) => {
    const id = name.slice('pick.'.length);
    const vial = answer(run, fields.pick(id)) === 'yes' ? find('vial', id) : undefined;
    if (!vial) return [];
    return {
      vial,
      dips: dipsOf(run, vial.id),
      dippedAt: at(`dipped.${vial.id}`),
      driedAt: at(`dry.${vial.id}`),
      stillWet: at(`wet.${vial.id}`) !== null,
      takenOutAt: at(`out.${vial.id}`),
      clock: clockOf(vial, room),
    };
  });
}

/** The strips in the hand: picked and not taken out, dipped or not. */
export function inHand(run: RunState): Strip[] {
  return stripsOf(run).filter((strip) => strip.takenOutAt === null);
}

/** The strips of the fan: in the hand and dipped. */
export function inFan(run: RunState): Dipped[] {
  return inHand(run).filter((strip): strip is Dipped => strip.dippedAt !== null);
}

/** The strips still to be dipped, in order. */
export function toDip(run: RunState): Strip[] {
  return inHand(run).filter(({ dippedAt }) => dippedAt === null);
}

/** How often a strip is dipped, 1 to 5. */
export function dipsOf(run: RunState, vial: string): number {
  return answer(run, fields.dips(vial)) ?? 1;
}

/** 'CARD 1 % + HEX 0.1 % + PGF 1 %'. */
export function codesOf(strips: readonly Pick<Strip, 'vial'>[]): string {
  return strips.map(({ vial }) => tagOf(vial)).join(' + ');
}

/** The same, cut short where there are many: 'CARD 1 % + HEX 0.1 % + PGF 1 % + 9 more'. */
export function shortCodes(strips: readonly Pick<Strip, 'vial'>[]): string {
  const many = strips.length > 4;
  return many ? `${codesOf(strips.slice(0, 3))} + ${strips.length - 3} more` : codesOf(strips);
}
