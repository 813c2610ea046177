import { useSignal } from '@preact/signals';
import { PickRows, type PickItem } from '../../ui/controls/PickRows';
import { Sheet } from '../../ui/controls/Sheet';
import { asTyped, types } from '../engine/answers';
import type { Walk } from '../engine/task';
import { settled } from './asked';
import { fields } from './fields';
import { isPicked } from './picked';

interface Props {
  walk: Walk;
  items: readonly PickItem[];
  /** 'Vials', 'Materials'. */
  label: string;
}

/** A button that opens the list to pick from; what is picked goes into the sentence, in the order of picking. */
export function PickSheet({ walk, items, label }: Props) {
  const open = useSignal(false);
  const run = settled(walk.state.value);
  const pick = (id: string, yes: boolean) => void walk.happen(...asTyped(types(fields.picked(id), yes ? 'yes' : 'no')));
  const isChange = items.some(({ id }) => isPicked(run, id));
  return (
    <>
      <button
        class={isChange ? 'second' : 'main first-match'}
        aria-haspopup="dialog"
        onClick={() => (open.value = true)}
      >
        {isChange ? `Change ${label.toLowerCase()}` : `Pick ${label.toLowerCase()}`}
      </button>
      {open.value && (
        <Sheet title={label} onClose={() => (open.value = false)}>
          <PickRows label={label} items={items} picked={(id) => isPicked(run, id)} onPick={pick} />
          <button class="main" onClick={() => (open.value = false)}>
            OK
          </button>
        </Sheet>
      )}
    </>
  );
}
