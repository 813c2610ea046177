import { CONCENTRATE, SUGAR } from '../../core/drink/batchPlan';
import { shareIn } from '../../core/drink/mixture';
import { formatFigures, formatPlain } from '../../ui/format';
import type { Walk } from '../engine/task';
import { Comparison, type Compared } from './Composition';
import { SPIRIT, type Goods } from './plan/goods';
import { doseIn, expectedDrink, makingOf, plannedDrink, type Made, type Making } from './progress';
import { outcome } from '../../workshop/attempt';

/** The drink so far: sugar, alcohol, acid, dose. */
export function drawDrink(walk: Walk) {
  const making = outcome(() => makingOf(walk.state.value)).value;
  const now = making && expectedDrink(making);
  return now ? <Comparison caption="The drink, if the rest is weighed as planned" rows={rowsOf(making, now)} /> : <></>;
}

function rowsOf(making: Making, now: Made): Compared[] {
  const planned = plannedDrink(making.plan);
  const isIn = (id: string) => making.syrup.pours.every(({ goods, mass }) => goods.id !== id || mass !== null);
  const row = (name: string, id: string, text: (made: Made) => string): Compared => ({
    name,
    planned: text(planned),
    now: text(now),
    isIn: id !== '' && isIn(id),
  });
  const hasAlcohol = [planned, now].some(({ abv, unknown }) => abv.value > 0 || unknown.length > 0);
  const more = [...making.plan.syrup, ...making.plan.late]
    .map(({ goods }) => goods)
    .filter(({ beside }) => beside === 'fixed');
  return [
    row('Drink', '', ({ litres }) => `${formatFigures(litres.value, 3)} L`),
    row('Sugar', SUGAR, ({ brix }) => `${formatFigures(brix.value, 3)} °Brix`),
    ...(hasAlcohol
      ? [
          row('Alcohol', SPIRIT, ({ abv, unknown }) =>
            unknown.length > 0 ? 'not known' : `${formatFigures(abv.value, 3)} % ABV`,
          ),
        ]
      : []),
    ...more.map((goods) => row(goods.name, goods.id, (made) => perLitre(made, goods))),
    row('Whole formula', CONCENTRATE, (made) => `${formatPlain(doseIn(made), 3)} mg/kg`),
  ];
}

function perLitre({ mixture, densityGPerMl }: Made, { id }: Goods): string {
  return `${formatPlain(shareIn(mixture, id).value * densityGPerMl.value * 1000, 3)} g/L`; // mL per L
}
