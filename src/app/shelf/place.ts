import { effect, signal } from '@preact/signals';
import { route } from '../nav/route';

/** The parts of the last hash of the Shelf after #/shelf: beside the page of a thing the Shelf stays where it was. */
export const place = signal<readonly string[]>([]);

effect(() => {
  const [page, ...rest] = route.value;
  if (page === 'shelf') place.value = rest;
});
