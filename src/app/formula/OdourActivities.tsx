import { odourActivities, type OdourActivity } from '../../workshop/sensory/odourActivity';
import { formatPlain } from '../../ui/format';

/** Which lines are furthest above their thresholds: an order with what is not known of it. */
export function OdourActivities({ lines }: { lines: readonly { material: string; name: string; mgPerKg: number }[] }) {
  const all = odourActivities(lines);
  const known = all.filter(({ places }) => places !== null);
  const open = all.filter(({ places }) => places === null);
  if (known.length === 0) return null;
  return (
    <section>
      <h2>Dose over threshold</h2>
      <table class="facts-table">
        <tbody>
          {known.map((one) => (
            <tr>
              <th scope="row">
                {placeWords(one)} {one.name}
              </th>
              <td>{timesWords(one)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="quiet">
        An order, not a strength: by published thresholds in plain water. Sugar, acid, alcohol and the other smells
        change it.
        {open.length > 0 && ` No threshold known: ${open.map(({ name }) => name).join(', ')}.`}
      </p>
    </section>
  );
}

function placeWords({ places }: OdourActivity): string {
  const { from, to } = places!;
  return from === to ? `${from}.` : `${from}–${to}.`;
}

function timesWords({ times }: OdourActivity): string {
  const { low, high } = times!;
  if (high < 1) return 'below its threshold';
  const text = (x: number) => formatPlain(x, 1);
  const range = text(low) === text(high) ? text(low) : `${text(low)} to ${text(high)}`;
  return `${range} times its threshold`;
}
