import { useSignal } from '@preact/signals';
import { today } from '../../workshop/today';
import { allLabelled, calledOf, tagOf, type Labelled } from '../../workshop/thing/labelled';
import { formatCount, formatDay } from '../../ui/format';
import { Part } from '../fault/Part';

const PAGE = 60; // drawn at first, and more with each tap; those picked by a button below need not be

/** Which vials, bottles and batches labels are printed for. */
export function LabelPicking({ onPicked }: { onPicked: (ids: string[]) => void }) {
  const picked = useSignal<ReadonlySet<string>>(new Set());
  const shown = useSignal(PAGE);
  const all = allLabelled();
  const chosen = all.map(({ id }) => id).filter((id) => picked.value.has(id));
  const flip = (id: string) => {
    const next = new Set(picked.value);
    if (!next.delete(id)) next.add(id);
    picked.value = next;
  };
  return (
    <>
      <div class="body">
        <h2 class="say">Which labels?</h2>
        {all.length === 0 && <p class="quiet">There is no vial, bottle or batch on the Shelf yet.</p>}
        <ul class="list">
          {all.slice(0, shown.value).map((record) => (
            <li key={record.id}>
              <Part of={record}>
                <Choice record={record} picked={picked.value.has(record.id)} onFlip={flip} />
              </Part>
            </li>
          ))}
        </ul>
        {all.length > shown.value && (
          <button class="second all" onClick={() => (shown.value += PAGE)}>
            Show more ({formatCount(all.length - shown.value)})
          </button>
        )}
      </div>
      <footer class="actions">
        <Quick all={all} count={chosen.length} onPick={(ids) => (picked.value = new Set(ids))} />
        <button class="main" disabled={chosen.length === 0} onClick={() => onPicked(chosen)}>
          {['Pick at least one', 'Continue with 1 label'][chosen.length] ?? `Continue with ${chosen.length} labels`}
        </button>
      </footer>
    </>
  );
}

function Choice({ record, picked, onFlip }: { record: Labelled; picked: boolean; onFlip: (id: string) => void }) {
  const { name } = calledOf(record);
  return (
    <label class={picked ? 'choice chosen' : 'choice'}>
      <input type="checkbox" checked={picked} onChange={() => onFlip(record.id)} />
      <span>
        <b>{tagOf(record)}</b> {name}
        <small>{'madeOn' in record ? `made ${formatDay(record.madeOn)}` : 'bottle'}</small>
      </span>
    </label>
  );
}

/** Picks what is new since yesterday, or all, or none. */
function Quick(props: { all: readonly Labelled[]; count: number; onPick: (ids: string[]) => void }) {
  const { all, count, onPick } = props;
  const days = [today(), today(-1)];
  const fresh = all.filter(({ made }) => days.includes(made.slice(0, 10)));
  const pick = (records: readonly Labelled[]) => onPick(records.map(({ id }) => id));
  const whole = count === all.length && count > 0;
  return (
    <div class="row">
      {fresh.length > 0 && fresh.length < all.length && (
        <button class="second" onClick={() => pick(fresh)}>
          Newest {fresh.length}
        </button>
      )}
      <button class="second" onClick={() => pick(whole ? [] : all)} disabled={all.length === 0}>
        {whole ? 'None' : `All ${all.length}`}
      </button>
    </div>
  );
}
