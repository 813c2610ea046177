import { useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import { search, searchIndex } from '../../core/text/search';
import type { FieldFacts, Option } from './field';

const FEW = 9; // options up to this many are looked through faster than searched (our choice)
const MOST = 30; // options drawn at a time

interface Props {
  field: FieldFacts;
  text: string;
  onText: (text: string, sure: boolean) => void;
}

/** The options of a choice; with many of them a search above, which forgives misspelling. */
export function Options({ field, text, onText }: Props) {
  const query = useSignal('');
  const hears = useSureness(onText);
  const all = field.options ?? [];
  const index = useMemo(() => searchIndex(all.map(entryOf)), [field.options]);
  const found = query.value.trim() === '' ? null : search(index, query.value, all.length).map(({ id }) => id);
  const left = found ? [...found.map((id) => all.find(({ value }) => value === id)!), ...kept(all, found)] : all;
  const shown = found || all.length <= MOST ? left.slice(0, MOST) : firstOf(all, text);
  return (
    <>
      {all.length > FEW && (
        <input
          class="choice-search"
          type="search"
          placeholder={`Search ${all.length}: name, code, lot…`}
          aria-label={`Search: ${field.title}`}
          autoComplete="off"
          autoCapitalize="off"
          onInput={(event) => (query.value = event.currentTarget.value)}
        />
      )}
      {shown.map((option) => (
        <Choice key={option.value} name={field.name} option={option} chosen={option.value === text} {...hears} />
      ))}
      {found?.length === 0 && <span class="note">Nothing like it here.</span>}
      {shown.length < left.length && <span class="note">{left.length - shown.length} more: search for them.</span>}
    </>
  );
}

/** What an option is found by: its words before what is said beside them. */
function entryOf({ value, label: words, hint: more = '' }: Option) {
  const texts: (readonly [string, number])[] = [
    [words, 5],
    [more, 1],
  ];
  return { id: value, texts };
}

/** Arrow keys choose each option that they pass: that is no answer yet. */
function useSureness(onText: Props['onText']) {
  const arrows = useRef(false);
  return {
    onKey: (key: string) => void (arrows.current = key.startsWith('Arrow')),
    onText: (text: string) => {
      onText(text, !arrows.current);
      arrows.current = false;
    },
  };
}

/** Ways out that are offered whatever is searched for. */
function kept(all: readonly Option[], found: readonly string[]): Option[] {
  return all.filter((option) => option.always && !found.includes(option.value));
}

/** The first of many, with the one chosen and those that must always be there. */
function firstOf(all: readonly Option[], text: string): Option[] {
  return all.filter((option, i) => i < MOST || option.value === text || option.always);
}

interface ChoiceProps {
  name: string;
  option: Option;
  chosen: boolean;
  onText: (text: string) => void;
  onKey: (key: string) => void;
}

function Choice({ name, option, chosen, onText, onKey }: ChoiceProps) {
  return (
    <label class={chosen ? 'choice chosen' : 'choice'}>
      <input
        type="radio"
        name={name}
        value={option.value}
        checked={chosen}
        onKeyDown={({ key }) => onKey(key)}
        onClick={() => onText(option.value)}
      />
      <span>
        <b>{option.label}</b>
        {option.hint && <small>{option.hint}</small>}
      </span>
    </label>
  );
}
