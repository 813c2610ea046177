interface Tile {
  readonly value: number;
  readonly words: string;
}

interface Props {
  label: string;
  tiles: readonly Tile[];
  chosen: readonly number[];
  /** Every tile tapped in order, instead of one. */
  ordered?: boolean;
  locked?: boolean;
  /** Many small tiles, side by side. */
  small?: boolean;
  onChoose: (chosen: readonly number[]) => void;
}

/** Big tiles: one tap chooses one; in order, each shows its place and a second tap takes it back. */
export function OrderTiles({ label, tiles, chosen, ordered = false, locked = false, small, onChoose }: Props) {
  function tap(value: number) {
    if (!ordered) onChoose([value]);
    else onChoose(chosen.includes(value) ? chosen.filter((one) => one !== value) : [...chosen, value]);
  }
  return (
    <div class={small ? 'code-tiles small' : 'code-tiles'} role="group" aria-label={label}>
      {tiles.map(({ value, words }) => (
        <button
          key={value}
          class={`code-tile${chosen.includes(value) ? ' on' : ''}${/^\d+$/.test(words) ? ' code' : ''}`}
          aria-pressed={chosen.includes(value)}
          disabled={locked}
          onClick={() => tap(value)}
        >
          {words}
          {ordered && chosen.includes(value) && <small>{chosen.indexOf(value) + 1}.</small>}
        </button>
      ))}
    </div>
  );
}
