import { descriptorFamilies } from '../../tables/descriptors';
import { TipDot } from '../../ui/drawn/Strip';
import type { Walk } from '../engine/task';
import type { Happening } from '../engine/log';
import { familyOf } from './families';
import { useDrying } from './StripChips';
import { inFan, type Dipped } from './strips';
import { tipOf } from './tips';

/** One strip of the fan: how it dries by the person's own nose, and the way out. */
export function StripPage({ walk, vial }: { walk: Walk; vial: string }) {
  const strip = inFan(walk.state.value).find((one) => one.vial.id === vial);
  return strip ? <Known walk={walk} strip={strip} /> : <p class="quiet">This strip is not in the fan any more.</p>;
}

function Known({ walk, strip }: { walk: Walk; strip: Dipped }) {
  const { drying } = useDrying([strip])[0]!;
  const { id } = strip.vial;
  const after = async (...happenings: Happening[]) => (await walk.happen(...happenings)) && walk.goTo('fan', true);
  const called = strip.driedAt !== null;
  return (
    <>
      <p>
        <b>{drying.words}</b>
        <small>
          {strip.clock.words}, {basisText(strip)}
        </small>
      </p>
      <Families walk={walk} vial={id} />
      <div class="hub-actions">
        {!called && strip.clock.basis !== 'stays wet' && (!drying.ready || strip.clock.basis === 'not known') && (
          <button class="second" onClick={() => void after({ type: 'mark', key: `dry.${id}` })}>
            It is dry now
          </button>
        )}
        {drying.ready && strip.clock.basis !== 'stays wet' && (
          <button
            class="second"
            onClick={() => void after({ type: 'mark', key: `wet.${id}` }, { type: 'unmark', key: `dry.${id}` })}
          >
            It is still wet
          </button>
        )}
        <button class="second" onClick={() => void after({ type: 'mark', key: `out.${id}` })}>
          Take it out
        </button>
        <button class="second" onClick={() => void walk.goTo(`instead.${id}`)}>
          Swap it
        </button>
      </div>
    </>
  );
}

/** The colour of its tip in the drawn fan. */
function Families({ walk, vial }: { walk: Walk; vial: string }) {
  const chosen = familyOf(walk.state.value, vial);
  return (
    <div class="tiles" role="group" aria-label="Colour family">
      {descriptorFamilies.map(({ id, name }) => (
        <button
          class={id === chosen ? 'tile on' : 'tile'}
          aria-pressed={id === chosen}
          onClick={() => void walk.happen({ type: 'typed', key: `family.${vial}`, text: id === chosen ? 'none' : id })}
        >
          <TipDot tip={tipOf(id)!} size={22} />
          {name}
        </button>
      ))}
    </div>
  );
}

function basisText({ clock, dips }: Dipped): string {
  const times =
    dips === 1 ? '1 dip' : `${dips} dips, counted from the last; the time is known for one, so it may dry later`;
  if (clock.basis === 'own time') return `${times}; from your own drying time`;
  if (clock.basis === 'common practice') return `${times}; common practice, paper and draught decide`;
  return times;
}
