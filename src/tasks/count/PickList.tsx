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

/** Big rows to pick from; a tap picks one, another tap lets it go. */
export function PickList({ walk, items, label }: { walk: Walk; items: readonly Item[]; label: string }) {
  return (
    <div class="pick-list" role="group" aria-label={label}>
      {items.map(({ id, code, name, what, grade }) => {
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
      })}
    </div>
  );
}
