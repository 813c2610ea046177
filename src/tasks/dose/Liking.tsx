import type { Walk } from '../run';
import { fields } from './fields';
import './dose.css';

/** The nine points of the hedonic scale, in words at the ends and in the middle (Peryam & Pilgrim 1957, as commonly quoted). */
const POINTS: readonly (readonly [number, string])[] = [
  [1, 'dislike extremely'],
  [2, ''],
  [3, ''],
  [4, ''],
  [5, 'neither'],
  [6, ''],
  [7, ''],
  [8, ''],
  [9, 'like extremely'],
];

/** Nine buttons for liking. */
export function drawLiking(walk: Walk) {
  const chosen = walk.state.value.typed[fields.liking.name];
  return (
    <fieldset class="field liking">
      <legend class="title">Liking</legend>
      {POINTS.map(([point, words]) => (
        <button
          class={chosen === String(point) ? 'point chosen' : 'point'}
          aria-pressed={chosen === String(point)}
          aria-label={`${point}${words && `, ${words}`}`}
          onClick={() =>
            void walk.happen({
              type: 'typed',
              key: fields.liking.name,
              text: chosen === String(point) ? '' : String(point),
            })
          }
        >
          <b>{point}</b>
          <small>{words}</small>
        </button>
      ))}
    </fieldset>
  );
}
