import { useSignal } from '@preact/signals';
import type { Vial } from '../../records/kind/vial';
import { tagOf } from '../../workshop/thing/labelled';
import { noteLabelled, noteUnlabelled, unlabelledVials } from '../label/unlabelled';
import { go } from '../nav/route';

const NAMED = 4; // our choice: more make the card too high

/**
 * Vials that were made and have no label yet: one tap to print, one to say that they are written. Those said to be written leave their place only
 * with the Bench: nothing moves under a finger.
 */
export function LabelsWaiting() {
  const written = useSignal<readonly Vial[]>([]);
  const waiting = unlabelledVials();
  if (waiting.length === 0)
    return written.value.length === 0 ? null : (
      <section class="card waiting labels-waiting">
        <div role="status">
          <b>{written.value.length === 1 ? '1 label is written' : `${written.value.length} labels are written`}</b>
          <span>{named(written.value)}</span>
        </div>
        <button class="second" onClick={() => void noteUnlabelled(written.value.map(({ id }) => id))}>
          Undo<span class="unseen">: labels not written</span>
        </button>
      </section>
    );
  const ids = waiting.map(({ id }) => id);
  return (
    <section class="card waiting labels-waiting">
      <div>
        <b>{waiting.length === 1 ? '1 label not printed' : `${waiting.length} labels not printed`}</b>
        <span>{named(waiting)}</span>
      </div>
      <button
        class="discard"
        onClick={() => {
          written.value = waiting;
          void noteLabelled(ids);
        }}
      >
        Written by hand
      </button>
      <button class="second" onClick={() => go(['labels', ids.join(',')])}>
        {waiting.length === 1 ? 'Print label' : 'Print labels'}
      </button>
    </section>
  );
}

function named(vials: readonly Vial[]): string {
  const tags = vials.slice(0, NAMED).map(tagOf).join(', ');
  return vials.length > NAMED ? `${tags} and ${vials.length - NAMED} more` : tags;
}
