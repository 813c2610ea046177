import { WATER } from '../../core/batchPlan';
import { exact } from '../../core/measured';
import { mixtureOf, shareIn, type Mixture } from '../../core/mixture';
import { formatFixed, formatPlain } from '../../ui/format';
import type { Walk } from '../run';
import { ETHANOL } from './goods';
import { makingOf, type Making } from './made';
import { outcome } from './outcome';
import './batch.css';

/** The concentrate so far: what each part was meant to have, and what it has if the rest is weighed as planned. */
export function drawComposition(walk: Walk) {
  const making = outcome(() => makingOf(walk.state.value)).value;
  if (!making) return <></>;
  const planned = mixtureOf(
    making.idea.concentrate.map(({ goods, mass }) => ({ mass: exact(mass), contents: goods.contents })),
  );
  const now = trueMixture(making);
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
        {inOrder(making, now).map(({ material, strength }) => {
          const isIn = isWeighed(making, material);
          return (
            <tr class={isIn ? 'in' : ''}>
              <th scope="row">
                {isIn ? '✓ ' : ''}
                {nameOf(making, material)}
              </th>
              <td>{percent(shareIn(planned, material).value)}</td>
              <td>{percent(strength.value)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Materials in the order of the formula, then what they are in. */
function inOrder({ idea }: Making, { contents }: Mixture): Mixture['contents'] {
  const place = (id: string) => idea.concentrate.findIndex(({ goods }) => goods.id === id) >>> 0; // not found: last
  return [...contents].sort((one, two) => place(one.material) - place(two.material));
}

function trueMixture({ vessel }: Making): Mixture {
  return mixtureOf(
    vessel.pours.map(({ mass, target, goods }) => ({ mass: exact(mass?.value ?? target), contents: goods.contents })),
  );
}

/** True when all that is weighed under this id is in; what only came along with others never is. */
function isWeighed({ vessel }: Making, id: string): boolean {
  const own = vessel.pours.filter(({ goods }) => goods.id === id);
  return own.length > 0 && own.every(({ mass }) => mass !== null);
}

function nameOf({ idea }: Making, id: string): string {
  const known = idea.concentrate.find(({ goods }) => goods.id === id)?.goods.name;
  return known ?? (id === ETHANOL ? 'ethanol' : id === WATER ? 'water' : id);
}

function percent(share: number): string {
  return share < 0.1 ? `${formatPlain(share * 100, 3)} %` : `${formatFixed(share * 100, 2)} %`;
}
