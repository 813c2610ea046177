import { computed } from '@preact/signals';
import type { Tasting } from '../../records/kind/drink';
import type { Vial } from '../../records/kind/vial';
import { find, list } from '../../records/shelf';
import { refusalOf } from '../../workshop/drinkable/grade';
import { whyNotByItself } from '../../workshop/takenByItself';
import { mixOf } from '../../workshop/thing/mixOf';
import { typedText } from '../../core/number/typed';
import { lastTime, type Answers } from '../engine/lastTime';
import { drinkFields, fields } from './fields';

/** The newest drink of each material or mix, by what is in its first vial. Worked out when the Shelf changes, not with every drop. */
const newestOf = computed(() => {
  const newest = new Map<string, Tasting>();
  for (const tasting of list('tasting')) {
    const vial = find('vial', tasting.doses[0]?.vial);
    if (vial && !newest.has(mixOf(vial))) newest.set(mixOf(vial), tasting);
  }
  return newest;
});

/** Answers of the last drink with what is in this vial, then of the last of any; a level is never taken from another material. */
export function timesBefore(vial: Vial | undefined): {
  readonly same: readonly Answers[];
  readonly all: readonly Answers[];
} {
  const same = vial && newestOf.value.get(mixOf(vial));
  const [last] = list('tasting');
  const told = (one: Tasting | undefined) => (one ? [lastTime([one]), factsOf(one)] : []);
  return { same: told(same), all: [...told(same), ...told(last)] };
}

/** What a drink of the first version tells of how it was asked. */
function factsOf({ uses }: Tasting): Answers {
  const dropper = uses[0]?.dropper?.id;
  return dropper ? { [fields.dropper(1).name]: dropper } : {};
}

/** The amount of a drink last time: as it was asked for, else as it was kept. */
export function amountBefore(base: string | undefined): Answers[] {
  const kept = find('base', base);
  const last = list('tasting').find(({ from }) => base !== undefined && from.includes(base));
  const facts = (volumeMl: number) => ({ [drinkFields.volume.name]: typedText(Number(volumeMl.toPrecision(6))) });
  return [...(last ? [lastTime([last]), facts(last.base.volumeMl)] : []), ...(kept ? [facts(kept.volumeMl)] : [])];
}

/** The drink that was dosed last, else the newest one; undefined without any. */
export function lastBase(): string | undefined {
  const [last] = list('tasting');
  return list('base').find(({ id }) => last?.from.includes(id))?.id ?? list('base')[0]?.id;
}

/** The vial that is most likely dosed: that of last time, else the newest, of those that are fit and taken by themselves for the g that `needed` says. */
export function likelyVial(needed: (vial: Vial) => number | null): string | undefined {
  const last = find('vial', list('tasting')[0]?.doses[0]?.vial);
  const fits = (vial: Vial) => whyNotByItself(vial, { refusal: refusalOf(vial), grams: needed(vial) }) === null;
  return last && fits(last) ? last.id : list('vial').find(fits)?.id;
}

/** g of a vial that the level of last time takes in that many mL of drink, as if of water; null where there was none. */
export function neededOf(vial: Vial, ml: number): number | null {
  const { [fields.aim(1).name]: aim = '', [fields.aimIn(1).name]: unit = 'mg/kg' } = timesBefore(vial).same[0] ?? {};
  const strength = vial.contents.reduce((sum, part) => sum + part.strength.value, 0);
  const read = fields.aim(1, 'mg/kg').read(unit === 'mg/kg' ? aim : '', 'decimal');
  const mgPerKg = read.ok ? read.value : null;
  return mgPerKg !== null && strength > 0 ? (mgPerKg * 1e-6 * ml) / strength : null;
}
