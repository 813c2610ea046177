import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { AnyRecord } from '../../records/kind/kinds';
import { formatCount } from '../../ui/format';
import { ShelfEntry } from '../describe/ShelfEntry';
import { letterOf, WITH_LETTER } from './letters';

const PAGE = 60; // drawn at first, and more with each tap
const MANY = 24; // our choice: from so many on, letters are quicker than looking through them

/** Things of a kind, newest first. With many of them a tap on the first letter of a code leaves few. */
export function ThingList({ records, of }: { records: readonly AnyRecord[]; of: unknown }) {
  const letter = useSignal('');
  const shown = useSignal(PAGE);
  const letters = useMemo(() => (records.length < MANY ? [] : lettersOf(records)), [of, records.length]);
  const most = letter.value === '' ? shown.value : Math.max(shown.value, WITH_LETTER);
  const left = letter.value === '' ? records : records.filter((record) => letterOf(record) === letter.value);
  return (
    <>
      {letters.length > 1 && (
        <div class="letters" role="group" aria-label="First letter of the code">
          {letters.map((one) => (
            <button
              class="pick"
              aria-pressed={letter.value === one}
              onClick={() => (letter.value = letter.value === one ? '' : one)}
            >
              {one}
            </button>
          ))}
        </div>
      )}
      <ul class="list">
        {left.slice(0, most).map((record) => (
          <ShelfEntry key={record.id} record={record} />
        ))}
      </ul>
      {left.length > most && (
        <button class="second all" onClick={() => (shown.value += PAGE)}>
          Show more ({formatCount(left.length - most)})
        </button>
      )}
    </>
  );
}

function lettersOf(records: readonly AnyRecord[]): string[] {
  return [...new Set(records.map(letterOf))].sort();
}
