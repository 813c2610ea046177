import { WATER } from '../../core/drink/batchPlan';
import { exact } from '../../core/number/measured';
import { mixtureOf, shareIn, type Mixture } from '../../core/drink/mixture';
import { formatFigures } from '../../ui/format';
import type { Walk } from '../engine/task';
import { ETHANOL, OWN_ACID } from './plan/goods';
import { makingOf, type Making } from './progress';
import { outcome } from '../../workshop/attempt';
import { mixedOf } from './vessel/pour';
import './batch.css';

/** A line of the table: planned, and as it becomes if the rest is weighed as planned; `isIn` when all of it is weighed. */
export interface Compared {
  readonly name: string;
  readonly planned: string;
  readonly now: string;
  readonly isIn: boolean;
}

/** What a vessel was meant to have, and what it has if the rest is weighed as planned. */
export function Comparison({ caption, rows }: { caption: string; rows: readonly Compared[] }) {
  return (
    <table class="composition">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Planned</th>
          <th scope="col">So far</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, planned, now, isIn }) => (
          <tr class={isIn ? 'in' : ''}>
            <th scope="row">
              {isIn ? '✓ ' : ''}
              {name}
            </th>
            <td>{planned}</td>
            <td>{now}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The concentrate so far. */
export function drawComposition(walk: Walk) {
  const making = outcome(() => makingOf(walk.state.value)).value;
  if (!making) return <></>;
  const planned = mixtureOf(
    making.plan.concentrate.map(({ goods, mass }) => ({ mass: exact(mass), contents: goods.contents })),
  );
  const rows = inOrder(making, mixedOf(making.vessel.pours, true)!).map(({ material, strength }) => ({
    name: nameOf(making, material),
    planned: percent(shareIn(planned, material).value),
    now: percent(strength.value),
    isIn: isWeighed(making, material),
  }));
  return <Comparison caption="The concentrate, if the rest is weighed as planned" rows={rows} />;
}

/** Materials in the order of the formula, then what they are in. */
function inOrder({ plan }: Making, { contents }: Mixture): Mixture['contents'] {
  const place = (id: string) => plan.concentrate.findIndex(({ goods }) => goods.id === id) >>> 0; // not found: last
  return [...contents].sort((one, two) => place(one.material) - place(two.material));
}

/** True when all that is weighed under this id is in; what only came along with others never is. */
function isWeighed({ vessel }: Making, id: string): boolean {
  const own = vessel.pours.filter(({ goods }) => goods.id === id);
  return own.length > 0 && own.every(({ mass }) => mass !== null);
}

function nameOf({ plan }: Making, id: string): string {
  const known = plan.concentrate.find(({ goods }) => goods.id === id)?.goods.name;
  return known ?? (id === ETHANOL ? 'ethanol' : id === WATER ? 'water' : id === OWN_ACID ? 'acid' : id);
}

function percent(share: number): string {
  return `${formatFigures(share * 100, 3)} %`;
}
