import { standardUncertainty } from '../../core/number/measured';
import { list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { leftOf } from '../../records/stock';
import type { Option } from '../../ui/controls/field';
import { formatPlain } from '../../ui/format';
import { dropOf, dropperFor } from '../../workshop/dropMass';
import { liquidOfVial } from '../../workshop/onHand';
import { whyNotByItself } from '../../workshop/takenByItself';
import { strengthText } from '../../workshop/thing/strengthText';
import { tagOf } from '../../workshop/thing/labelled';
import { mixOf } from '../../workshop/thing/mixOf';
import type { LaidVial } from './fields';

/** A vial as it is blended: its tag, and a drop of it from the dropper that is known best. */
export function laidVial(vial: Vial): LaidVial {
  const liquid = liquidOfVial(vial);
  const dropper = dropperFor(liquid);
  const { mgPerDrop } = dropOf(dropper, liquid);
  return { id: vial.id, tag: tagOf(vial), mg: mgPerDrop.value, u: standardUncertainty(mgPerDrop), dropper };
}

/** Whole drops left in a vial as reckoned; null where the book does not know. */
export function dropsLeft(vial: Vial): number | null {
  const left = leftOf(vial);
  return left === null ? null : Math.floor((left.value * 1000) / laidVial(vial).mg);
}

/** How often a vial was part of a layering that was liked or not, and the mean of these likings, 1 to 9. */
interface Liked {
  readonly times: number;
  readonly mean: number;
}

/** The likings of layerings by what was in them, by materials: a vial made again of the same ones has them too. */
function likings(): Map<string, Liked> {
  const sums = new Map<string, { times: number; sum: number }>();
  const smells = new Map(list('vial').map((vial) => [vial.id, mixOf(vial)]));
  for (const { strips, verdict } of list('layering')) {
    if (verdict.liking === null) continue;
    const vials = verdict.vials ?? strips.filter(({ takenOutAt }) => takenOutAt === null).map(({ vial }) => vial);
    for (const smell of new Set(vials.map((id) => smells.get(id) ?? id))) {
      const { times, sum } = sums.get(smell) ?? { times: 0, sum: 0 };
      sums.set(smell, { times: times + 1, sum: sum + verdict.liking });
    }
  }
  return new Map([...sums].map(([smell, { times, sum }]) => [smell, { times, mean: sum / times }]));
}

/** Vials to blend: those whose layerings were liked best first, with how they were liked; none that `taken` names. */
export function vialOptions(taken: readonly string[]): Option[] {
  const liked = likings();
  const all = list('vial')
    .filter(({ id }) => !taken.includes(id))
    .map((vial) => ({ vial, liked: liked.get(mixOf(vial)), against: whyNotByItself(vial) }));
  const rank = ({ liked: by, against }: (typeof all)[number]) => (against ? -1 : (by?.mean ?? 0));
  return all
    .sort((one, other) => rank(other) - rank(one))
    .map(({ vial, liked: by, against }) => ({
      value: vial.id,
      label: `${tagOf(vial)} · ${vial.name}`,
      short: tagOf(vial),
      hint: [strengthText(vial), by && likedWords(by)].filter(Boolean).join(', '),
      ...(against ? { against } : {}),
    }));
}

function likedWords({ times, mean }: Liked): string {
  const layerings = times === 1 ? '1 layering' : `${times} layerings`;
  return `in ${layerings}, liked ${formatPlain(mean, 2)} of 9`;
}
