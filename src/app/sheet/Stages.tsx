import type { Batch } from '../../records/kind/batch';
import { additivesOf, balanceOfBatch, procedureOf, type Stage } from '../describe/procedure';
import { keepingFacts } from '../describe/keepingFacts';
import { Facts } from '../describe/Facts';
import { plannedText, weighedText } from '../../ui/weighed';
import './stages.css';

/** How a batch is made, vessel by vessel: order, what was planned and weighed, and what that made. */
export function Stages({ batch }: { batch: Batch }) {
  return (
    <>
      {procedureOf(batch).map((stage, i) => (
        <StageTable stage={stage} number={i + 1} />
      ))}
    </>
  );
}

function StageTable({ stage: { title, does, rows, makes }, number }: { stage: Stage; number: number }) {
  return (
    <section class="stage">
      <h2>
        {number}. {title}
      </h2>
      {does.map((words) => (
        <p>{words}</p>
      ))}
      <table>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Planned, g</th>
            <th scope="col">Weighed, g</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((one) => (
            <tr>
              <th scope="row">
                {one.name}
                {one.lot && <small>{one.lot}</small>}
              </th>
              <td>{plannedText(one.plannedG, one.massG)}</td>
              <td>{weighedText(one.massG, '')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="makes">Makes {makes}.</p>
    </section>
  );
}

/** Acid and preservatives in a litre, what was said of keeping, and where all of the concentrate is. */
export function Accounts({ batch }: { batch: Batch }) {
  const [additives, balance, keeping] = [additivesOf(batch), balanceOfBatch(batch), keepingFacts(batch)];
  return (
    <>
      {additives.length > 0 && (
        <section>
          <h2>In a litre</h2>
          <Facts facts={additives} />
        </section>
      )}
      {keeping.length > 0 && (
        <section>
          <h2>Keeping</h2>
          <Facts facts={keeping} />
        </section>
      )}
      {balance.length > 0 && (
        <section>
          <h2>Balance</h2>
          <Facts facts={balance} />
        </section>
      )}
    </>
  );
}
