import { useSignal } from '@preact/signals';
import type { Batch } from '../../records/kind/batch';
import { find } from '../../records/shelf';
import { formatDay, measuredText } from '../../ui/format';
import { alcoholText } from '../../workshop/drinkable/alcoholOf';
import { batchTable } from './batchTable';
import { gasWords } from '../describe/describeBatch';
import { slipWords } from '../describe/wentIn';
import { refusalOf } from '../../workshop/drinkable/grade';
import { saveTable, shareOrSave } from '../nav/saveFile';
import { sheetPictures } from './sheetPng';
import { SIGNED, sheetTitle } from './sheetRows';
import { Accounts, Stages } from './Stages';
import { NotHere } from '../unread/NotHere';
import { Notices } from '../describe/Notices';
import { goneOnWith, overNotices } from '../describe/overFacts';
import { PageHead } from '../nav/PageHead';
import './batchSheet.css';

/** The sheet of a batch: to print (or save as PDF by printing), as a picture, and as a table for a spreadsheet. */
export function BatchSheet({ id }: { id: string }) {
  const batch = find('batch', id);
  if (!batch) return <NotHere id={id} />;
  return (
    <main class="page sheet">
      <PageHead title={sheetTitle(batch)} />
      <Barred batch={batch} />
      <Facts batch={batch} />
      <OverLimits batch={batch} />
      <Stages batch={batch} />
      <Slips batch={batch} />
      <Accounts batch={batch} />
      <Drink batch={batch} />
      <Checks batch={batch} />
      <Signatures />
      <footer class="actions">
        <Picture batch={batch} />
        <button
          class="second"
          onClick={() => saveTable(`${batch.madeOn} ${sheetTitle(batch)}`, () => batchTable(batch))}
        >
          Table for a spreadsheet (CSV)
        </button>
        <button class="main" onClick={() => print()}>
          Print
        </button>
      </footer>
    </main>
  );
}

/** The sheet as a picture, to send to someone or to keep. */
function Picture({ batch }: { batch: Batch }) {
  const trouble = useSignal('');
  const give = () =>
    void sheetPictures(batch)
      .then(shareOrSave)
      .then(
        () => (trouble.value = ''),
        (error: unknown) => (trouble.value = error instanceof Error ? error.message : String(error)),
      );
  return (
    <>
      {trouble.value && (
        <p class="trouble" role="alert">
          The picture could not be handed over: {trouble.value}.
        </p>
      )}
      <button class="second" onClick={give}>
        Picture (PNG)
      </button>
    </>
  );
}

/** That it may not be drunk, and why. */
function Barred({ batch }: { batch: Batch }) {
  const why = refusalOf(batch);
  if (!why) return null;
  return (
    <p>
      <b class="smell-only">SMELL ONLY</b> {why}
    </p>
  );
}

function Facts({ batch }: { batch: Batch }) {
  const { formula, madeOn, drink, notes } = batch;
  return (
    <p>
      Made {formatDay(madeOn)} from {formula.name}
      {formula.version === null ? '' : `, version ${formula.version}`}; {drink.emulsion ? 'an emulsion' : 'a solution'}
      {drink.gas && `; ${gasWords(drink.gas)}`}.{notes && ` ${notes}`}
    </p>
  );
}

/** Which limits it is over today, and why it was made all the same. */
function OverLimits({ batch }: { batch: Batch }) {
  return (
    <>
      <Notices notices={overNotices(batch)} />
      {goneOnWith(batch).map(([label, text]) => (
        <p>
          {label}: {text}
        </p>
      ))}
    </>
  );
}

/** Weighings that were not as planned, and what was done about each. */
function Slips({ batch: { done } }: { batch: Batch }) {
  const slips = done?.slips ?? [];
  if (slips.length === 0) return null;
  return (
    <section>
      <h2>Not as planned</h2>
      {slips.map((slip) => (
        <p>
          {slip.what}: {slipWords(slip)}
        </p>
      ))}
    </section>
  );
}

/** Lines to sign on, on paper. */
function Signatures() {
  return (
    <div class="signatures">
      {SIGNED.map((what) => (
        <p>{what}</p>
      ))}
    </div>
  );
}

function Drink({ batch }: { batch: Batch }) {
  const { drink, reached } = batch;
  const numbers = [
    ['Volume', measuredText(drink.litres, 'L')],
    ['Sugar', measuredText(drink.brix, '°Brix')],
    ['Alcohol', alcoholText(batch)],
    ['Density', measuredText(drink.densityGPerMl, 'g/mL')],
  ] as const;
  return (
    <section>
      <h2>What is in it</h2>
      <table>
        <tbody>
          {numbers.map(([name, text]) => (
            <tr>
              <th scope="row">{name}</th>
              <td>{text}</td>
            </tr>
          ))}
          {reached.map(({ name, mgPerKg }) => (
            <tr>
              <th scope="row">{name}</th>
              <td>{measuredText(mgPerKg, 'mg/kg')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Checks({ batch }: { batch: Batch }) {
  return (
    <section>
      <h2>What the {batch.jurisdiction} rules said</h2>
      <table class="facts-table">
        <tbody>
          {batch.checks.map(({ what, words, source }) => (
            <tr>
              <th scope="row">{what}</th>
              <td>
                {words}
                <small>{source}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Minim warns, it does not certify: the law where you sell, and licensed practice, decide. ± is twice the standard
        uncertainty.
      </p>
    </section>
  );
}
