import { signal } from '@preact/signals';
import { faultText } from '../../ui/fault/FaultNotice';
import { route } from '../nav/route';

/** What went wrong last outside of drawing (in a tap, a timer, a promise), and on which page; null when it has been read. */
const mishap = signal<{ readonly text: string; readonly page: string } | null>(null);
const here = () => route.value.join('/');

/**
 * Listens for what no one caught. Left out is what is no fault of Minim: notices of the browser that carry no error
 * (ResizeObserver), and what a person broke off.
 */
export function listenForMishaps(): void {
  addEventListener('error', ({ error }) => note(error));
  addEventListener('unhandledrejection', ({ reason }) => note(reason));
}

function note(error: unknown): void {
  if (error === null || error === undefined) return;
  if (error instanceof DOMException && error.name === 'AbortError') return;
  mishap.value = { text: faultText(error), page: here() };
}

/** Says that a tap came to nothing, so that no button is dead without a word; on the next page it is over. */
export function MishapNotice() {
  if (mishap.value?.page !== here()) return null;
  return (
    <div class="mishap" role="alert">
      <span>
        Something in Minim went wrong just now: your last tap may not have counted.
        <small>{mishap.value.text}</small>
      </span>
      <button class="second" onClick={() => (mishap.value = null)}>
        Close
      </button>
    </div>
  );
}
