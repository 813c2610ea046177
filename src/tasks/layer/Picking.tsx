import { useSignal } from '@preact/signals';
import { list } from '../../records/shelf';
import type { Vial } from '../../records/kind/vial';
import { PickRows, type PickItem } from '../../ui/controls/PickRows';
import { isSmellOnly } from '../../workshop/grade';
import { strengthText } from '../../workshop/strengthText';
import type { Walk } from '../engine/task';
import { clockOf } from './clock';
import { inHand, MOST_STRIPS, stripsOf } from './strips';
import { tagOf } from '../../workshop/labelled';

const NO_VIALS = 'No vial stands on the Shelf yet. Dilute a material first; its vial is then here.';

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
    else await walk.happen({ type: 'typed', key: `pick.${id}`, text: held ? '' : 'yes' });
  }

  return (
    <>
      {list('vial').length > 2 && (
        <button class="second" onClick={() => void walk.goTo('next')}>
          What was not smelled together yet?
        </button>
      )}
      <Trouble words={trouble.value} />
      <PickRows
        label="Vials"
        items={list('vial').map(rowOf)}
        picked={(id) => hand.some(({ vial }) => vial.id === id)}
        onPick={(id) => void toggle(id)}
        none={NO_VIALS}
      />
    </>
  );
}

/** Puts one vial into the hand, in place of the strip of `instead` if there is one, and goes on to its dip. */
export function PuttingIn({ walk, instead }: { walk: Walk; instead?: string }) {
  const hand = inHand(walk.state.value).map(({ vial }) => vial.id);
  const dipped = stripsOf(walk.state.value).flatMap(({ vial, dippedAt }) => (dippedAt === null ? [] : vial.id));
  const full = !instead && hand.length >= MOST_STRIPS;

  async function put(id: string) {
    if (full) return;
    const again = dipped.includes(id); // taken out before: it goes back as it lies
    const stored = await walk.happen(
      ...(instead ? [{ type: 'mark' as const, key: `out.${instead}` }] : []),
      again ? { type: 'unmark', key: `out.${id}` } : { type: 'typed', key: `pick.${id}`, text: 'yes' },
    );
    if (stored) await walk.goTo(again ? 'fan' : 'dip', true);
  }

  return (
    <>
      <Trouble words={full ? `${MOST_STRIPS} strips at most: swap one instead.` : ''} />
      <PickRows
        label="Vials"
        items={list('vial')
          .filter(({ id }) => !hand.includes(id))
          .map(rowOf)}
        picked={() => false}
        onPick={(id) => void put(id)}
        none={list('vial').length === 0 ? NO_VIALS : 'Every vial of the Shelf is in the hand.'}
      />
    </>
  );
}

function rowOf(vial: Vial): PickItem {
  const { id, name, solvent } = vial;
  const what = `${strengthText(vial)}${solvent ? ` in ${solvent.name}` : ''}, ${clockOf(vial, null).words}`;
  return { id, code: tagOf(vial), name, what, smellOnly: isSmellOnly(vial) };
}

function Trouble({ words }: { words: string }) {
  if (!words) return null;
  return (
    <p class="trouble" role="alert">
      {words}
    </p>
  );
}
