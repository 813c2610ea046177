import { gram } from '../../../core/number/units';
import type { PlannedMass } from '../../../core/drink/batchPlan';
import { vitaminC } from '../../../tables/keeping/acidity';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { amountIn, keepAsked } from './keepAsked';

/** Buffer salt, ascorbic acid and sweeteners for so many litres, g. */
export function extrasFor(run: RunState, litres: number): PlannedMass[] {
  const { salt, saltPerL, ascorbic, sweets } = keepAsked(run);
  const all = [
    { id: answer(run, salt) ?? '', gramsPerL: amountIn(run, saltPerL) },
    { id: vitaminC.id, gramsPerL: amountIn(run, ascorbic) / 1000 }, // mg per g
    ...sweets.map(({ which, mg }) => {
      const id = answer(run, which) ?? '';
      return { id, gramsPerL: id === '' ? 0 : (answer(run, mg) ?? 0) / 1000 };
    }),
  ];
  return all.flatMap(({ id, gramsPerL }) => (gramsPerL > 0 ? [{ id, mass: gram(gramsPerL * litres) }] : []));
}
