import { isOf, type AnyRecord } from '../records/kinds';
import type { Bottle } from '../records/material';
import { list } from '../records/shelf';
import { useByOf } from '../tasks/useBy';
import { formatDay, formatPlain } from '../ui/format';
import { go } from './route';
import { leftWords } from './ShelfEntry';

const rows: readonly (readonly [string, (bottle: Bottle) => string])[] = [
  ['Supplier', (bottle) => bottle.supplier],
  ['Received', (bottle) => formatDay(bottle.received)],
  ['Grade', (bottle) => bottle.grade],
  ['Density, g/mL', (bottle) => (bottle.density ? formatPlain(bottle.density.gPerMl) : '')],
  ['Purity, %', (bottle) => (bottle.purity ? formatPlain(bottle.purity * 100) : '')],
  ['Price of 10 g', (bottle) => (bottle.pricePerG === undefined ? '' : formatPlain(bottle.pricePerG * 10, 3))],
  ['Use by', (bottle) => formatDay(useByOf(bottle)?.day)],
  ['Left', (bottle) => leftWords(bottle).replace(/ left$/, '')],
];

/** Suppliers and lots of one material side by side; what nobody wrote down is left out. */
export function Lots({ record }: { record: AnyRecord }) {
  const material = isOf('bottle', record) ? record.material : record.id;
  const bottles = list('bottle').filter((bottle) => bottle.material === material);
  if (bottles.length < (isOf('bottle', record) ? 2 : 1)) return null;
  const known = rows.filter(([, text]) => bottles.some((bottle) => text(bottle) !== ''));
  return (
    <section class="lots">
      <h2>{bottles.length === 1 ? 'Its bottle' : 'Suppliers and lots'}</h2>
      <div class="sideways" tabIndex={0} role="region" aria-label="Suppliers and lots, side by side">
        <table>
          <thead>
            <tr>
              <td />
              {bottles.map((bottle) => (
                <th scope="col">
                  <button class="lot" onClick={() => go(['record', bottle.id])}>
                    {bottle.lot || formatDay(bottle.made)}
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {known.map(([label, text]) => (
              <tr>
                <th scope="row">{label}</th>
                {bottles.map((bottle) => (
                  <td class={bottle.id === record.id ? 'here' : ''}>{text(bottle) || '–'}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
