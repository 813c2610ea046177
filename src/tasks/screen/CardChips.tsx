import type { Slot } from '../engine/card';

interface ChipsProps {
  names: readonly string[];
  slots: readonly Slot[];
  onOpen: (name: string) => void;
}

/** What may be said too: a chip each, which opens the sheet of its slot. */
export function Chips({ names, slots, onOpen }: ChipsProps) {
  const open = slots.filter(({ field, state }) => names.includes(field.name) && state === 'empty');
  if (open.length === 0) return null;
  return (
    <div class="usual">
      {open.map(({ field, text }) => (
        <button
          key={field.name}
          type="button"
          data-chip={field.name}
          aria-haspopup="dialog"
          onClick={() => onOpen(field.name)}
        >
          + {text}
        </button>
      ))}
    </div>
  );
}

/** The options of a slot, each to be taken by one touch. None is taken before that. */
export function Pills({ slot: { field, state, value }, onTake }: PillsProps) {
  return (
    <span class="pills" role="group" aria-label={field.title} data-name={field.name}>
      {field.options?.map((one) => (
        <button
          key={one.value}
          type="button"
          class={state === 'empty' ? 'slot empty' : 'slot'}
          aria-pressed={one.value === value}
          onClick={() => onTake(one.value)}
        >
          {one.value === value && <span aria-hidden="true">✓ </span>}
          {one.short ?? one.label}
        </button>
      ))}
    </span>
  );
}

interface PillsProps {
  slot: Slot;
  onTake: (value: string) => void;
}
