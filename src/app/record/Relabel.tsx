import { isLabelled, kindWords, type AnyRecord } from '../../records/kind/kinds';
import { toRelabel } from '../../workshop/drinkable/mark';
import { describe } from '../describe/describe';
import { go } from '../nav/route';

/** What says "fit for drinks" on its label and is not, and the drinks that it is in; a tap opens the label, or the drink. */
export function Relabel({ record }: { record: AnyRecord }) {
  const all = toRelabel(record);
  const [labels, drinks] = [all.filter(isLabelled), all.filter((one) => !isLabelled(one))];
  if (all.length === 0) return null;
  return (
    <div class="relabel">
      <Group title="Relabel these" all={labels} to={({ id }) => ['labels', id]} />
      {labels.length > 1 && (
        <button class="second" onClick={() => go(['labels', labels.map(({ id }) => id).join(',')])}>
          Print all {labels.length} labels
        </button>
      )}
      <Group title="Drinks that it is in" all={drinks} to={({ id }) => ['record', id]} />
    </div>
  );
}

function Group(props: { title: string; all: readonly AnyRecord[]; to: (record: AnyRecord) => string[] }) {
  const { title, all, to } = props;
  if (all.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul class="list">
        {all.map((record) => {
          const { title: name, code, line } = describe(record);
          return (
            <li key={record.id}>
              <button class="entry" onClick={() => go(to(record))}>
                {code && <span class="code">{code}</span>}
                <b>{name}</b>
                <span>
                  {kindWords(record)}, {line}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
