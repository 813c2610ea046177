import { useRef } from 'preact/hooks';
import type { Walk } from '../engine/task';
import { fields } from './fields';
import { typed } from './notes';
import { StripChips } from './StripChips';
import { dipsOf, inFan, toDip, type Strip } from './strips';
import { tagOf } from '../../workshop/thing/labelled';

const SAME_TOUCH_MS = 400; // our choice: no one dips two strips faster

/** One tap for each strip as it is dipped; the strips dipped before dry beside it. */
export function Dipping({ walk }: { walk: Walk }) {
  const run = walk.state.value;
  const [next, ...later] = toDip(run);
  const last = [...inFan(run)].sort((a, b) => a.dippedAt - b.dippedAt).at(-1);
  return (
    <>
      <StripChips inOneRow strips={inFan(run)} />
      <div class="dipping">
        {next && <Dips walk={walk} vial={next.vial.id} />}
        {next && <DipPad key={next.vial.id} walk={walk} strip={next} later={later} />}
        <div class="row">
          <button
            class="second"
            disabled={!last}
            onClick={() => last && void walk.happen({ type: 'unmark', key: `dipped.${last.vial.id}` })}
          >
            Undo{last && ` ${tagOf(last.vial)}`}
          </button>
          {next && (
            <button class="second" onClick={() => void walk.happen(typed(fields.pick(next.vial.id), ''))}>
              Skip {tagOf(next.vial)}
            </button>
          )}
        </div>
      </div>
    </>
  );
}

/** How often the next strip is dipped. */
function Dips({ walk, vial }: { walk: Walk; vial: string }) {
  const dips = dipsOf(walk.state.value, vial);
  return (
    <div class="tiles" role="group" aria-label="How often to dip">
      {[1, 2, 3].map((n) => (
        <button
          class={n === dips ? 'tile on' : 'tile'}
          aria-pressed={n === dips}
          onClick={() => void walk.happen(typed(fields.dips(vial), String(n)))}
        >
          {n === 1 ? '1 dip' : `${n} dips`}
        </button>
      ))}
    </div>
  );
}

const lastTap = { at: -Infinity };

function DipPad({ walk, strip, later }: { walk: Walk; strip: Strip; later: readonly Strip[] }) {
  const busy = useRef(false);
  async function dip(timeStamp: number) {
    if (busy.current || timeStamp - lastTap.at < SAME_TOUCH_MS) return;
    busy.current = true;
    lastTap.at = timeStamp;
    navigator.vibrate?.(15);
    const stored = await walk.happen({ type: 'mark', key: `dipped.${strip.vial.id}` });
    busy.current = false;
    if (stored && later.length === 0) await walk.goTo('fan', true);
  }
  return (
    <button class="dip-pad" onClick={(event) => void dip(event.timeStamp)}>
      <span class="next-code mono">{tagOf(strip.vial)}</span>
      <span>{strip.vial.name}</span>
      <span class="quiet">
        {later.length > 0 ? `then ${later.map(({ vial }) => tagOf(vial)).join(', ')}` : 'the last one'}
      </span>
      <span class="hint">{strip.dips === 1 ? 'Dip, then tap here' : `Dip ${strip.dips} times, then tap here`}</span>
    </button>
  );
}
