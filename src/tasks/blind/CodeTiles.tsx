import type { Walk } from '../run';
import { codesIn } from './answers';
import { askedCups, type Design } from './design';

interface Props {
  walk: Walk;
  design: Design;
  i: number;
  /** All codes in order, one tap each, instead of one. */
  ordered: boolean;
  locked: boolean;
}

/** The codes of a set, lowest first, so that their place gives nothing away. */
export function CodeTiles({ walk, design, i, ordered, locked }: Props) {
  const key = `choice.${i}`;
  const chosen = codesIn(walk.state.value.typed[locked ? `answer.${i}` : key]);
  const codes = askedCups(design, design.sets[i]!)
    .map(({ code }) => code)
    .sort((a, b) => a - b);
  function choose(code: number) {
    const next = !ordered ? [code] : chosen.includes(code) ? chosen.filter((one) => one !== code) : [...chosen, code];
    void walk.happen({ type: 'typed', key, text: next.join(' ') });
  }
  return (
    <div class="code-tiles" role="group" aria-label="Codes of this set">
      {codes.map((code) => (
        <button
          class={chosen.includes(code) ? 'code-tile on' : 'code-tile'}
          aria-pressed={chosen.includes(code)}
          disabled={locked}
          onClick={() => choose(code)}
        >
          {code}
          {ordered && chosen.includes(code) && <small>{chosen.indexOf(code) + 1}.</small>}
        </button>
      ))}
    </div>
  );
}
