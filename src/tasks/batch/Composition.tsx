import { formatFixed, formatPlain } from '../../ui/format';
import type { Walk } from '../run';
import { makingOf } from './made';
import { outcome } from './outcome';
import type { Pour } from './pour';
import './batch.css';

/** The concentrate so far: what is in, what is to come, and the share each will have if the rest is weighed as planned. */
export function drawComposition(walk: Walk) {
  const making = outcome(() => makingOf(walk.state.value)).value;
  if (!making) return <></>;
  const { pours, factor } = making.vessel;
  const rows = rowsOf(pours);
  const whole = rows.reduce((sum, { mass }) => sum + mass, 0);
  const planned = rows.reduce((sum, { plan }) => sum + plan * factor, 0);
  return (
    <table class="composition">
      <caption>The concentrate, if the rest is weighed as planned</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Planned</th>
          <th scope="col">True</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, mass, plan, isIn }) => (
          <tr class={isIn ? 'in' : ''}>
            <th scope="row">
              {isIn ? '✓ ' : ''}
              {name}
            </th>
            <td>{percent((plan * factor) / planned)}</td>
            <td>{percent(mass / whole)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface Row {
  name: string;
  mass: number;
  plan: number;
  isIn: boolean;
}

/** One row for each goods; more of the same is added to its row. `plan` is g at factor 1 times the factor of its moment. */
function rowsOf(pours: readonly Pour[]): Row[] {
  const rows = new Map<string, Row>();
  for (const { goods, mass, target, again, base } of pours) {
    const before = rows.get(goods.id);
    const now = mass?.value ?? target;
    if (before && again) rows.set(goods.id, { ...before, mass: before.mass + now, isIn: before.isIn && mass !== null });
    else rows.set(goods.id, { name: goods.name, mass: now, plan: base, isIn: mass !== null });
  }
  return [...rows.values()];
}

function percent(share: number): string {
  return share < 0.1 ? `${formatPlain(share * 100, 3)} %` : `${formatFixed(share * 100, 2)} %`;
}
