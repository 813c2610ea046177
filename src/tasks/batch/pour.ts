import { CONCENTRATE, SUGAR, WATER } from '../../core/batchPlan';
import { exact, type Measured } from '../../core/measured';
import { mixtureOf, type Mixture } from '../../core/mixture';
import { smallestMass } from '../../core/smallestMass';
import { gram } from '../../core/units';
import { netMass } from '../../core/weighing';
import type { Rescue } from '../../core/weighList';
import type { Weighed } from '../../records/batch';
import { valueOf } from '../fields';
import type { RunState } from '../fold';
import { fields } from './fields';
import { pure, SPIRIT, type Goods, type Planned } from './goods';
import type { Idea } from './idea';
import type { Stock } from './stock';

/** Something to be put on the scale, g, and what was put there: null until it is typed. */
export interface Pour {
  readonly key: string;
  readonly into: Weighed['into'];
  readonly goods: Goods;
  /** Made thinner first, because it is too little for the scale. */
  readonly stock: Stock | null;
  /** Which of the two scales it goes on. */
  readonly scale: 'fine' | 'coarse';
  /** What is asked for, g. */
  readonly target: number;
  readonly mass: Measured | null;
  /** Less than the scale can weigh, and no thinning helps. */
  readonly tooSmall: boolean;
  /** More of what is in the vessel already, after another one went over. */
  readonly again: boolean;
  /** The way out when this one went over. */
  readonly rescue: Rescue | null;
}

/** Least mass the fine scale can weigh within the tolerance, g; null until the scale is known. */
export function leastOf(run: RunState): number | null {
  const [readability, tolerance] = [valueOf(run, fields.fine), valueOf(run, fields.tolerance)];
  if (readability === null || tolerance === null) return null;
  const repeatability = gram(valueOf(run, fields.scatter) ?? 0);
  return smallestMass({ readability: gram(readability), repeatability }, tolerance / 100);
}

/** The syrup, and the water that it is thrown with; the concentrate goes in with the mass it has become. */
export function syrupPours(run: RunState, idea: Idea, concentrate: Measured): Pour[] {
  const whole = pure(CONCENTRATE, 'the concentrate');
  const parts: Planned[] = [...idea.syrup, { goods: whole, mass: concentrate.value }];
  const into = idea.water > 0 ? 'syrup' : 'drink';
  const pours = parts.map(({ goods, mass }) => plain(run, { key: `s.${goods.id}`, into, goods, target: mass }));
  if (idea.water === 0) return pours;
  const water = { key: `d.${WATER}`, into: 'drink' as const, goods: pure(WATER, 'water'), target: idea.water };
  return [...pours, plain(run, water)];
}

/** What is in a vessel; null until all of it is weighed. With `planned`, as if all were weighed as planned. */
export function mixedOf(pours: readonly Pour[], planned = false): Mixture | null {
  if (!planned && pours.some(({ mass }) => mass === null)) return null;
  return mixtureOf(
    pours.map(({ mass, target, goods, again }) => ({
      mass: planned ? exact(again ? 0 : target) : mass!,
      contents: goods.contents,
    })),
  );
}

/** What the scale showed under a key, with its doubt, g; null until it is typed. */
export function massAt(run: RunState, key: string, scale: 'fine' | 'coarse' = 'fine'): Measured | null {
  const grossG = valueOf(run, fields.mass(key, ''));
  const readabilityG = valueOf(run, scale === 'fine' ? fields.fine : fields.coarse);
  if (grossG === null || readabilityG === null) return null;
  const repeatabilityG = scale === 'fine' ? (valueOf(run, fields.scatter) ?? 0) : 0;
  return netMass({ grossG, tareG: 0, readabilityG, repeatabilityG }, { id: `scale.${key}`, words: 'the scale' });
}

function plain(run: RunState, of: Pick<Pour, 'key' | 'into' | 'goods' | 'target'>): Pour {
  const scale = [SUGAR, WATER, SPIRIT].includes(of.goods.id) ? 'coarse' : 'fine';
  return {
    ...of,
    scale,
    mass: massAt(run, of.key, scale),
    stock: null,
    tooSmall: false,
    again: false,
    rescue: null,
  };
}
