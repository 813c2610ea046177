import { useSignal } from '@preact/signals';
import { PickRows } from '../../ui/controls/PickRows';
import { answer } from '../engine/answers';
import type { RunState } from '../engine/fold';
import type { Walk } from '../engine/task';
import { fields } from './fields';
import type { Method } from './methods';
import { pickable, placesOf, sampleNamed } from './samples';

/** The places still to be filled, in order. */
function placesLeft(run: RunState, method: Method): number[] {
  return placesOf(method).flatMap((_, i) => (answer(run, fields.sample(i)) === null ? i : []));
}

/** Samples picked from the Shelf: the first goes to the first place that is empty, another tap lets it go. */
export function ShelfPick({ walk, method }: { walk: Walk; method: Method }) {
  const trouble = useSignal('');
  const run = walk.state.value;
  const items = pickable();
  const placeOf = (id: string): number => placesOf(method).findIndex((_, i) => answer(run, fields.from(i)) === id);

  async function pick(id: string, picked: boolean) {
    const place = picked ? placesLeft(run, method)[0] : placeOf(id);
    trouble.value = place === undefined ? 'Every place is taken: let one go first.' : '';
    if (place === undefined) return;
    const name = picked ? sampleNamed(items.find((item) => item.id === id)!) : '';
    await walk.happen(
      { type: 'typed', key: `sample.${place}`, text: name },
      { type: 'typed', key: `from.${place}`, text: picked ? id : '' },
    );
  }

  return (
    <>
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
      <PickRows
        label="Vials, batches and drinks"
        items={items}
        picked={(id) => placeOf(id) >= 0}
        onPick={(id, picked) => void pick(id, picked)}
        none="There is no vial, batch or drink on the Shelf yet: type the names instead."
      />
    </>
  );
}
