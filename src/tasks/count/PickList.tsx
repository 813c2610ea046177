import type { Walk } from '../run';
import './count.css';
import { isPicked } from './fields';
import { stocksOnHand } from './stock';

/** The vials and bottles on the Shelf as big rows; a tap picks one, another tap lets it go. */
export function PickList({ walk }: { walk: Walk }) {
  return (
    <div class="pick-list" role="group" aria-label="Vials and bottles">
      {stocksOnHand().map(({ id, code, name, what, grade }) => {
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
