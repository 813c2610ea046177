import { useSignal } from '@preact/signals';
import { Sheet } from '../../ui/controls/Sheet';
import { answer } from '../engine/answers';
import type { Walk } from '../engine/task';
import { codesIn } from './answers';
import './blind.css';
import { fields } from './fields';
import type { Method } from './methods';
import { OrderTiles } from './OrderTiles';
import { samplesOfRun } from './samples';
import { ShelfPick } from './ShelfPick';

/** Samples picked from the Shelf in a sheet; below it the order that is expected, where one is. */
export function SamplesSheet({ walk, method }: { walk: Walk; method: Method }) {
  const open = useSignal(false);
  const run = walk.state.value;
  const samples = samplesOfRun(run) ?? [];
  const { name: key } = fields.order;
  return (
    <>
      <button class="second" aria-haspopup="dialog" onClick={() => (open.value = true)}>
        Pick from the Shelf
      </button>
      {method.id === 'ranking' && answer(run, fields.expected) === 'yes' && samples.length > 0 && (
        <OrderTiles
          ordered
          label="Samples, from lowest to highest"
          tiles={samples.map(({ name }, value) => ({ value, words: name }))}
          chosen={codesIn(answer(run, fields.order)).filter((place) => place < samples.length)}
          onChoose={(chosen) => void walk.happen({ type: 'typed', key, text: chosen.join(' ') })}
        />
      )}
      {open.value && (
        <Sheet title="Samples" onClose={() => (open.value = false)}>
          <ShelfPick walk={walk} method={method} />
          <button class="main" onClick={() => (open.value = false)}>
            OK
          </button>
        </Sheet>
      )}
    </>
  );
}
