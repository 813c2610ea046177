let registration: ServiceWorkerRegistration | undefined;
let isServed = false;
let isUpdated = false;

/** Notes the worker of this page, so that {@link whyGone} can tell whether Minim is kept, and whether another version took over. */
export function noteWorker(worker: ServiceWorkerRegistration): void {
  registration = worker;
  isServed = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    isUpdated ||= isServed; // the first worker claims the page that was there before it
    isServed = true;
  });
}

/**
 * Why a part of the program cannot be fetched. What is kept goes only by an update in another window or when the browser clears it;
 * a page that was loaded past the worker is served by it when it is opened again; until the first visit has fetched all, nothing is
 * kept.
 */
export function whyGone(): string {
  if (isUpdated) return 'Minim was updated in another window.';
  const isOffline = navigator.onLine === false;
  if (navigator.serviceWorker?.controller)
    return `The browser has cleared a part of Minim, and ${isOffline ? 'there is no network' : 'its address does not answer'}.`;
  if (registration?.active) return 'Minim is kept on this phone, but not in this window: open it again.';
  return isOffline
    ? 'Minim is not yet kept on this phone, and there is no network.'
    : 'Minim is not yet kept on this phone, and its address does not answer.';
}
