import { drawVial } from './drawVial';
import { takenText } from './pouring';
import { isReady, isSkipped, type Racked } from './rack';
import './rack.css';

/** The vials of a rack in a row, ticked off as they are made; `now` is the one in hand. */
export function drawRack(rack: readonly Racked[], now: string) {
  return (
    <ol class="rack" aria-label="Vials">
      {rack.map((one) => {
        const state = one.name === now ? 'now' : isReady(one) ? 'made' : 'next';
        const words = isSkipped(one) ? 'skipped' : state;
        return (
          <li key={one.name} class={words} aria-current={state === 'now' ? 'step' : undefined}>
            {one.order && drawVial(one.run, one.order, { size: 76, state, full: state !== 'next' })}
            <span>{one.order ? takenText(one.order) : 'cannot be made'}</span>
            <small>{words}</small>
          </li>
        );
      })}
    </ol>
  );
}
