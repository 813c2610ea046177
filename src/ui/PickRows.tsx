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
}

/** Big rows to pick several from; a tap picks one, another tap lets it go. */
export function PickRows({ label, items, picked, onPick }: Props) {
  return (
    <div class="pick-rows" role="group" aria-label={label}>
      {items.map(({ id, code, name, what, smellOnly }) => (
        <button
          key={id}
          class={picked(id) ? 'choice chosen' : 'choice'}
          aria-pressed={picked(id)}
          onClick={() => onPick(id, !picked(id))}
        >
          <span class="tick" aria-hidden="true">
            {picked(id) ? '✓' : ''}
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
      ))}
    </div>
  );
}
