import { useSignal } from '@preact/signals';
import { list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { PickRows, type PickItem } from '../../ui/controls/PickRows';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { tagOf } from '../../workshop/thing/labelled';
import type { Walk } from '../engine/task';
import { fields } from './fields';
import { typed } from './notes';
import { inHand, MOST_STRIPS, stripsOf } from './strips';
import { vialsInOrder, vialWords } from './vials';

const NO_VIALS = 'No vial is on the Shelf yet. Dilute a material first; its vial is then here.';

/** Ticks and unticks vials for the strips of this run. */
export function Picking({ walk }: { walk: Walk }) {
  const trouble = useSignal('');
  const strips = stripsOf(walk.state.value);
  const hand = inHand(walk.state.value);

  async function toggle(id: string) {
    const strip = strips.find(({ vial }) => vial.id === id);
    const held = hand.some(({ vial }) => vial.id === id);
    trouble.value = !held && hand.length >= MOST_STRIPS ? `${MOST_STRIPS} strips at most: untick one first.` : '';
    if (trouble.value) return;
    if (strip?.dippedAt != null) await walk.happen({ type: held ? 'mark' : 'unmark', key: `out.${id}` });
    else await walk.happen(typed(fields.pick(id), held ? '' : 'yes'));
  }

  return (
    <>
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
      <PickRows
        label="Vials"
        items={vialsInOrder().map(rowOf)}
        picked={(id) => hand.some(({ vial }) => vial.id === id)}
        onPick={(id) => void toggle(id)}
        none={NO_VIALS}
      />
      {list('vial').length > 2 && (
        <button class="second" onClick={() => void walk.goTo('next')}>
          Pairs not yet smelled together
        </button>
      )}
    </>
  );
}

function rowOf(vial: Vial): PickItem {
  const { id, name } = vial;
  return { id, code: tagOf(vial), name, what: vialWords(vial), smellOnly: isSmellOnly(vial) };
}
