import { signal } from '@preact/signals';

/** The parts of the hash: #/run/<id>/<step> is ['run', id, step]. An empty one is the Bench. */
export const route = signal<readonly string[]>(parse());

function parse(): string[] {
  try {
    return location.hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  } catch {
    return []; // a % that encodes nothing
  }
}

addEventListener('hashchange', () => (route.value = parse()));
addEventListener('popstate', () => (route.value = parse()));

/** The hash of a page. */
export function hashOf(...parts: string[]): string {
  return `#/${parts.map(encodeURIComponent).join('/')}`;
}

/** Goes to a page; `replace` leaves no way back to this one. */
export function go(parts: readonly string[], how: 'push' | 'replace' = 'push'): void {
  const hash = hashOf(...parts);
  const onwards = how === 'push' && hash !== location.hash;
  if (onwards) history.pushState(null, '', hash);
  else history.replaceState(null, '', hash);
  route.value = parse();
  if (onwards) scrollTo(0, 0);
}
