import { useSignal } from '@preact/signals';

/** Something that can be picked. */
export interface PickItem {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly what: string;
  readonly smellOnly?: boolean;
}

interface Props {
  label: string;
  items: readonly PickItem[];
  picked: (id: string) => boolean;
  onPick: (id: string, picked: boolean) => void;
  /** One sentence for when there is nothing to pick from. */
  none?: string;
}

const FEW = 8; // our choice: up to that many are looked through faster than searched
const MOST = 60; // our choice: more rows than that no one scrolls through

/** Big rows to pick from; a tap picks one, another tap lets it go. With many of them a search above. */
export function PickRows({ label, items, picked, onPick, none = 'Nothing here yet.' }: Props) {
  const query = useSignal('');
  const shown = matching(items, query.value);
  return (
    <>
      {items.length > FEW && <Find label={label} onText={(text) => (query.value = text)} />}
      <div class="pick-rows" role="group" aria-label={label}>
        {shown.slice(0, MOST).map((item) => (
          <Row key={item.id} item={item} picked={picked(item.id)} onPick={onPick} />
        ))}
      </div>
      {shown.length > MOST && <p class="quiet">{shown.length - MOST} more: type a code or a name above.</p>}
      {shown.length === 0 && <p class="quiet">{items.length === 0 ? none : 'Nothing of that name.'}</p>}
    </>
  );
}

/** The items in whose code or name all words of the query stand. */
export function matching<T extends Pick<PickItem, 'code' | 'name'>>(items: readonly T[], query: string): T[] {
  const words = plain(query).split(/\s+/).filter(Boolean);
  return items.filter(({ code, name }) => words.every((word) => plain(`${code} ${name}`).includes(word)));
}

/** In small letters, with a point in numbers. */
function plain(text: string): string {
  return text.toLowerCase().replace(/(\d),(\d)/g, '$1.$2');
}

function Find({ label, onText }: { label: string; onText: (text: string) => void }) {
  return (
    <label class="field">
      <span class="title">Find</span>
      <span class="box">
        <input
          type="search"
          aria-label={`Find in ${label}`}
          autoComplete="off"
          autoCapitalize="off"
          onInput={(event) => onText(event.currentTarget.value)}
        />
      </span>
    </label>
  );
}

function Row({ item, picked, onPick }: { item: PickItem; picked: boolean; onPick: Props['onPick'] }) {
  const { id, code, name, what, smellOnly } = item;
  return (
    <button class={picked ? 'choice chosen' : 'choice'} aria-pressed={picked} onClick={() => onPick(id, !picked)}>
      <span class="tick" aria-hidden="true">
        {picked ? '✓' : ''}
      </span>
      <span class="code">{code}</span>
      <span>
        <b>{name}</b>
        <small>
          {what}
          {smellOnly && <em class="smell-only"> smell only</em>}
        </small>
      </span>
    </button>
  );
}
