import { exact, type Measured } from '../../../core/number/measured';
import { mixtureOf, type Mixture } from '../../../core/drink/mixture';
import { smallestMass } from '../../../core/dilution/smallestMass';
import { gram } from '../../../core/number/units';
import { capacityOf, weighedNet } from '../../../workshop/scales';
import type { Rescue } from '../../../core/drink/weighList';
import type { Weighed } from '../../../records/kind/batch';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { asked, massField } from '../plan/asked';
import type { Goods } from '../plan/goods';
import { isWeighedAsBefore } from '../plan/weighedAsBefore';

/** Key of the mass of a stock's carrier: as runs have it since the first version. */
export function carrierKey(key: string): string {
  return `${key}.thin`;
}

/** A diluted stock to weigh from: what is meant to go in, g, and what it became. */
export interface Stock {
  /** Key of the mass of the material; that of the carrier is {@link carrierKey}. */
  readonly key: string;
  readonly neatG: number;
  readonly carrierG: number;
  readonly from: Goods;
  readonly carrier: Goods;
  /** g of the material's goods per g of stock: as weighed, else as planned. */
  readonly share: Measured;
  /** g of it that were mixed; null until both are weighed. */
  readonly made: Measured | null;
  /** The stock as goods. */
  readonly goods: Goods;
}

/** Something to be put on the scale, g, and what was put there: null until it is typed. */
export interface Pour {
  readonly key: string;
  /** Which weighing of the plan it belongs to: more of it carries the same. */
  readonly id: string;
  readonly into: Weighed['into'];
  readonly goods: Goods;
  /** Diluted first, because it is too little for the scale. */
  readonly stock: Stock | null;
  /** Which of the two scales it goes on. */
  readonly scale: 'fine' | 'coarse';
  /** What is asked for, g. */
  readonly target: number;
  readonly mass: Measured | null;
  /** Less than the scale can weigh, and no diluting helps. */
  readonly tooSmall: boolean;
  /** More of what is in the vessel already, after another one went over. */
  readonly again: boolean;
  /** The way out when this one went over. */
  readonly rescue: Rescue | null;
}

/** Readability of a scale, g; the usual one until it is known. */
export function stepOf(run: RunState, scale: Pour['scale']): number {
  return answer(run, asked(run)[scale]) ?? (scale === 'fine' ? 0.01 : 1);
}

/**
 * The scale that takes so many grams: the fine one hands over to the coarse one what it cannot carry, and gets from it what that one
 * cannot weigh well.
 */
export function scaleFor(run: RunState, grams: number, usual: Pour['scale'] = 'fine'): Pour['scale'] {
  const most = capacityOf(answer(run, asked(run).fine));
  if (isWeighedAsBefore(run)) return usual === 'fine' && grams > most ? 'coarse' : usual;
  const isTooFine = grams < (leastOf(run, 'coarse') ?? 0);
  if (usual === 'fine') return grams > most && !isTooFine ? 'coarse' : 'fine';
  return isTooFine && (leastOf(run) ?? 0) < (leastOf(run, 'coarse') ?? 0) ? 'fine' : 'coarse';
}

/** How often the scale has to be loaded for so many grams. */
export function loadsOf(run: RunState, grams: number, scale: Pour['scale']): number {
  return Math.max(1, Math.ceil(grams / capacityOf(stepOf(run, scale))));
}

/** Least mass a scale can weigh within the tolerance, g; null until the scale is known. */
export function leastOf(run: RunState, scale: Pour['scale'] = 'fine'): number | null {
  const [readability, tolerance] = [answer(run, asked(run)[scale]), answer(run, asked(run).tolerance)];
  if (readability === null || tolerance === null) return null;
  const repeatability = gram(scale === 'fine' ? (answer(run, asked(run).scatter) ?? 0) : 0);
  return smallestMass({ readability: gram(readability), repeatability }, tolerance / 100);
}

/** What is in a vessel; null until all of it is weighed. With `expected`, what is not weighed yet counts as planned. */
export function mixedOf(pours: readonly Pick<Pour, 'mass' | 'target' | 'goods'>[], expected = false): Mixture | null {
  if (!expected && pours.some(({ mass }) => mass === null)) return null;
  return mixtureOf(pours.map(({ mass, target, goods }) => ({ mass: mass ?? exact(target), contents: goods.contents })));
}

/** How many g a weighing is off, below 0 when short; 0 within the tolerance, and within half a step of the scale: no more can be asked of a hand. */
export function offBy(run: RunState, { mass, target, scale }: Pick<Pour, 'mass' | 'target' | 'scale'>): number {
  const tolerance = (answer(run, asked(run).tolerance) ?? 0) / 100;
  const halfStep = (answer(run, asked(run)[scale]) ?? 0) / 2;
  const off = mass ? mass.value - target : 0;
  return Math.abs(off) > Math.max(tolerance * target, halfStep) ? off : 0;
}

/** What the scale showed under a key, with its uncertainty, g; null until it is typed. `of` names it where the ± is told apart. */
export function massAt(run: RunState, key: string, on: { of: string; scale?: Pour['scale'] }): Measured | null {
  const { of, scale = 'fine' } = on;
  const grossG = answer(run, massField(run, key, { title: '', scale }));
  const readabilityG = answer(run, asked(run)[scale]);
  if (grossG === null || readabilityG === null) return null;
  const scatter = scale === 'fine' ? answer(run, asked(run).scatter) : null;
  const known = scatter === null ? {} : { repeatabilityG: scatter };
  const net = weighedNet({ grossG, tareG: 0, readabilityG, ...known }, { id: `scale.${key}`, words: `weighing ${of}` });
  const loads = isWeighedAsBefore(run) ? 1 : loadsOf(run, grossG, scale);
  return loads === 1 ? net : { ...net, sources: net.sources.map((one) => ({ ...one, u: one.u * Math.sqrt(loads) })) }; // each load errs by itself
}
