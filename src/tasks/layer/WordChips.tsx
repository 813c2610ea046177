import { useSignal } from '@preact/signals';
import { descriptorFamilies } from '../../tables/descriptors';
import type { Walk } from '../engine/task';
import { familyOf } from './families';
import { noteOf, typed } from './notes';
import { fields } from './fields';
import { hasWord, ownWords, toggleWord, tradeWords, wordsIn } from './wordList';

const OWN_SHOWN = 16; // our choice: two or three rows

/** Words to tap: those chosen, which stay in sight, the person's own, then the trade's, family by family. */
export function WordChips({ walk, n }: { walk: Walk; n: number }) {
  const run = walk.state.value;
  const { vials, words } = noteOf(run, n);
  const own = ownWords(run, n);
  const likely = vials.map((vial) => familyOf(run, vial)).find((family) => family !== 'none');
  const family = useSignal(likely ?? descriptorFamilies[0]!.id);

  const isOpen = (word: string) => !hasWord(words, word);
  function toggle(word: string) {
    (document.activeElement as HTMLElement | null)?.blur(); // so that the box shows what is stored
    void walk.happen(typed(fields.words(n), toggleWord(words, word)));
  }

  return (
    <>
      <Words label="Chosen words" all={wordsIn(words)} text={words} onWord={toggle} />
      <Words label="Your words" all={own.filter(isOpen).slice(0, OWN_SHOWN)} text={words} onWord={toggle} />
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
      <Words label="Trade words" all={tradeWords(family.value, own).filter(isOpen)} text={words} onWord={toggle} />
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
