import { signal } from '@preact/signals';
import { whenBackIsDone } from '../../ui/device/backEntry';

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
  whenBackIsDone(() => {
    const hash = hashOf(...parts);
    const onwards = how === 'push' && hash !== location.hash;
    const depth = depthOf() + (onwards ? 1 : 0);
    if (onwards) history.pushState({ depth }, '', hash);
    else history.replaceState({ depth }, '', hash);
    route.value = parse();
    if (onwards) scrollTo(0, 0);
  });
}

/** How many pages of Minim lie behind this one, as far as they were opened one from the other. */
function depthOf(): number {
  return (history.state as { depth?: number } | null)?.depth ?? 0;
}

/** Goes back to where this page was opened from; to the Bench where it was the first. */
export function back(): void {
  if (depthOf() > 0) history.back();
  else go([], 'replace');
}
