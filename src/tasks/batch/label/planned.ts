import { WATER } from '../../../core/drink/batchPlan';
import type { Measured } from '../../../core/number/measured';
import type { Jurisdiction } from '../../../core/limits/figure';
import { heldIn, type Part } from '../../../workshop/drinkable/judging';
import type { DrinkToLabel, Put } from '../../../workshop/drinkLabel/drinkToLabel';
import { answer } from '../../engine/answers';
import type { RunState } from '../../engine/fold';
import { judgeFields } from '../../shared/judgeRun';
import { asked } from '../plan/asked';
import { contentOf, OWN_ACID, type Planned } from '../plan/goods';
import { keepAsked } from '../plan/keepAsked';
import type { Plan } from '../plan/planParts';

/** A planned drink in numbers: °Brix, % ABV, g/mL, solvents of which no one has said the alcohol, and what is judged in it. */
export interface PlannedNumbers {
  readonly brix: Measured;
  readonly abv: Measured;
  readonly densityGPerMl: Measured;
  readonly unknown: readonly string[];
  readonly parts: readonly Part[];
}

/** A planned drink as a label has to tell of it. */
export function plannedToLabel(run: RunState, plan: Plan, numbers: PlannedNumbers): DrinkToLabel {
  const { labelName, labelMl, treated, best } = keepAsked(run);
  const { brix, abv, densityGPerMl, unknown, parts } = numbers;
  return {
    market: answer(run, judgeFields.jurisdiction) as Jurisdiction,
    name: answer(run, labelName) ?? '',
    netMl: answer(run, labelMl),
    puts: putsOf(plan),
    parts,
    held: heldIn(parts),
    sugarPerL: brix.value * densityGPerMl.value * 10, // % and mL per L
    abv: abv.value,
    abvOff: null,
    isAbvUnknown: unknown.length > 0,
    densityGPerMl: densityGPerMl.value,
    volumes: answer(run, asked(run).volumes) ?? 0,
    bestBefore: answer(run, best) ?? '',
    treated: answer(run, treated) ?? 'none',
    lot: '',
  };
}

function putsOf(plan: Plan): Put[] {
  const litres = plan.batch.drink.volume / 1000;
  const put = ({ goods, mass }: Planned): Put => ({
    id: goods.id,
    name: goods.name,
    gramsPerL: mass / litres,
    source: goods.source?.vial ?? goods.source?.bottle ?? null,
    own: goods.own ?? false,
    acid: contentOf(goods, OWN_ACID),
  });
  const water: Put = { id: WATER, name: 'water', gramsPerL: plan.water / litres, source: null, own: false, acid: 0 };
  return [...[...plan.syrup, ...plan.concentrate, ...plan.late].map(put), water];
}
