import type { Walk } from '../engine/task';
import './count.css';
import { PlanCurve } from './PlanCurve';
import { percent, plansOf } from './plans';

/** The curve, and under it the plans worth their drops; a tap chooses one. */
export function PlanChoice({ walk }: { walk: Walk }) {
  const plans = plansOf(walk.state.value);
  if (!plans.ok) return null;
  const { worth, chosen } = plans;
  return (
    <>
      <PlanCurve plans={plans} />
      <div class="plan-list" role="group" aria-label="Plans">
        {worth.map((point) => (
          <button
            class={point === chosen ? 'choice chosen' : 'choice'}
            aria-pressed={point === chosen}
            onClick={() => void walk.happen({ type: 'typed', key: 'point', text: String(point.drops) })}
          >
            <b>{point.drops} drops</b>
            <span class="off">worst line {percent(point.objective)} off</span>
            {point.recommended && <span class="chip">recommended</span>}
          </button>
        ))}
      </div>
    </>
  );
}
