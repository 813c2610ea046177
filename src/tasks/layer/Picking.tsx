import { useSignal } from '@preact/signals';
import { list } from '../../records/shelf';
import type { Vial } from '../../records/vial';
import type { Walk } from '../run';
import { PickList } from './PickList';
import { inHand, MOST_STRIPS, stripsOf } from './strips';

/** Ticks and unticks vials for the strips of this run. */
export function Picking({ walk }: { walk: Walk }) {
  const trouble = useSignal('');
  const strips = stripsOf(walk.state.value);
  const hand = inHand(walk.state.value);

  async function toggle(vial: Vial) {
    const strip = strips.find((one) => one.vial.id === vial.id);
    const held = hand.some((one) => one.vial.id === vial.id);
    trouble.value = !held && hand.length >= MOST_STRIPS ? `${MOST_STRIPS} strips at most: untick one first.` : '';
    if (trouble.value) return;
    if (strip?.dippedAt != null) await walk.happen({ type: held ? 'mark' : 'unmark', key: `out.${vial.id}` });
    else await walk.happen({ type: 'typed', key: `pick.${vial.id}`, text: held ? '' : 'yes' });
  }

  return (
    <>
      {list('vial').length > 2 && (
        <button class="second" onClick={() => void walk.goTo('next')}>
          What was not smelled together yet?
        </button>
      )}
      <PickList
        vials={list('vial')}
        picked={hand.map(({ vial }) => vial.id)}
        onPick={(vial) => void toggle(vial)}
        trouble={trouble.value}
      />
    </>
  );
}

/** Puts one vial into the hand, in place of the strip of `instead` if there is one, and goes on to its dip. */
export function PuttingIn({ walk, instead }: { walk: Walk; instead?: string }) {
  const hand = inHand(walk.state.value).map(({ vial }) => vial.id);
  const dipped = stripsOf(walk.state.value).flatMap(({ vial, dippedAt }) => (dippedAt === null ? [] : vial.id));

  async function put({ id }: Vial) {
    const again = dipped.includes(id); // taken out before: it goes back as it lies
    const stored = await walk.happen(
      ...(instead ? [{ type: 'mark' as const, key: `out.${instead}` }] : []),
      again ? { type: 'unmark', key: `out.${id}` } : { type: 'typed', key: `pick.${id}`, text: 'yes' },
    );
    if (stored) await walk.goTo(again ? 'fan' : 'dip', true);
  }

  return (
    <PickList
      vials={list('vial').filter(({ id }) => !hand.includes(id))}
      picked={[]}
      onPick={(vial) => void put(vial)}
      trouble={!instead && hand.length >= MOST_STRIPS ? `${MOST_STRIPS} strips at most: swap one instead.` : ''}
    />
  );
}
