import { firstBlends } from '../../core/blend/design';
import { keeps, lattice, type Bounds, type Shares } from '../../core/blend/region';
import { tastingOrder } from '../../core/blend/tastingOrder';
import { randomFrom } from '../../core/number/randomFrom';
import { bestPlan } from '../../core/plan/bestPlan';
import { blindCodes } from '../../core/sensory/blindCodes';
import { Refusal } from '../../core/text/refusal';
import type { Laid, LaidVial } from './fields';
import { formatPlain } from '../../ui/format';
import { dropsText } from '../../workshop/dropWords';

/** Drops of each vial of a blend, in the order of the vials. */
export type Drops = readonly number[];

/** The largest number of steps of a share that blends are proposed in, by the number of vials: our choice, for a phone. */
const STEPS: Readonly<Record<number, number>> = { 2: 24, 3: 16, 4: 8 };
/** Fewer blends than this say nothing of proportions; our choice. */
export const LEAST = 3;
const OUT = 0.8; // the most of one vial where none is judged alone; our choice

/** What a vial may be of a blend, %; null where nothing was said. */
export interface Limits {
  readonly least: number | null;
  readonly most: number | null;
}

/** What is left to each vial, 0 to 1: its limits, where it has some, and less than all where none is judged alone. */
export function boundsOf(limits: readonly Limits[], endsIn: boolean): Bounds {
  return limits.map(({ least, most }) => ({
    least: (least ?? 0) / 100,
    most: Math.min((most ?? 100) / 100, endsIn ? 1 : OUT),
  }));
}

/** Limits in words: 'at least 20 %, at most 50 %'; '' where there are none. */
export function limitsWords({ least, most }: Limits): string {
  const words = [least === null ? '' : `at least ${formatPlain(least, 3)} %`, most === null ? '' : `at most ${formatPlain(most, 3)} %`]; // prettier-ignore
  return words.filter(Boolean).join(', ');
}

/** What share of a blend each vial is, by mass. */
export function sharesOf(drops: Drops, vials: readonly Pick<LaidVial, 'mg'>[]): Shares {
  const mg = drops.map((count, i) => count * vials[i]!.mg);
  const all = mg.reduce((sum, one) => sum + one, 0);
  return mg.map((one) => one / all);
}

/**
 * The whole drops that come nearest to some shares, with about as much liquid as `total` drops of the mean vial: so that no
 * blend is stronger for being more. By the planner of counted drops.
 */
function wholeDrops(shares: Shares, vials: readonly LaidVial[], total: number): Drops | null {
  const used = vials.flatMap((vial, i) => (shares[i]! > 1e-9 ? [{ vial, share: shares[i]! }] : []));
  const mean = vials.reduce((sum, { mg }) => sum + mg, 0) / vials.length;
  const found = bestPlan({
    components: used.map(({ vial: { id, tag, mg }, share }) => ({
      id,
      name: tag,
      parts: share,
      stocks: [{ id, strength: 1, mgPerDrop: mg, rsd: 0, availableDrops: null, solvent: 'none' }],
    })),
    limits: {
      maxDrops: 3 * total, // light drops need more of them
      minDropsPerComponent: 1,
      maxStocksPerComponent: 1,
      maxTotalMassMg: null,
      maxSolventMassMg: {},
    },
    scale: { kind: 'fixed', mgPerPart: total * mean },
    objective: { kind: 'minimax', z: 0 },
  });
  return found.ok ? vials.map(({ id }) => found.plan[id] ?? 0) : null;
}

/** The blends that can be dropped of all these shares within the bounds, each once. */
function droppable(all: readonly Shares[], { vials, bounds, total }: Omit<Laid, 'blends'>): Drops[] {
  const found = new Map<string, Drops>();
  for (const shares of all) {
    const drops = wholeDrops(shares, vials, total);
    if (drops && keeps(sharesOf(drops, vials), bounds)) found.set(drops.join(' '), drops);
  }
  return [...found.values()];
}

/** Every blend that may be proposed: whole drops, as finely as the drops of a blend allow. */
export function candidatesOf(asked: Omit<Laid, 'blends'>): Drops[] {
  const steps = Math.min(asked.total, STEPS[asked.vials.length]!);
  return droppable(lattice(asked.bounds, steps), asked);
}

/**
 * The first blends, each as whole drops; without order, and without the one that comes twice. Where whole drops would go over a
 * limit, the nearest blend within it stands in.
 */
export function firstDrops(asked: Omit<Laid, 'blends'>): Drops[] {
  const { vials, bounds, total } = asked;
  let within: Drops[] | undefined; // many plans, and only now and then needed
  const all = firstBlends(bounds).flatMap((shares) => {
    const drops = wholeDrops(shares, vials, total);
    const kept =
      drops && keeps(sharesOf(drops, vials), bounds) ? drops : nearest(shares, (within ??= candidatesOf(asked)), vials);
    return kept ? [[kept.join(' '), kept] as const] : [];
  });
  const blends = [...new Map(all).values()];
  if (blends.length < LEAST)
    throw new Refusal('Only {blends} blends can be dropped within these limits: give them more drops.', { blends: blends.length }); // prettier-ignore
  return blends;
}

function nearest(shares: Shares, all: readonly Drops[], vials: readonly LaidVial[]): Drops | undefined {
  const apart = all.map((drops) => Math.hypot(...sharesOf(drops, vials).map((one, i) => one - shares[i]!)));
  return all[apart.indexOf(Math.min(...apart))];
}

/** The first blends in the order in which they are judged, one of them twice; with three-digit codes where they are judged blind. */
export function laidOut(asked: Omit<Laid, 'blends'>, seed: number, blind: boolean): Laid {
  const first = firstDrops(asked);
  const random = randomFrom(seed);
  const shares = first.map((drops) => sharesOf(drops, asked.vials));
  const order = tastingOrder(shares, random).map(({ blend }) => first[blend]!);
  const codes = blind ? blindCodes(order.length, random) : [];
  return { ...asked, blends: order.map((drops, i) => ({ drops: [...drops], ...(blind ? { code: codes[i]! } : {}) })) };
}

/** '4 CARD 1 % + 1 HEX 0.1 %'; a line breaks only at a plus. */
export function dropsWords(drops: Drops, vials: readonly Pick<LaidVial, 'tag'>[]): string {
  return drops.flatMap((count, i) => (count > 0 ? unbroken(`${count} ${vials[i]!.tag}`) : [])).join(' + ');
}

/** '4 drops CARD 1 % + 1 drop HEX 0.1 %', for a heading: a code is never parted from its strength. */
export function dropsHeading(drops: Drops, vials: readonly Pick<LaidVial, 'tag'>[]): string {
  const each = (count: number, i: number) => `${dropsText(count)} ${unbroken(vials[i]!.tag)}`;
  return drops.flatMap((count, i) => (count > 0 ? each(count, i) : [])).join(' + ');
}

/** A tag, or words with one, that no line breaks within. */
export function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}
