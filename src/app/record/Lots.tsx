import type { AnyRecord } from '../../records/kind/kinds';
import { isLot, lotsBeside, type Lot } from '../../records/lineage';
import { fullOf } from '../../records/stock';
import { gradeWord } from '../../workshop/drinkable/grade';
import { useByOf } from '../../workshop/useBy';
import { formatDay, formatKnown, formatPlain } from '../../ui/format';
import { go } from '../nav/route';
import { leftWords } from '../describe/ShelfEntry';

type Row = readonly [label: string, text: (lot: Lot) => string];

const rows: readonly Row[] = [
  ['Supplier', (lot) => lot.supplier],
  ['Received', (lot) => ('received' in lot ? formatDay(lot.received) : '')],
  ['Grade', (lot) => gradeWord(lot) ?? ''],
  ['Density, g/mL', (lot) => ('density' in lot && lot.density ? formatPlain(lot.density.gPerMl) : '')],
  ['Purity, %', (lot) => ('purity' in lot && lot.purity ? formatPlain(lot.purity * 100) : '')],
  [
    'Price of 10 g',
    (lot) => ('pricePerG' in lot && lot.pricePerG !== undefined ? formatPlain(lot.pricePerG * 10, 3) : ''),
  ],
  ['Use by', (lot) => formatDay(useByOf(lot)?.day)],
  ['At first', (lot) => (fullOf(lot) ? `${formatKnown(fullOf(lot)!)} g` : '')],
  ['Left', (lot) => leftWords(lot).replace(/ left$/, '')],
];

/** Suppliers and lots of one material or solvent side by side; what no one wrote down is left out. */
export function Lots({ record }: { record: AnyRecord }) {
  const bottles = lotsBeside(record);
  if (bottles.length < (isLot(record) ? 2 : 1)) return null;
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
