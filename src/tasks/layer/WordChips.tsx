import { useSignal } from '@preact/signals';
import { descriptorFamilies } from '../../tables/descriptors';
import type { Walk } from '../engine/task';
import { familyOf } from './families';
import { readingOf } from './readings';
import { hasWord, ownWords, toggleWord, tradeWords } from './wordList';

const OWN_SHOWN = 16; // our choice: two or three rows

/** Words to tap: the person's own first, then the trade's, family by family. */
export function WordChips({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const { vials, words } = readingOf(run, n);
  const own = ownWords(run, n);
  const likely = vials.map((vial) => familyOf(run, vial)).find((family) => family !== 'none');
  const family = useSignal(likely ?? descriptorFamilies[0]!.id);

  function toggle(word: string) {
    (document.activeElement as HTMLElement | null)?.blur(); // so that the box shows what is stored
    void walk.happen({ type: 'typed', key: `reading.${n}.words`, text: toggleWord(words, word) });
  }

  return (
    <>
      <Words label="Your words" all={own.slice(0, OWN_SHOWN)} text={words} onWord={toggle} />
      <div class="tiles families" role="group" aria-label="Families of trade words">
        {descriptorFamilies.map(({ id, name }) => (
          <button
            class={id === family.value ? 'tab on' : 'tab'}
            aria-pressed={id === family.value}
            onClick={() => (family.value = id)}
          >
            {name}
          </button>
        ))}
      </div>
      <Words label="Trade words" all={tradeWords(family.value, own)} text={words} onWord={toggle} />
    </>
  );
}

interface WordsProps {
  label: string;
  all: readonly string[];
  /** The text in which the chosen ones stand. */
  text: string;
  onWord: (word: string) => void;
}

function Words({ label, all, text, onWord }: WordsProps) {
  if (all.length === 0) return null;
  return (
    <div class="tiles" role="group" aria-label={label}>
      {all.map((word) => (
        <button
          class={hasWord(text, word) ? 'tile on' : 'tile'}
          aria-pressed={hasWord(text, word)}
          onClick={() => onWord(word)}
        >
          {word}
        </button>
      ))}
    </div>
  );
}
