import { descriptorFamilies } from '../../tables/descriptors';
import { OptionRows } from '../../ui/controls/OptionRows';
import { Sheet } from '../../ui/controls/Sheet';
import type { Option } from '../../ui/controls/field';
import { TipDot } from '../../ui/drawn/Strip';
import { isSmellOnly } from '../../workshop/drinkable/grade';
import { tagOf } from '../../workshop/thing/labelled';
import type { Happening } from '../engine/log';
import type { Walk } from '../engine/task';
import { familyOf } from './families';
import { fields } from './fields';
import { beginNote, closing, typed } from './notes';
import { useDrying } from './StripChips';
import { inFan, inHand, stripsOf, type Dipped } from './strips';
import { tipOf } from './tips';
import { vialsInOrder, vialWords } from './vials';

interface Props {
  walk: Walk;
  onClose: () => void;
}

/** What can be done with one strip of the fan: smell it alone, say that it is dry, take it out, or touch the vial that comes in for it. */
export function StripSheet({ walk, strip, onClose }: Props & { strip: Dipped }) {
  const { id } = strip.vial;
  const { drying } = useDrying([strip])[0]!;
  const after = async (...happenings: Happening[]) => {
    if (await walk.happen(...happenings)) onClose();
  };
  const smell = async (page?: 'page') => {
    const run = walk.state.peek();
    const { n, happenings } = beginNote(run, Date.now(), [id]);
    await after(...closing(run), ...happenings);
    if (page) await walk.goTo(`reading.${n}`);
  };
  const out: Happening[] = [...closing(walk.state.value), { type: 'mark', key: `out.${id}` }];
  return (
    <Sheet title={`${tagOf(strip.vial)}: ${drying.words}`} onClose={onClose}>
      <small>{`${strip.clock.words}, ${basisText(strip)}`}</small>
      <div class="strip-ways">
        {inFan(walk.state.value).length > 1 && (
          <button class="second" onClick={() => void smell()}>
            Smell it alone
          </button>
        )}
        <button class="second" onClick={() => void smell('page')}>
          Note on it
        </button>
        <DryButton strip={strip} ready={drying.ready} onHappen={after} />
        <button class="second" onClick={() => void after(...out)}>
          Take it out
        </button>
      </div>
      <h3>Swap it for</h3>
      <Incoming walk={walk} out={out} onClose={onClose} />
      <Families walk={walk} vial={id} />
    </Sheet>
  );
}

/** The vial that comes in beside those in the fan. */
export function AddSheet({ walk, onClose }: Props) {
  return (
    <Sheet title="Add a strip" onClose={onClose}>
      <Incoming walk={walk} out={closing(walk.state.value)} onClose={onClose} />
    </Sheet>
  );
}

/** Vials that are not in the hand; one touch puts one in, and leads to its dip. One that was dipped before goes back as it lies. */
function Incoming({ walk, out, onClose }: Props & { out: readonly Happening[] }) {
  const run = walk.state.value;
  const held = new Set(inHand(run).map(({ vial }) => vial.id));
  const lying = new Set(stripsOf(run).flatMap(({ vial, dippedAt }) => (dippedAt === null ? [] : vial.id)));
  const options: Option[] = vialsInOrder()
    .filter(({ id }) => !held.has(id))
    .map((vial) => ({
      value: vial.id,
      label: `${tagOf(vial)} · ${vial.name}`,
      hint: lying.has(vial.id) ? 'dipped before: goes back as it is' : vialWords(vial),
      ...(isSmellOnly(vial) ? { against: 'smell only' } : {}),
    }));
  async function put(id: string) {
    const again = lying.has(id);
    const comes: Happening = again ? { type: 'unmark', key: `out.${id}` } : typed(fields.pick(id), 'yes');
    if (!(await walk.happen(...out, comes))) return;
    onClose();
    if (!again) await walk.goTo('dip', true);
  }
  if (options.length === 0) return <p class="note">Every vial of the Shelf is in the fan.</p>;
  return <OptionRows title="Vials" options={options} chosen="" onChoose={(id) => void put(id)} />;
}

interface DryProps {
  strip: Dipped;
  ready: boolean;
  onHappen: (...happenings: Happening[]) => Promise<void>;
}

/** What the person's own nose says of a strip, against the clock. */
function DryButton({ strip, ready, onHappen }: DryProps) {
  const { id } = strip.vial;
  const { basis } = strip.clock;
  if (basis === 'stays wet') return null;
  const dry: Happening = { type: 'mark', key: `dry.${id}` };
  if (strip.driedAt === null && (!ready || basis === 'not known'))
    return (
      <button class="second" onClick={() => void onHappen(dry)}>
        It is dry now
      </button>
    );
  return (
    <button
      class="second"
      onClick={() => void onHappen({ type: 'mark', key: `wet.${id}` }, { type: 'unmark', key: `dry.${id}` })}
    >
      It is still wet
    </button>
  );
}

/** The colour of its tip in the drawn fan. */
function Families({ walk, vial }: { walk: Walk; vial: string }) {
  const chosen = familyOf(walk.state.value, vial);
  return (
    <details class="fold">
      <summary>Colour of its tip</summary>
      <div class="tiles folded-tiles" role="group" aria-label="Colour family">
        {descriptorFamilies.map(({ id, name }) => (
          <button
            class={id === chosen ? 'tile on' : 'tile'}
            aria-pressed={id === chosen}
            onClick={() => void walk.happen(typed(fields.family(vial), id === chosen ? 'none' : id))}
          >
            <TipDot tip={tipOf(id)!} size={22} />
            {name}
          </button>
        ))}
      </div>
    </details>
  );
}

function basisText({ clock, dips }: Dipped): string {
  const times =
    dips === 1 ? '1 dip' : `${dips} dips, counted from the last; the time is known for one, so it may dry later`;
  if (clock.basis === 'own time') return `${times}; from your own drying time`;
  if (clock.basis === 'common practice') return `${times}; common practice; paper and draught change it`;
  return times;
}
