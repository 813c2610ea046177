import { massOfDrops } from '../../core/drop/drop';
import { weighedNet } from '../../workshop/scales';
import { over, plus, standardUncertainty, times, type Measured } from '../../core/number/measured';
import type { AnyRecord } from '../../records/kind/kinds';
import { dropsText } from '../../workshop/dropWords';
import { dropsAlike, learnedDrop, type DropOnHand } from '../../workshop/dropMass';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { ALL, dropperOf, fields } from './fields';
import type { Stock } from './stock';

/** Drops of one stock that went into the trial, and what they weigh, g. */
export interface Counted {
  readonly stock: Stock;
  readonly drops: number;
  readonly drop: DropOnHand;
  readonly mass: Measured;
}

/** Drops that were put on a scale, of a vial or of ALL, and what they weighed, g; null where none were, or some of them were taken back. */
function weighing(run: RunState, id: string, drops: number): { drops: number; massG: number } | null {
  const [on, massG] = [answer(run, fields.weighs(id)), answer(run, fields.grams(id))];
  return on === null || massG === null || on > drops ? null : { drops: on, massG };
}

function net(run: RunState, grossG: number, source: { id: string; words: string }): Measured {
  return weighedNet({ grossG, tareG: 0, readabilityG: answer(run, fields.readability) ?? 0.01 }, source);
}

/** What the drops of a stock weigh, g: as counted; as the scale showed it, where that is known more surely. */
export function massOfStock(
  run: RunState,
  stock: Stock,
  { drops, drop, token }: { drops: number; drop: DropOnHand; token: string },
): Measured {
  const { mgPerDrop, spread: perDropSpread } = drop;
  const id = `${token}:${stock.id}`;
  const fell = (n: number) =>
    massOfDrops({ drops: n, mgPerDrop, perDropSpread, id, words: `counting ${dropsText(n)} of ${stock.tag}` });
  const counted = fell(drops);
  const scale = weighing(run, stock.id, drops);
  if (!scale) return counted;
  const shown = net(run, scale.massG, { id: `${id}:scale`, words: `drops of ${stock.tag}, weighed` });
  return surer(drops > scale.drops ? plus(shown, fell(drops - scale.drops)) : shown, counted);
}

/** All vials as the whole trial weighed, where that is known more surely: each as much heavier or lighter as all together. */
export function asWeighedTogether(run: RunState, counted: readonly Counted[], token: string): Counted[] {
  const drops = counted.reduce((sum, line) => sum + line.drops, 0);
  const scale = weighing(run, ALL, drops);
  const total = plus(...counted.map(({ mass }) => mass));
  if (!scale || scale.drops < drops) return [...counted];
  const shown = net(run, scale.massG, { id: `${token}:scale`, words: 'the whole trial, weighed' });
  if (surer(shown, total) === total) return [...counted];
  return counted.map((line) => ({ ...line, mass: times(line.mass, over(shown, total)) }));
}

function surer(one: Measured, other: Measured): Measured {
  return standardUncertainty(one) / one.value < standardUncertainty(other) / other.value ? one : other;
}

/** What the weighings teach of the dropper: each of its vial's liquid, and that of all where they are one liquid. */
export function learned(run: RunState, counted: readonly Counted[]): AnyRecord[] {
  const [first] = counted;
  const drops = counted.reduce((sum, line) => sum + line.drops, 0);
  const isOneLiquid = counted.every(({ stock }) => first && dropsAlike(stock.liquid, first.stock.liquid));
  const strongest = [...counted].sort((a, b) => b.stock.liquid.strength - a.stock.liquid.strength)[0];
  const own = counted.map(({ stock, drops }) => ({ stock, scale: weighing(run, stock.id, drops) }));
  const all = isOneLiquid && strongest ? [{ stock: strongest.stock, scale: weighing(run, ALL, drops) }] : [];
  return [...own, ...all].flatMap(({ stock, scale }) => {
    if (!scale) return [];
    const calibration = learnedDrop({
      ...scale,
      dropper: dropperOf(run),
      liquid: stock.liquid,
      name: stock.solvent?.name ?? stock.name,
      readabilityG: answer(run, fields.readability) ?? 0.01,
    });
    return calibration ?? [];
  });
}
