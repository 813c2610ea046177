import type { AnyRecord } from '../../records/kind/kinds';
import { shelf } from '../../records/shelf';
import { dropsText } from '../../workshop/dropWords';
import type { WentIn } from '../describe/wentIn';
import { go } from '../nav/route';

interface Props {
  record: AnyRecord;
  rows: readonly WentIn[];
  remarks: readonly string[];
}

/** What is in a thing: how much of what, from which lot; a tap opens what it came from. */
export function InIt({ record, rows, remarks }: Props) {
  if (rows.length === 0) return <Remarks remarks={remarks} />;
  const uses = 'uses' in record ? record.uses : [];
  const counted = uses.filter(({ drops }) => drops !== undefined);
  const all = counted.reduce((sum, { drops = 0 }) => sum + drops, 0);
  return (
    <section>
      <h2>What is in it</h2>
      <ul class="in-it">
        {rows.map((row) => (
          <Row row={row} />
        ))}
      </ul>
      {counted.length > 1 && <p class="quiet">{dropsText(all)} in all.</p>}
      {uses.length > 0 && uses.every(({ how }) => how === undefined) && (
        <p class="quiet">Made with an earlier version: the drops were not kept.</p>
      )}
      <Remarks remarks={remarks} />
    </section>
  );
}

function Row({ row: { id, amount, name, more, lot } }: { row: WentIn }) {
  const words = (
    <>
      <b class="amount-in">{amount}</b>
      <span class="name-in">{name}</span>
      <span class="lot-in">{lot && `lot ${lot}`}</span>
      {more && <small>{more}</small>}
    </>
  );
  return <li>{shelf.records.value.has(id) ? <button onClick={() => go(['record', id])}>{words}</button> : words}</li>;
}

function Remarks({ remarks }: { remarks: readonly string[] }) {
  return (
    <>
      {remarks.map((words) => (
        <p class="remark">{words}</p>
      ))}
    </>
  );
}
