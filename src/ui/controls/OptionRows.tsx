import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { search, searchIndex } from '../../core/text/search';
import type { Option } from './field';

const FEW = 8; // options up to this many are looked through faster than searched (our choice)
const MOST = 40; // options drawn at a time

interface Props {
  options: readonly Option[];
  /** Value of the one that is chosen. */
  chosen: string;
  /** What they are, for the search field. */
  title: string;
  onChoose: (value: string) => void;
}

/** The options of a sheet: one touch chooses. Under headings where they have some; with many of them a search above. */
export function OptionRows({ options, chosen, title, onChoose }: Props) {
  const query = useSignal('');
  const index = useMemo(() => searchIndex(options.map(entryOf)), [options]);
  const found = query.value.trim() === '' ? options : matches(options, search(index, query.value, options.length));
  const shown = found.filter((option, i) => i < MOST || option.value === chosen || option.always);
  const groups = [...new Set(shown.map(({ group = '' }) => group))];
  return (
    <>
      {options.length > FEW && (
        <input
          class="sheet-search"
          type="search"
          placeholder="Search"
          aria-label={`Search: ${title}`}
          autoComplete="off"
          autoCapitalize="off"
          onInput={(event) => (query.value = event.currentTarget.value)}
        />
      )}
      {groups.map((group) => (
        <div class="sheet-rows" key={group}>
          {group && <h3>{group}</h3>}
          {shown
            .filter((option) => (option.group ?? '') === group)
            .map((option) => (
              <Row key={option.value} option={option} chosen={option.value === chosen} onChoose={onChoose} />
            ))}
        </div>
      ))}
      {found.length === 0 && <p class="note">Nothing like it here.</p>}
      {shown.length < found.length && <p class="note">{found.length - shown.length} more: search for them.</p>}
    </>
  );
}

/** An option as a row; under a heading, one of which nothing more is said is only as wide as its words. */
function Row({ option, chosen, onChoose }: { option: Option; chosen: boolean; onChoose: (value: string) => void }) {
  const short = option.group && !option.hint && !option.against;
  return (
    <button
      type="button"
      class={short ? 'sheet-row short' : 'sheet-row'}
      aria-pressed={chosen}
      onClick={() => onChoose(option.value)}
    >
      <b>{option.label}</b>
      {option.hint && <small>{option.hint}</small>}
      {option.against && <small class="against">{option.against}</small>}
    </button>
  );
}

/** What an option is found by: its words before what is said beside them. */
function entryOf({ value, label, hint = '' }: Option) {
  const texts: (readonly [string, number])[] = [
    [label, 5],
    [hint, 1],
  ];
  return { id: value, texts };
}

/** Those that were found, best first, and those that must always be there. */
function matches(options: readonly Option[], found: readonly { id: string }[]): Option[] {
  const hits = found.map(({ id }) => options.find(({ value }) => value === id)!);
  return [...hits, ...options.filter((option) => option.always && !hits.includes(option))];
}
