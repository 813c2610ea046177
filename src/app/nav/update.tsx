import { signal } from '@preact/signals';
import { noteWorker } from '../../ui/codeGone';
import { route } from './route';
import { scriptUrl } from './scriptUrl';

const waiting = signal<ServiceWorker | null>(null);
let underWay = false;

/** True from the moment in which an update was asked for: what is fetched now may be of either version. */
export const isUpdating = () => underWay;

/** Registers the service worker; a newer version is downloaded and then waits to be asked for. */
export async function registerWorker(): Promise<void> {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  const registration = await navigator.serviceWorker.register(scriptUrl(new URL('sw.js', document.baseURI).href), {
    updateViaCache: 'none',
  });
  noteWorker(registration);
  const look = () => {
    if (registration.waiting && navigator.serviceWorker.controller) waiting.value = registration.waiting;
  };
  look();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void registration.update().catch(() => {}); // offline: next time
  });
}

/** Asks before updating; stands only on pages without a run, so a run is never reloaded. */
export function UpdateNotice() {
  if (!waiting.value || route.value[0] === 'run') return null;
  const update = () => {
    underWay = true;
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    waiting.value?.postMessage({ type: 'SKIP_WAITING' });
  };
  return (
    <p class="update" role="status">
      <span>A newer Minim is ready.</span>
      <button class="second" onClick={update}>
        Update now
      </button>
    </p>
  );
}
