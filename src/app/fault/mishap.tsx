import { signal } from '@preact/signals';
import { faultText } from '../../ui/fault/FaultNotice';

/** What went wrong last outside of drawing: in a tap, a timer, a promise. '' when nothing did, or it has been read. */
const mishap = signal('');

/**
 * Listens for what nobody caught. Left out is what is no fault of Minim: notices of the browser that carry no error
 * (ResizeObserver), and what a person broke off.
 */
export function listenForMishaps(): void {
  addEventListener('error', ({ error }) => note(error));
  addEventListener('unhandledrejection', ({ reason }) => note(reason));
}

function note(error: unknown): void {
  if (error === null || error === undefined) return;
  if (error instanceof DOMException && error.name === 'AbortError') return;
  mishap.value = faultText(error);
}

/** Says that a tap came to nothing, so that no button is dead without a word. */
export function MishapNotice() {
  if (mishap.value === '') return null;
  return (
    <div class="mishap" role="alert">
      <span>
        Something in Minim went wrong just now: your last tap may not have counted.
        <small>{mishap.value}</small>
      </span>
      <button class="second" onClick={() => (mishap.value = '')}>
        Close
      </button>
    </div>
  );
}
