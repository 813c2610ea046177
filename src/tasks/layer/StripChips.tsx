import { dryingAt, type Drying } from './clock';
import { useNow } from './now';
import type { Dipped } from './strips';
import { tagOf } from '../../workshop/thing/labelled';

const TICK = 1000; // ms
const SLOW_TICK = 20_000; // ms; when nothing dries any more

/** The strips with how each stands now, ready ones first. The clock ticks here only. */
export function useDrying(strips: readonly Dipped[]): { strip: Dipped; drying: Drying }[] {
  const drying = strips.some((strip) => !dryingAt(strip, Date.now()).ready);
  const now = useNow(drying ? TICK : SLOW_TICK);
  return strips.map((strip) => ({ strip, drying: dryingAt(strip, Math.max(now, strip.dippedAt)) }));
}

interface Props {
  strips: readonly Dipped[];
  onStrip?: (strip: Dipped) => void;
  /** One row that is pushed sideways, where room is short. */
  inOneRow?: boolean;
}

/** Strips as chips with their clocks; ready ones come forward. */
export function StripChips({ strips, onStrip, inOneRow }: Props) {
  const drying = useDrying(strips);
  const ordered = [...drying].sort((a, b) => +b.drying.ready - +a.drying.ready);
  if (strips.length === 0) return null;
  return (
    <ul class={inOneRow ? 'strip-chips one-row' : 'strip-chips'}>
      {ordered.map(({ strip, drying: { ready, words } }) => (
        <li key={strip.vial.id}>
          {onStrip ? (
            <button class={ready ? 'strip-chip ready' : 'strip-chip'} onClick={() => onStrip(strip)}>
              <b class="mono">{tagOf(strip.vial)}</b> <small>{ready ? `✓ ${words}` : words}</small>
            </button>
          ) : (
            <span class={ready ? 'strip-chip ready' : 'strip-chip'}>
              <b class="mono">{tagOf(strip.vial)}</b> <small>{ready ? `✓ ${words}` : words}</small>
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}
