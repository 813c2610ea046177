import { isReady, isSkipped, type Racked } from './rack';
import { takenText } from './pouring';
import './rack.css';

/** The vials of a rack in a row, ticked off as they are made; `now` is the one in hand. */
export function drawRack(rack: readonly Racked[], now: string) {
  return (
    <ol class="rack" aria-label="Vials">
      {rack.map((one) => {
        const state = isSkipped(one) ? 'skipped' : one.name === now ? 'now' : isReady(one) ? 'made' : 'next';
        return (
          <li key={one.name} class={state} aria-current={state === 'now' ? 'step' : undefined}>
            <b>{one.order?.source.code ?? '?'}</b>
            <span>{one.order ? takenText(one.order) : ''}</span>
            <small>{state === 'made' ? '✓ made' : state}</small>
          </li>
        );
      })}
    </ol>
  );
}
