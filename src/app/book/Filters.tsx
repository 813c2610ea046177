import { signal, useSignal } from '@preact/signals';
import type { Run } from '../../records/kind/run';
import { close } from '../../ui/drawn/actionIcons';
import { Icon } from '../../ui/drawn/Icon';
import type { Option } from '../../ui/controls/field';
import { OptionRows } from '../../ui/controls/OptionRows';
import { Sheet } from '../../ui/controls/Sheet';
import { narrowers, taskName, type Narrowing } from '../describe/bookEntries';

/** Stays while one looks at a page of the Book and comes back. */
export const narrowing = signal<Narrowing>({ task: '', of: '', words: '' });
const narrow = (change: Partial<Narrowing>) => (narrowing.value = { ...narrowing.value, ...change });

/** Words, a task, and one material or vial. */
export function Filters({ runs }: { runs: readonly Run[] }) {
  const { task, of, words } = narrowing.value;
  const used = [...new Set(runs.map((run) => run.task))].map((id) => ({ value: id, label: taskName(id) }));
  return (
    <>
      <label class="search-box">
        <span class="unseen">Search the Book</span>
        <input
          type="search"
          value={words}
          placeholder="Words, code, lot…"
          autoComplete="off"
          autoCapitalize="off"
          onInput={(event) => narrow({ words: event.currentTarget.value })}
        />
      </label>
      <div class="filters">
        <Filter title="Task" value={task} options={() => used} onChoose={(value) => narrow({ task: value })} />
        <Filter title="Material or vial" value={of} options={narrowers} onChoose={(value) => narrow({ of: value })} />
      </div>
    </>
  );
}

interface FilterProps {
  title: string;
  /** '' while it is not narrowed. */
  value: string;
  options: () => readonly Option[];
  onChoose: (value: string) => void;
}

/** Opens its sheet, or takes itself off again. */
function Filter({ title, value, options, onChoose }: FilterProps) {
  const open = useSignal(false);
  const chosen = value === '' ? undefined : options().find((option) => option.value === value);
  return (
    <>
      <button
        class="pick"
        aria-pressed={value !== ''}
        aria-haspopup={value === '' ? 'dialog' : undefined}
        onClick={() => (value === '' ? (open.value = true) : onChoose(''))}
      >
        {chosen?.label ?? title}
        {value !== '' && <Icon of={close} title="take off" />}
      </button>
      {open.value && (
        <Sheet title={title} onClose={() => (open.value = false)}>
          <OptionRows
            options={options()}
            chosen=""
            title={title}
            onChoose={(found) => {
              open.value = false;
              onChoose(found);
            }}
          />
        </Sheet>
      )}
    </>
  );
}
