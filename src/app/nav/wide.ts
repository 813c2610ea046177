import { signal } from '@preact/signals';

const wideEnough = matchMedia('(min-width: 52.5em)'); // as in base.css: 840 px in letters of the usual size, more in larger ones

/** Whether a list and the page of a thing have room side by side. */
export const wide = signal(wideEnough.matches);
wideEnough.addEventListener('change', ({ matches }) => (wide.value = matches));

/** Pages of the thing itself that need all the width. */
const whole = ['trace', 'paper', 'photo'];

/** Whether a page is shown beside the Shelf or the Book where there is room for both. */
export function isPaned([page = '', id, sub = '']: readonly string[]): boolean {
  return (
    page === 'shelf' || page === 'book' || ((page === 'record' || page === 'catalogue') && !!id && !whole.includes(sub))
  );
}
