import { useTaps } from '../../ui/controls/TapPad';
import { dropped } from '../engine/leaving';
import type { Pad, Walk } from '../engine/task';

interface Props {
  walk: Walk;
  counting: Pick<Pad, 'counter' | 'target'>;
  /** Whether a touch beside the drop button is meant. */
  awake: (touch: MouseEvent) => boolean;
}

/** Drops counted on a card: the large button answers on touch-down, and takes Enter and Space too; beside it the last one is taken back. */
export function DropRow({ walk, counting: { counter, target }, awake }: Props) {
  const count = walk.state.value.drops[counter] ?? 0;
  const taps = useTaps(() => void walk.happen(...dropped(walk.step.peek(), walk.state.peek(), counter)));
  return (
    <div class="row drop-row">
      <button
        class="second"
        disabled={count === 0}
        onClick={(touch) => void (awake(touch) && walk.happen({ type: 'undo', key: counter }))}
      >
        Undo
      </button>
      <button
        {...taps}
        class={target !== null && count >= target ? 'plus reached' : 'plus'}
        aria-label={`+ 1 drop, ${count} so far`}
      >
        + 1 drop
      </button>
    </div>
  );
}
