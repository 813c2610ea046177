import { measured, type Measured } from '../../core/number/measured';
import { Refusal } from '../../core/text/refusal';
import type { AnyRecord } from '../../records/kind/kinds';
import type { Proportions } from '../../records/kind/proportions';
import { list, newRecord } from '../../records/shelf';
import { droppedBy, useOf } from '../../workshop/uses';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import { settled } from './asked';
import { fields, type Laid, type LaidVial } from './fields';
import { LEAST } from './blends';
import { questionOf } from './judging';
import { foundIn, givenDrops, judgedCount, laidIn, searchOf } from './search';

/** The search as it is kept. @throws Refusal with fewer than three blends judged */
export function keep(run: RunState): AnyRecord[] {
  const laid = laidIn(run);
  const search = searchOf(run);
  if (!laid || !search || search.judged.length < LEAST)
    throw new Refusal('Judge at least {least} blends first.', { least: LEAST });
  const { best, bestDrops, runnerUp, runnerUpDrops, toldApart } = foundIn(search);
  const kept = (drops: readonly number[], of: typeof best) => ({
    drops: [...drops],
    shares: [...of.shares],
    expected: of.expected.value,
    uncertainty: of.expected.uncertainty,
  });
  const earlier = answer(run, fields.earlier);
  return [
    newRecord('proportions', {
      from: [...laid.vials.map(({ id }) => id), ...layeringOf(laid), ...(earlier === null ? [] : [earlier])],
      name: laid.vials.map(({ tag }) => tag).join(' + '),
      vials: laid.vials.map(({ id, tag, mg }) => ({ id, code: tag, mgPerDrop: mg })),
      bounds: laid.bounds,
      question: questionOf(run),
      on: answer(settled(run), fields.on) ?? 'strip',
      total: laid.total,
      blends: search.judged.map(({ drops, shares, liking, at, code }) => ({
        drops: [...drops],
        shares: [...shares],
        liking,
        at,
        ...(code === undefined ? {} : { code }),
      })),
      best: kept(bestDrops, best),
      runnerUp: runnerUp && kept(runnerUpDrops!, runnerUp),
      toldApart,
      uses: usesOf(run, laid),
    }),
  ];
}

/** What the blends of this run took of each vial. */
function usesOf(run: RunState, { vials }: Laid): Proportions['uses'] {
  const blends = Array.from({ length: judgedCount(run) }, (_, n) => givenDrops(run, n) ?? []);
  return vials.flatMap((vial, k) => {
    const drops = blends.reduce((sum, one) => sum + (one[k] ?? 0), 0);
    const known = { how: 'counted' as const, drops, ...droppedBy(vial.dropper) };
    return drops === 0 ? [] : [useOf(vial.id, taken(vial, drops), known)];
  });
}

function taken({ id, mg, u }: LaidVial, drops: number): Measured {
  return measured((drops * mg) / 1000, (drops * u) / 1000, { id: `drop:${id}`, words: 'mass of a drop' });
}

/** The newest layering in which all of these were liked or not together. */
function layeringOf({ vials }: Laid): string[] {
  const found = list('layering').find(({ strips, verdict }) => {
    const judged = verdict.vials ?? strips.map(({ vial }) => vial);
    return vials.every(({ id }) => judged.includes(id));
  });
  return found ? [found.id] : [];
}
