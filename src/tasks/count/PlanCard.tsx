import type { Walk } from '../engine/task';
import { settled } from './asked';
import './count.css';
import { PlanCurve } from './PlanCurve';
import { PlanLines } from './PlanLines';
import { percent, plansOf } from './plans';

/** The curve of what more drops bring, and under it what is counted of each material. */
export function PlanCard({ walk }: { walk: Walk }) {
  const plans = plansOf(settled(walk.state.value));
  return (
    <>
      {plans.ok && plans.all.length > 1 && (
        <figure class="plan-figure">
          <PlanCurve plans={plans} />
          {plans.own > 0 && <figcaption>Shaded: within the vials’ own ± {percent(plans.own)}.</figcaption>}
        </figure>
      )}
      <PlanLines walk={walk} />
    </>
  );
}
