import type { RunState } from '../engine/fold';
import type { Step, Walk } from '../engine/task';
import './dose.css';

/** The nine points of the hedonic scale, with its words at the ends and in the middle (Peryam & Pilgrim 1957, as commonly quoted). */
const POINTS = [1, 2, 3, 4, 5, 6, 7, 8, 9];
const WORDS: Readonly<Record<number, string>> = { 1: 'dislike extremely', 5: 'neither', 9: 'like extremely' };

/** The liking under that name, for the Book. */
export function likingTold({ typed }: RunState, name: string): NonNullable<Step['told']> {
  return [['Liking', typed[name] ? `${typed[name]} of 9` : '–']];
}

/** Nine buttons for liking, kept under that name; the chosen one again takes it back. */
export function drawLiking(name: string) {
  return (walk: Walk) => {
    const chosen = walk.state.value.typed[name];
    const choose = (point: string) =>
      void walk.happen({ type: 'typed', key: name, text: chosen === point ? '' : point });
    return (
      <fieldset class="field liking">
        <legend class="title">Liking</legend>
        {POINTS.map((point) => (
          <button
            class={chosen === String(point) ? 'point chosen' : 'point'}
            aria-pressed={chosen === String(point)}
            onClick={() => choose(String(point))}
          >
            <b>{point}</b> <small>{WORDS[point]}</small>
          </button>
        ))}
      </fieldset>
    );
  };
}
