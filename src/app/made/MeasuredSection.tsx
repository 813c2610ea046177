import { Refusal } from '../../core/text/refusal';
import type { Batch } from '../../records/kind/batch';
import { formatDay, formatPlain } from '../../ui/format';
import { refusalWords } from '../../ui/sentence';
import { attempt, Refused } from '../../workshop/attempt';
import { besidePlan, gaugeFor, plannedOf, readingsNow, type Beside } from '../../workshop/made/measured';
import { isLess, measuredOff, mendingFor } from '../../workshop/made/mend';
import { phMending } from '../../workshop/made/mendPh';
import { sinceOf } from '../../workshop/made/since';
import { dayOfMoment } from '../../workshop/today';
import { go } from '../nav/route';
import { addedLine, isOfPhAlone, phLine } from './mendWords';
import { besideWords, measuredWords, quantities } from '../describe/quantities';

/** What was measured of a batch beside its plan, and what brings it there. A touch measures. */
export function MeasuredSection({ batch }: { batch: Batch }) {
  return (
    <section>
      <h2>Measured</h2>
      <ul class="figures">
        {besidePlan(batch)
          .filter((one) => isOfIt(batch, one))
          .map((one) => (
            <li>
              <button onClick={() => go(['record', batch.id, 'measure', one.of])}>
                <span>{quantities[one.of].name}</span>
                <b>{measuredWords(one)}</b>
                <small>{[besideWords(one), dayWords(one)].filter(Boolean).join('; ')}</small>
              </button>
            </li>
          ))}
      </ul>
      <Correction batch={batch} />
      <History batch={batch} />
    </section>
  );
}

/** Alcohol is measured where there is some, gas where there is to be some. */
function isOfIt(batch: Batch, { of, planned, weighed, reading }: Beside): boolean {
  if (of === 'abv') return reading !== null || (planned ?? 0) > 0 || (weighed?.value ?? 0) >= 0.05;
  return of !== 'gas' || reading !== null || batch.drink.gas !== undefined;
}

function dayWords({ reading }: Beside): string {
  return reading ? formatDay(dayOfMoment(reading.at)) : '';
}

/** What the measured says: nothing to do, or what to add. */
function Correction({ batch }: { batch: Batch }) {
  if (Object.keys(readingsNow(batch)).length === 0) return null;
  const off = measuredOff(batch);
  const gas = gasWords(batch);
  const ph = phMending(batch);
  if (off.length === 0 && !isLess(batch) && !ph)
    return <p role="status">{['What was measured is as planned, within its ±.', gas].filter(Boolean).join(' ')}</p>;
  const held = off.length > 0 ? off : (['sugar'] as const);
  const found = attempt(() => mendingFor(batch, { held, spirit: 96, isWaterMissing: isLess(batch) && off.length > 0 }));
  const rest = found instanceof Refused ? found.problem : addedLine(batch, found, held);
  return (
    <>
      <p role="status">{[isOfPhAlone(batch, ph) ? '' : rest, ph ? phLine(ph) : '', gas].filter(Boolean).join(' ')}</p>
      <button class="second" onClick={() => go(['record', batch.id, 'mend'])}>
        Correct it
      </button>
    </>
  );
}

/** How much gas is missing, and the gauge that would bring it. */
function gasWords(batch: Batch): string {
  const planned = plannedOf(batch).gas;
  const found = besidePlan(batch).find(({ of }) => of === 'gas')?.measured;
  const atC = readingsNow(batch).gas?.atC;
  if (planned === undefined || !found || atC === undefined) return '';
  try {
    return `${formatPlain(planned, 3)} volumes at ${formatPlain(atC)} °C: ${formatPlain(gaugeFor(batch, planned, atC), 3)} bar on the gauge.`;
  } catch (error) {
    if (error instanceof Refusal) return `${refusalWords(error)}.`;
    throw error;
  }
}

/** Earlier corrections, oldest first. */
function History({ batch }: { batch: Batch }) {
  const all = sinceOf(batch, 'mended');
  if (all.length === 0) return null;
  return (
    <ul class="list">
      {all.map(({ at, added, before }) => (
        <li>
          {formatDay(dayOfMoment(at))}: added{' '}
          {added.map(({ name, massG }) => `${formatPlain(massG)} g of ${name}`).join(', ')}; before that{' '}
          {formatPlain(before.brix.value, 3)} °Brix and {formatPlain(before.litres.value, 3)} L by weighing.
        </li>
      ))}
    </ul>
  );
}
