import { kindNames, kindOf, type AnyRecord } from '../../records/kind/kinds';
import { shelf } from '../../records/shelf';
import { formatCount } from '../../ui/format';
import { describe } from '../describe/describe';

const LISTED = 20; // names of a kind; our choice

/** What came and what went, by kind and name. */
export function CameAndWent({ came, went }: { came: readonly string[]; went: readonly string[] }) {
  return (
    <>
      <Listed words="Came" ids={came} />
      <Listed words="Went" ids={went} />
    </>
  );
}

function Listed({ words, ids }: { words: string; ids: readonly string[] }) {
  if (ids.length === 0) return <p class="quiet">{words}: nothing.</p>;
  const known = ids.flatMap((id) => shelf.records.value.get(id) ?? []);
  const rest = ids.length - known.length;
  return (
    <details class="listed">
      <summary>
        {words}: {formatCount(ids.length)}
      </summary>
      <ul class="told">
        {kindNames.map((kind) => (
          <OfKind records={known.filter((record) => record.kind === kind)} />
        ))}
        {rest > 0 && <li>Ended runs, pictures and what was erased: {formatCount(rest)}</li>}
      </ul>
    </details>
  );
}

function OfKind({ records }: { records: readonly AnyRecord[] }) {
  if (records.length === 0) return null;
  const { one, many } = kindOf(records[0]!).words;
  const more = records.length - LISTED;
  return (
    <li>
      <b>{records.length === 1 ? one : many}</b>{' '}
      {records.slice(0, LISTED).map((record, i) => (
        <>
          {i > 0 && ', '}
          <bdi>{nameOf(record)}</bdi>
        </>
      ))}
      {more > 0 && `, and ${formatCount(more)} more`}
    </li>
  );
}

/** 'CARD 1 % cardamom oil': as on its label, where it has one. */
function nameOf(record: AnyRecord): string {
  const { code, title } = describe(record);
  return code === undefined ? title : `${code} ${title}`;
}
