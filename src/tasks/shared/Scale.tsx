import { HEDONIC_WORDS } from '../../core/sensory/hedonic';
import type { Walk } from '../engine/task';
import './tiles.css';

interface Props {
  walk: Walk;
  /** Where the number is typed. */
  name: string;
  title: string;
  from: number;
  to: number;
  /** What a number says, in words. */
  words: (n: number) => string;
}

/** A row of numbers for one thumb; a second tap on the same number takes it back. */
export function Scale({ walk, name, title, from, to, words }: Props) {
  const chosen = walk.state.value.typed[name] ?? '';
  const numbers = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  return (
    <fieldset class="scale">
      <legend class="title">
        {title} {chosen !== '' && <span class="amount">{`${chosen}, ${words(Number(chosen))}`}</span>}
      </legend>
      <div class="numbers">
        {numbers.map((n) => (
          <button
            class={String(n) === chosen ? 'tile on' : 'tile'}
            aria-pressed={String(n) === chosen}
            aria-label={`${n}, ${words(n)}`}
            onClick={() => void walk.happen({ type: 'typed', key: name, text: String(n) === chosen ? '' : String(n) })}
          >
            {n}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

/** Intensity 0 to 10; the words are our choice. */
export function intensityWords(n: number): string {
  if (n === 0) return 'nothing';
  return n <= 2 ? 'faint' : n <= 4 ? 'weak' : n <= 6 ? 'clear' : n <= 8 ? 'strong' : 'overpowering';
}

/** A point of the nine-point hedonic scale in words. */
export function likingWords(n: number): string {
  return HEDONIC_WORDS[n - 1] ?? '';
}
