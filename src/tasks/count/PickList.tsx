import { useSignal } from '@preact/signals';
import type { Walk } from '../run';
import './count.css';
import { isPicked } from './fields';

/** Something that can be picked: a vial, a bottle, a material. */
interface Item {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly what: string;
  readonly grade?: string;
}

const SEARCH_FROM = 9; // our choice: what a thumb scrolls past at once
const SHOWN = 60; // our choice: more rows than that nobody scrolls through

/** Big rows to pick from; a tap picks one, another tap lets it go. A long list can be searched by code and name. */
export function PickList({ walk, items, label }: { walk: Walk; items: readonly Item[]; label: string }) {
  const search = useSignal('');
  const wanted = search.value.trim().toLowerCase();
  const shown = items.filter(({ code, name }) => `${code} ${name}`.toLowerCase().includes(wanted));
  return (
    <>
      {items.length >= SEARCH_FROM && (
        <label class="field">
          <span class="title">Find</span>
          <span class="box">
            <input
              value={search.value}
              autoComplete="off"
              onInput={(event) => (search.value = event.currentTarget.value)}
            />
          </span>
        </label>
      )}
      <div class="pick-list" role="group" aria-label={label}>
        {shown.slice(0, SHOWN).map((item) => (
          <Row key={item.id} item={item} walk={walk} />
        ))}
      </div>
      {shown.length > SHOWN && <p class="quiet">{shown.length - SHOWN} more: type a code or a name above.</p>}
      {shown.length === 0 && <p class="quiet">Nothing of that name.</p>}
    </>
  );
}

function Row({ item: { id, code, name, what, grade }, walk }: { item: Item; walk: Walk }) {
  const picked = isPicked(walk.state.value, id);
  return (
    <button
      class={picked ? 'choice chosen' : 'choice'}
      aria-pressed={picked}
      onClick={() => void walk.happen({ type: 'typed', key: `pick.${id}`, text: picked ? 'no' : 'yes' })}
    >
      <span class="tick" aria-hidden="true">
        {picked ? '✓' : ''}
      </span>
      <span class="code">{code}</span>
      <span class="words">
        <b>{name}</b>
        <small>
          {what}
          {grade === 'smell only' && <em class="smell-only"> smell only</em>}
        </small>
      </span>
    </button>
  );
}
